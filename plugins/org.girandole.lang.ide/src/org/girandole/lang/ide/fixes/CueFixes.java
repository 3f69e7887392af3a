package org.girandole.lang.ide.fixes;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.ide.completion.Free;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.show.ClockAnchor;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.OrderOption;
import org.girandole.lang.show.PinOption;
import org.girandole.lang.show.PlaceRange;
import org.girandole.lang.show.TimeExpr;
import org.girandole.lang.show.TubeOption;
import org.girandole.lang.show.UnitRef;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.Rack;

/** Mends cues: their moments, pins and tubes. */
final class CueFixes {
    private final Renaming naming;

    CueFixes(Renaming naming) {
        this.naming = naming;
    }

    /** The mark that a clock time just misses. */
    List<Fix> mark(Case one) {
        return one.data("mark").map(mark -> List.of(one.fix("Use the mark " + mark, one.replace(naming.written(mark))))).orElse(List.of());
    }

    /** Moves a cue by what its finding advises. */
    List<Fix> later(Case one) {
        return one.number("laterUs").flatMap(us -> moved(one, us, "later")).map(List::of).orElse(List.of());
    }

    List<Fix> earlier(Case one) {
        return one.number("earlierUs").flatMap(us -> moved(one, -us, "earlier")).map(List::of).orElse(List.of());
    }

    private static Optional<Fix> moved(Case one, long byUs, String towards) {
        return one.at(CueLine.class).map(CueLine::getAt).map(at -> one.fix("Move the cue " + Quantity.span(Math.abs(byUs)) + " " + towards,
                moved(one, at, byUs)));
    }

    private static TextEdit moved(Case one, TimeExpr at, long byUs) {
        INode node = NodeModelUtils.findActualNodeFor(at);
        if (at.getAnchor() instanceof ClockAnchor && at.getSteps().isEmpty()) {
            Optional<PlannedCue> planned = one.plan().flatMap(plan -> plan.cues().stream()
                    .filter(cue -> cue.script().at().source().equals(source(one, at))).findFirst());
            if (planned.isPresent() && planned.get().script().at().anchor() instanceof org.girandole.plan.script.TimeExpr.AtClock clock
                    && clock.us() + byUs >= 0) {
                return one.replace(node, Times.exactClock(clock.us() + byUs));
            }
        }
        return one.insert(node.getEndOffset(), (byUs < 0 ? " - " : " + ") + Quantity.span(Math.abs(byUs)));
    }

    private static org.girandole.plan.script.SourceRef source(Case one, EObject object) {
        INode node = NodeModelUtils.findActualNodeFor(object);
        var start = one.view().lines().position(node.getOffset());
        return new org.girandole.plan.script.SourceRef(one.finding().source().file(), start.getLine() + 1, start.getCharacter() + 1,
                Math.max(1, node.getEndOffset() - node.getOffset()));
    }

    /** A free pin of a module that serves the cue's position, in place of the one written; or none, to let the program choose. */
    List<Fix> pin(Case one) {
        List<Fix> fixes = new ArrayList<>();
        Optional<UnitRef> written = one.at(UnitRef.class);
        Optional<Free> free = one.free();
        if (written.isPresent() && free.isPresent()) {
            List<String> positions = positions(one);
            for (Module module : free.get().plan().script().modules()) {
                if (positions.isEmpty() || module.positions().stream().anyMatch(positions::contains)) {
                    free.get().pins(module).stream().limit(1).forEach(pin -> fixes.add(one.fix("Use the free pin " + module.name() + "/" + pin,
                            one.replace(NodeModelUtils.findActualNodeFor(written.get()), naming.written(module.name()) + "/" + pin))));
                }
            }
        }
        one.at(PinOption.class).map(NodeModelUtils::findActualNodeFor)
                .ifPresent(node -> fixes.add(one.fix("Let the program choose the pin", one.remove(node))));
        return fixes;
    }

    /** A free tube that fits, in place of the one written; or none, to let the program choose. */
    List<Fix> tube(Case one) {
        List<Fix> fixes = new ArrayList<>(freeTube(one, CueFixes::notTooShort));
        one.at(TubeOption.class).map(NodeModelUtils::findActualNodeFor)
                .ifPresent(node -> fixes.add(one.fix("Let the program choose the tube", one.remove(node))));
        return fixes;
    }

    /** A tube that is known to be long enough. The program's own choice does not go by length, and might be the same tube again. */
    List<Fix> longerTube(Case one) {
        return freeTube(one, (effect, run) -> run.lengthM().isPresent() && notTooShort(effect, run));
    }

    private static boolean notTooShort(Effect effect, Rack.TubeRun run) {
        return run.lengthM().flatMap(lengthM -> Fit.shortestTubeM(effect).map(neededM -> lengthM >= neededM)).orElse(true);
    }

    private List<Fix> freeTube(Case one, BiPredicate<Effect, Rack.TubeRun> longEnough) {
        List<Fix> fixes = new ArrayList<>();
        Optional<UnitRef> written = one.at(UnitRef.class);
        Optional<Free> free = one.free();
        Optional<PlannedCue> cue = loaded(one);
        if (written.isPresent() && free.isPresent() && cue.isPresent()) {
            free.get().tubes(cue.get().position(), cue.get(), longEnough).forEach((rack, tubes) -> row(tubes, cue.get().pieces())
                    .ifPresent(tube -> fixes.add(one.fix("Use the free tube " + rack + "/" + tube,
                            one.replace(NodeModelUtils.findActualNodeFor(written.get()), naming.written(rack) + "/" + tube)))));
        }
        return fixes;
    }

    /** The one cue that is loaded into the tube written there; a tube in a figure or a repetition is that of several, which no other tube would part. */
    private static Optional<PlannedCue> loaded(Case one) {
        List<PlannedCue> cues = one.plan().map(plan -> plan.cues().stream().filter(cue -> Cues.tubeSource(cue).equals(one.finding().source())).toList())
                .orElse(List.of());
        return cues.size() == 1 ? Optional.of(cues.get(0)) : Optional.empty();
    }

    /** The first of so many free tubes in a row. */
    private static Optional<Integer> row(List<Integer> free, int pieces) {
        for (int tube : free) {
            boolean whole = true;
            for (int i = 1; i < pieces; i++) {
                whole &= free.contains(tube + i);
            }
            if (whole) {
                return Optional.of(tube);
            }
        }
        return Optional.empty();
    }

    private static List<String> positions(Case one) {
        int line = one.finding().source().line();
        List<String> named = one.finding().subject().positions();
        return !named.isEmpty() ? named : one.plan().map(plan -> plan.cues().stream().filter(cue -> cue.source().line() == line)
                .map(PlannedCue::position).distinct().toList()).orElse(List.of());
    }

    /** One line a place, so that each can be moved or loaded by itself. */
    List<Fix> split(Case one) {
        return one.at(CueLine.class).map(cue -> split(one, cue)).orElse(List.of());
    }

    static List<Fix> split(Case one, CueLine cue) {
        INode node = NodeModelUtils.findActualNodeFor(cue);
        INode places = cue.getPlaces() == null ? null : NodeModelUtils.findActualNodeFor(cue.getPlaces());
        if (node == null || places == null || cue.getPlaces().getRanges().size() < 2 || cue.getName() != null
                || cue.getOptions().stream().anyMatch(option -> option instanceof OrderOption || option instanceof PinOption
                || option instanceof TubeOption) || placeTwice(one, node)) {
            return List.of();
        }
        String text = one.view().lines().text();
        String before = text.substring(node.getOffset(), places.getOffset());
        String after = text.substring(places.getEndOffset(), node.getEndOffset());
        int lineStart = text.lastIndexOf('\n', node.getOffset() - 1) + 1;
        String indent = text.substring(lineStart, node.getOffset());
        if (!indent.isBlank()) {
            return List.of();
        }
        String lines = cue.getPlaces().getRanges().stream().map(range -> before + place(range) + after).collect(Collectors.joining("\n" + indent));
        return List.of(one.fix("Split the cue: one line for each of its places", one.replace(node, lines)));
    }

    /** A place that is named twice is shot once, as long as it stands in one line. */
    private static boolean placeTwice(Case one, INode cue) {
        return one.checked().show().findings().stream().filter(finding -> finding.rule().equals(LanguageRules.PLACE_TWICE.id()) && one.isInView(finding))
                .map(finding -> one.view().lines().offset(one.view().lines().range(finding.source()).getStart()))
                .anyMatch(at -> cue.getOffset() <= at && at < cue.getEndOffset());
    }

    private static String place(PlaceRange range) {
        return Sources.text(range);
    }

    /** Places one after the other, when all at once are too many. */
    List<Fix> inTurn(Case one) {
        Optional<CueLine> cue = one.at(CueLine.class);
        if (cue.isEmpty() || cue.get().getOptions().stream().anyMatch(OrderOption.class::isInstance)
                || NodeModelUtils.findNodesForFeature(cue.get(), eINSTANCE.getCueLine_Effect()).isEmpty()
                || one.plan().map(plan -> plan.cues().stream().filter(c -> c.source().equals(one.finding().source())).map(PlannedCue::position)
                .distinct().count()).orElse(0L) < 2) {
            return List.of();
        }
        INode effect = NodeModelUtils.findNodesForFeature(cue.get(), eINSTANCE.getCueLine_Effect()).get(0);
        return List.of(one.fix("Shoot the places in turn, 50 ms apart", one.insert(effect.getEndOffset(), "  in turn every 50 ms")));
    }
}
