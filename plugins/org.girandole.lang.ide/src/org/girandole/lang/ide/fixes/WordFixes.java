package org.girandole.lang.ide.fixes;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.compile.Joints;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.CueOption;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.NameAnchor;
import org.girandole.lang.show.PlaceRange;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.SoundtrackDef;

/** Mends words: what was meant, what is missing behind a number, what is not defined yet. */
final class WordFixes {
    private static final Map<String, List<String>> MORE_UNITS = Map.of("s", List.of("ms"), "mm", List.of("in", "m"), "m", List.of("ft"),
            "g", List.of("kg"), "ms", List.of("s"));

    private final Renaming naming;

    WordFixes(Renaming naming) {
        this.naming = naming;
    }

    /** The nearest word that would be possible. */
    List<Fix> replace(Case one) {
        return one.data("replace").map(word -> List.of(one.fix("Write " + word, one.replace(naming.written(word))))).orElse(List.of());
    }

    /** The unit that is customary here, then others that would do. */
    List<Fix> unit(Case one) {
        Optional<String> unit = one.data("insert");
        if (unit.isEmpty()) {
            return List.of();
        }
        List<Fix> fixes = new ArrayList<>();
        List<String> units = new ArrayList<>(List.of(unit.get()));
        units.addAll(one.data("others").map(others -> List.of(others.split(" "))).orElse(MORE_UNITS.getOrDefault(unit.get(), List.of())));
        int end = one.view().lines().offset(one.range().getEnd());
        units.forEach(each -> fixes.add(one.fix("Add the unit " + each, one.insert(end, " " + each))));
        return fixes;
    }

    /** Defines the missing thing, with gaps that are findings of their own until they are filled. */
    List<Fix> declare(Case one) {
        String name = one.text();
        Optional<CueLine> cue = one.at(CueLine.class);
        Optional<PlaceRange> place = one.at(PlaceRange.class);
        Optional<NameAnchor> anchor = one.at(NameAnchor.class);
        if (anchor.isPresent()) {
            return mark(one, name).map(List::of).orElse(List.of());
        }
        if (place.isPresent()) {
            return site(one).flatMap(site -> block(one, site, "position " + name))
                    .map(edit -> List.of(new Fix("Define the position " + name + " (its place is still to be measured)", edit))).orElse(List.of());
        }
        if (cue.isPresent()) {
            return List.of(one.fix("Define the effect " + name, one.append("\nshell " + name + " {\n}")));
        }
        return List.of();
    }

    private static Optional<Fix> mark(Case one, String name) {
        Optional<ScoreDef> score = one.at(ScoreDef.class);
        Optional<SoundtrackDef> own = one.at(SoundtrackDef.class);
        return own.or(() -> score.map(ScoreDef::getSoundtrack).filter(SoundtrackDef.class::isInstance).map(SoundtrackDef.class::cast))
                .flatMap(track -> block(one, track, "mark " + name + " at " + name))
                .map(edit -> new Fix("Define the mark " + name + " (its moment is still to be given)", edit));
    }

    private static Optional<SiteDef> site(Case one) {
        return one.defined(SiteDef.class).filter(site -> chosen(one, site)).findFirst();
    }

    private static boolean chosen(Case one, SiteDef site) {
        return one.checked().show().loaded().script().flatMap(script -> script.show().site()).map(name -> name.equals(site.getName())).orElse(true);
    }

    /** A line before the closing brace of a block, which may be in another file. */
    private static Optional<Map<String, List<TextEdit>>> block(Case one, EObject block, String line) {
        INode node = NodeModelUtils.findActualNodeFor(block);
        if (node == null) {
            return Optional.empty();
        }
        String root = node.getRootNode().getText();
        int brace = root.lastIndexOf('}', node.getEndOffset());
        return one.textOf(node).map(text -> {
            int lineStart = root.lastIndexOf('\n', brace) + 1;
            boolean alone = root.substring(lineStart, brace).isBlank();
            var at = text.lines().position(alone ? lineStart : brace);
            String inserted = alone ? "  " + line + "\n" : " " + line + " ";
            return Map.of(text.uri(), List.of(new TextEdit(new Range(at, at), inserted)));
        });
    }

    /** The second of two that say the same. */
    List<Fix> removeRepeated(Case one) {
        Optional<? extends EObject> owner = one.at(Field.class).<EObject>map(field -> field).or(() -> one.at(CueOption.class));
        return owner.map(NodeModelUtils::findActualNodeFor).map(node -> List.of(one.fix("Take out " + shown(one.text()), one.remove(node))))
                .orElse(List.of());
    }

    /** A position named twice, out of the list. */
    List<Fix> removePlace(Case one) {
        String text = one.view().lines().text();
        int from = one.view().lines().offset(one.range().getStart());
        int to = one.view().lines().offset(one.range().getEnd());
        int comma = text.lastIndexOf(',', from);
        if (comma < 0 || !text.substring(comma + 1, from).isBlank()) {
            return List.of();
        }
        return List.of(one.fix("Name " + one.text() + " once", new TextEdit(one.view().lines().range(comma, to), "")));
    }

    /** Says in which slot a score is, as the finding words it. */
    List<Fix> slot(Case one) {
        if (one.at(ScoreDef.class).isEmpty()) {
            return List.of();
        }
        int end = one.view().lines().offset(one.range().getEnd());
        return List.of(one.fix("Put the score in slot 0", one.insert(end, " in slot 0")));
    }

    /** The comma that positions are joined by, in place of what stands there for it. */
    List<Fix> comma(Case one) {
        String remedy = one.finding().remedy();
        if (!one.finding().allowed().equals(Joints.COMMA)) {
            return List.of();
        }
        String text = one.view().lines().text();
        int from = one.view().lines().offset(one.range().getStart());
        int to = one.view().lines().offset(one.range().getEnd());
        while (to < text.length() && text.charAt(to) == ' ') {
            to++;
        }
        if (remedy.equals(Joints.LEAVE_OUT)) {
            return List.of(one.fix("Leave out '" + one.text() + "'", new TextEdit(one.view().lines().range(from, to), "")));
        }
        while (from > 0 && text.charAt(from - 1) == ' ') {
            from--;
        }
        return List.of(one.fix("Write a comma", new TextEdit(one.view().lines().range(from, to), ", ")));
    }

    /** A word of the language used as a name. */
    List<Fix> escape(Case one) {
        String remedy = one.finding().remedy();
        int at = remedy.indexOf("write ^");
        return remedy.startsWith("to use it as a name") && at >= 0
                ? List.of(one.fix("Write ^" + one.text() + " to use the word as a name", one.replace("^" + one.text()))) : List.of();
    }

    /** The brace that a block lacks. */
    List<Fix> close(Case one) {
        if (!one.finding().remedy().equals("write } where it ends")) {
            return List.of();
        }
        // The finding stands at what comes next, or, when that is on another line, at the end of the block.
        boolean next = one.text().equals(one.finding().found());
        int at = one.view().lines().offset(next ? one.range().getStart() : one.range().getEnd());
        return List.of(one.fix("Close the block", one.insert(at, next ? "}\n" : "\n}")));
    }

    private static String shown(String text) {
        return text.length() > 30 ? text.substring(0, 30) + "…" : text;
    }
}
