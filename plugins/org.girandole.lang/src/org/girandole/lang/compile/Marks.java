package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.MarksFile;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.MarksField;
import org.girandole.lang.show.NameAnchor;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/** Marks of a soundtrack: written in the script, or read from files that it names. */
final class Marks {
    private final Compilation compilation;
    private final Times times;
    private final Set<String> imported = new LinkedHashSet<>();

    Marks(Compilation compilation, Times times) {
        this.compilation = compilation;
        this.times = times;
    }

    /** Names of marks that come from files. */
    Set<String> imported() {
        return imported;
    }

    /** Marks of a soundtrack in the order of the script; those of files are remembered as imported. */
    List<Mark> marks(SoundtrackDef def, Block block) {
        Map<String, Mark> marks = new LinkedHashMap<>();
        Map<MarksField, List<Mark>> fromFiles = new HashMap<>();
        Set<String> names = new LinkedHashSet<>();
        for (MarksField field : block.all("marks", MarksField.class)) {
            List<Mark> found = labels(field);
            fromFiles.put(field, found);
            found.forEach(mark -> names.add(mark.name()));
        }
        imported.addAll(names);
        Set<MarkDef> circles = circles(block.all("mark", MarkDef.class));
        Times.Place place = new Times.Place(Map.of(), names, false);
        for (Field field : def.getFields()) {
            if (field instanceof MarkDef mark && mark.getName() != null && !circles.contains(mark)) {
                times.time(mark.getAt(), place).map(at -> new Mark(mark.getName(), at, compilation.sources().of(mark)))
                        .ifPresentOrElse(m -> marks.putIfAbsent(m.name(), m), () -> compilation.drop(mark));
            } else if (field instanceof MarksField file) {
                fromFiles.getOrDefault(file, List.of()).forEach(mark -> add(marks, mark));
            }
        }
        return List.copyOf(marks.values());
    }

    private void add(Map<String, Mark> marks, Mark mark) {
        if (marks.putIfAbsent(mark.name(), mark) != null) {
            compilation.problems().report(LanguageRules.DUPLICATE_NAME, "The mark '" + mark.name() + "' of this file has a name that is "
                    + "already taken").found(mark.name(), "each name once").remedy("rename the label, or take out one of the two")
                    .at(mark.source());
        }
    }

    private List<Mark> labels(MarksField field) {
        if (field.getFile() == null) {
            return List.of();
        }
        Optional<Path> file = new NamedFiles(compilation).inProject(field, eINSTANCE.getMarksField_File(), field.getFile());
        if (file.isEmpty()) {
            return List.of();
        }
        SourceRef source = compilation.sources().of(field, eINSTANCE.getMarksField_File());
        if (!DiskFile.readable(file.get())) {
            compilation.problems().report(LanguageRules.USE_MISSING, "There is no file '" + Words.shown(field.getFile()) + "' with marks")
                    .found(Words.shown(field.getFile()), "a file that is there").remedy("check the path; it is relative to this file")
                    .at(source);
            return List.of();
        }
        try {
            List<Mark> marks = new ArrayList<>();
            for (var found : MarksFile.read(file.get())) {
                String name = MarksFile.nameOf(found.name());
                if (!name.isEmpty()) {
                    marks.add(new Mark(name, new TimeExpr(new TimeExpr.AtClock(found.timeUs()), List.of(), source), source));
                }
            }
            compilation.input(new InputFile(ProjectRoot.relative(compilation.root(), file.get()), DiskFile.sha256(file.get())));
            return marks;
        } catch (IOException e) {
            compilation.problems().report(LanguageRules.UNREADABLE, "The marks of '" + Words.shown(field.getFile()) + "' cannot be read: "
                    + e.getMessage()).found(Words.shown(field.getFile()),
                            "a label track, a WAV file with cue points, or a Standard MIDI File with markers")
                    .remedy("export the marks again in one of these forms").at(source);
            return List.of();
        }
    }

    /** Marks that have no time because they count from themselves, directly or through others. */
    private Set<MarkDef> circles(List<MarkDef> marks) {
        Set<MarkDef> bad = new HashSet<>();
        Set<MarkDef> good = new HashSet<>();
        for (MarkDef mark : marks) {
            List<MarkDef> way = new ArrayList<>();
            MarkDef next = mark;
            while (next != null && !good.contains(next) && !bad.contains(next) && !way.contains(next)) {
                way.add(next);
                next = base(next);
            }
            if (next != null && way.contains(next)) {
                List<MarkDef> round = way.subList(way.indexOf(next), way.size());
                report(round);
                bad.addAll(way);
                way.forEach(compilation::drop);
            } else if (bad.contains(next)) {
                bad.addAll(way);
                way.forEach(compilation::drop);
            } else {
                good.addAll(way);
            }
        }
        return bad;
    }

    private void report(List<MarkDef> round) {
        List<String> names = new ArrayList<>(round.stream().map(MarkDef::getName).toList());
        String circle = String.join(" -> ", names) + " -> " + names.get(0);
        MarkDef last = round.get(round.size() - 1);
        compilation.problems().report(LanguageRules.MARK_CYCLE, round.size() == 1 ? "The mark '" + names.get(0) + "' counts from itself"
                : "These marks count from each other in a circle: " + circle)
                .found(circle, "marks that count from a bar or a time in the end")
                .remedy("give " + (round.size() == 1 ? "it" : "one of them") + " a bar or a time")
                .at(compilation.sources().whole(last.getAt()));
    }

    private static MarkDef base(MarkDef mark) {
        return mark.getAt() != null && mark.getAt().getAnchor() instanceof NameAnchor anchor
                && anchor.getTarget() instanceof MarkDef base && !base.eIsProxy() ? base : null;
    }
}
