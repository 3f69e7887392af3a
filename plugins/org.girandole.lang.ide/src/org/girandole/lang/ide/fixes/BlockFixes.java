package org.girandole.lang.ide.fixes;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.server.CheckedText;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.SpanField;
import org.girandole.lang.show.StrayWaiver;
import org.girandole.lang.show.WaiverDef;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rules;
import org.girandole.plan.script.Module;

/** Mends blocks: soundtracks, scores, hardware, waivers, and what nothing uses. */
final class BlockFixes {
    private static final long US_PER_SECOND = 1_000_000;

    private final Renaming naming;

    BlockFixes(Renaming naming) {
        this.naming = naming;
    }

    /** As much pre-roll as the finding asks for, in whole seconds. */
    List<Fix> preroll(Case one) {
        Optional<Long> us = one.number("prerollUs");
        if (us.isEmpty()) {
            return List.of();
        }
        String seconds = Math.floorDiv(us.get() + US_PER_SECOND - 1, US_PER_SECOND) + " s";
        return track(one).flatMap(track -> field(one, track, "preroll", "preroll  " + seconds, "Make the pre-roll " + seconds)).map(List::of)
                .orElse(List.of());
    }

    /** The length that the recording has. */
    List<Fix> length(Case one) {
        return one.number("lengthUs").flatMap(us -> track(one).flatMap(track -> field(one, track, "length",
                "length   " + Times.exactClock(us), "Write the length of the recording, " + Times.exactClock(us)))).map(List::of).orElse(List.of());
    }

    /** The soundtrack that the finding stands in, or that of its cue, which may be in another file. */
    private static Optional<SoundtrackDef> track(Case one) {
        return one.at(SoundtrackDef.class).or(() -> one.plan().flatMap(plan -> plan.cues().stream()
                .filter(cue -> cue.source().equals(one.finding().source())).map(PlannedCue::soundtrack).findFirst())
                .flatMap(name -> one.defined(SoundtrackDef.class).filter(track -> name.equals(track.getName())).findFirst()));
    }

    private static Optional<Fix> field(Case one, SoundtrackDef track, String key, String line, String title) {
        INode block = NodeModelUtils.findActualNodeFor(track);
        return one.textOf(block).flatMap(text -> {
            for (EObject field : track.getFields()) {
                if (field instanceof SpanField span && key.equals(span.getKey())) {
                    INode node = NodeModelUtils.findActualNodeFor(field);
                    return Optional.of(edit(title, text, node.getOffset(), node.getEndOffset(), line));
                }
            }
            int brace = text.lines().text().indexOf('{', block.getOffset());
            return brace < 0 ? Optional.empty() : Optional.of(edit(title, text, brace + 1, brace + 1, "\n  " + line));
        });
    }

    private static Fix edit(String title, CheckedText text, int from, int to, String with) {
        return new Fix(title, Map.of(text.uri(), List.of(new TextEdit(text.lines().range(from, to), with))));
    }

    /** The hash of the recording that is there now: to be taken once the show has been listened through with it. */
    List<Fix> hash(Case one) {
        Optional<AudioField> audio = one.at(AudioField.class);
        if (one.data("sha256").isEmpty() || audio.isEmpty()) {
            return List.of();
        }
        List<INode> nodes = NodeModelUtils.findNodesForFeature(audio.get(), eINSTANCE.getAudioField_Hash());
        return nodes.isEmpty() ? List.of() : List.of(one.fix("Accept the recording that is there now (listen through the show first)",
                one.replace(nodes.get(0), "\"" + one.data("sha256").get() + "\"")));
    }

    /** The first slot that no score is in. */
    List<Fix> slot(Case one) {
        Optional<ScoreDef> score = one.at(ScoreDef.class);
        if (score.isEmpty() || one.plan().isEmpty()) {
            return List.of();
        }
        Set<Integer> taken = new HashSet<>();
        one.plan().get().script().scores().forEach(other -> taken.add(other.slot()));
        int free = 0;
        while (taken.contains(free)) {
            free++;
        }
        List<INode> nodes = NodeModelUtils.findNodesForFeature(score.get(), eINSTANCE.getScoreDef_Slot());
        return nodes.isEmpty() ? List.of() : List.of(one.fix("Put the score in slot " + free + ", which is free",
                one.replace(nodes.get(0), Integer.toString(free))));
    }

    /** A rack with as many tubes as are missing. */
    List<Fix> rack(Case one) {
        Optional<String> position = one.data("position");
        Optional<Double> calibre = one.plan().flatMap(plan -> plan.cues().stream().filter(cue -> cue.source().equals(one.finding().source()))
                .flatMap(cue -> cue.effect().calibreM().stream()).findFirst());
        if (position.isEmpty() || calibre.isEmpty()) {
            return List.of();
        }
        String name = unused("R", one.plan().get().script().racks().stream().map(rack -> rack.name()).toList());
        String size = String.format(Locale.ROOT, "%.1f", calibre.get() * 1000).replaceAll("\\.0$", "") + " mm";
        String tubes = Quantity.count(one.number("tubes").orElse(1L), "tube", "tubes");
        return List.of(one.fix("Add a rack with " + tubes + " of " + size + " at " + position.get(),
                one.append("rack " + name + " at " + naming.written(position.get()) + " { " + tubes + " " + size + " }")));
    }

    /** A module of the type that is there already. */
    List<Fix> module(Case one) {
        Optional<String> position = one.data("position");
        Optional<String> type = one.plan().flatMap(plan -> plan.script().moduleTypes().stream().map(t -> t.name()).findFirst());
        if (position.isEmpty() || type.isEmpty()) {
            return List.of();
        }
        String name = unused("M", one.plan().get().script().modules().stream().map(Module::name).toList());
        return List.of(one.fix("Add a module " + name + " of " + type.get() + " at " + position.get(), one.append("module " + name + " \""
                + name.substring(1) + "\" of " + naming.written(type.get()) + " at " + naming.written(position.get()))));
    }

    private static String unused(String prefix, List<String> taken) {
        int number = 1;
        while (taken.contains(prefix + number)) {
            number++;
        }
        return prefix + number;
    }

    /** What nothing uses. */
    List<Fix> removeUnused(Case one) {
        Optional<? extends Named> owner = one.at(ChainDef.class).<Named>map(chain -> chain).or(() -> one.at(EffectDef.class));
        return owner.map(named -> List.of(one.fix("Take out " + named.getName(), one.remove(NodeModelUtils.findActualNodeFor(named)))))
                .orElse(List.of());
    }

    List<Fix> removeWaiver(Case one) {
        return one.at(WaiverDef.class).map(NodeModelUtils::findActualNodeFor)
                .map(node -> List.of(one.fix("Take out the waiver", one.remove(node)))).orElse(List.of());
    }

    /** A waiver among the lines of a score, to the end of the script. */
    List<Fix> moveWaiver(Case one) {
        return one.at(StrayWaiver.class).map(NodeModelUtils::findActualNodeFor)
                .map(node -> List.of(one.fix("Move the waiver out of the score", one.remove(node), one.append(one.text())))).orElse(List.of());
    }

    /** A written agreement, whose reason and name are left open: until they are filled in, that is an error of its own. */
    List<Fix> waive(Case one) {
        if (one.finding().waived() || Rules.infos().stream().noneMatch(rule -> rule.id().equals(one.finding().rule()))) {
            return List.of();
        }
        List<String> parts = new ArrayList<>(List.of("waive " + one.finding().rule()));
        one.finding().subject().names().stream().findFirst().ifPresent(name -> parts.add("for " + naming.written(name)));
        one.finding().subject().positions().stream().findFirst().ifPresent(position -> parts.add("at " + naming.written(position)));
        parts.add("because \"\" by \"\"");
        one.plan().flatMap(plan -> plan.script().show().date()).ifPresent(date -> parts.add("until " + date.plusDays(1)));
        return List.of(one.fix("Waive this, with a reason and a name", one.append(String.join(" ", parts))));
    }
}
