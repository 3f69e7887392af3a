package org.girandole.lang.compile;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.LabelTrack;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.MarksField;
import org.girandole.lang.show.NameAnchor;
import org.girandole.lang.show.ShowPackage.Literals;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.SpanField;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TempoLine;
import org.girandole.lang.show.TimecodeField;
import org.girandole.music.Meter;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TempoEntry;
import org.girandole.plan.script.TimeExpr;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;

/** Soundtracks, with the marks and audio that they name. */
final class Music {
    private static final Pattern SHA256 = Pattern.compile("[0-9a-fA-F]{64}");
    private static final long SLOWEST_BPM = 10;
    private static final long FASTEST_BPM = 1000;
    private static final int MOST_BARS = 100_000;

    private final Compilation compilation;
    private final Times times;
    private final Map<SoundtrackDef, Set<String>> imported = new IdentityHashMap<>();

    Music(Compilation compilation, Times times) {
        this.compilation = compilation;
        this.times = times;
    }

    /** Names of marks that come from files. */
    Set<String> importedMarks(SoundtrackDef soundtrack) {
        return imported.getOrDefault(soundtrack, Set.of());
    }

    Soundtrack soundtrack(SoundtrackDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a soundtrack", compilation.grammar().getSoundtrackFieldRule(),
                Set.of("mark", "marks"));
        Optional<AudioFile> audio = block.field("audio", AudioField.class).flatMap(this::audio);
        Optional<Long> length = block.field("length", SpanField.class).flatMap(field -> span(field, Range.LENGTH_OF_MUSIC))
                .or(() -> audio.flatMap(AudioFile::found).map(AudioFile.Facts::lengthUs));
        Optional<FrameRate> rate = block.field("timecode", TimecodeField.class).flatMap(this::rate);
        Optional<Timecode> start = rate.flatMap(r -> block.field("timecode", TimecodeField.class).flatMap(field -> start(field, r)));
        List<TempoEntry> tempo = block.field("tempo", TempoField.class).map(this::tempo).orElse(List.of());
        List<Mark> marks = marks(def, block);
        return new Soundtrack(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), audio, length, rate, start,
                block.field("preroll", SpanField.class).flatMap(field -> span(field, Range.PREROLL)), tempo, marks,
                compilation.sources().of(def));
    }

    private Optional<Long> span(SpanField field, Range range) {
        return field.getClock() != null ? times.clocks().soundtrackTime(field, Literals.SPAN_FIELD__CLOCK, field.getClock())
                : compilation.quantities().us(field.getQuantity(), range);
    }

    private Optional<FrameRate> rate(TimecodeField field) {
        if (field.getRate() == null) {
            return Optional.empty();
        }
        if (field.getUnit() != null && !Dimension.RATE.has(field.getUnit())) {
            compilation.problems().report(LanguageRules.WRONG_UNIT, "A timecode rate is in fps, not in " + field.getUnit())
                    .found(field.getUnit(), "fps").remedy("write 25 fps").at(compilation.sources().of(field, Literals.TIMECODE_FIELD__UNIT));
        }
        String words = field.getRate() + (field.getDivisor() == null ? "" : "/" + field.getDivisor())
                + (field.getCounting() == null ? "" : " " + field.getCounting());
        try {
            return Optional.of(FrameRate.parse(words));
        } catch (TimecodeException e) {
            bad(field, Literals.TIMECODE_FIELD__RATE, words, e.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Timecode> start(TimecodeField field, FrameRate rate) {
        if (field.getStart() == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(Timecode.parse(field.getStart(), rate));
        } catch (TimecodeException e) {
            bad(field, Literals.TIMECODE_FIELD__START, field.getStart(), e.getMessage());
            return Optional.empty();
        }
    }

    private void bad(EObject owner, EStructuralFeature feature, String found, String message) {
        compilation.problems().report(LanguageRules.BAD_TIME, message).found(found, "a timecode of SMPTE ST 12-1")
                .remedy("write it as in: timecode 25 fps from 10:00:00:00").at(compilation.sources().of(owner, feature));
    }

    private Optional<AudioFile> audio(AudioField field) {
        if (field.getFile() == null) {
            return Optional.empty();
        }
        SourceRef source = compilation.sources().of(field, Literals.AUDIO_FIELD__FILE);
        Optional<Path> file = inProject(field, Literals.AUDIO_FIELD__FILE, field.getFile());
        if (file.isEmpty()) {
            return Optional.empty();
        }
        Optional<String> hash = Optional.ofNullable(field.getHash());
        if (hash.isPresent() && !SHA256.matcher(hash.get()).matches()) {
            compilation.problems().report(LanguageRules.UNKNOWN_WORD, "This is no SHA-256 hash").found(Words.shown(hash.get()),
                    "64 digits of 0 to 9 and a to f").remedy("copy the hash from the release that was signed off, or leave it out")
                    .at(compilation.sources().of(field, Literals.AUDIO_FIELD__HASH));
            hash = Optional.empty();
        }
        String path = ProjectRoot.relative(compilation.root(), file.get());
        Optional<AudioFile.Facts> facts = Optional.empty();
        Optional<String> trouble = Optional.empty();
        if (!DiskFile.readable(file.get())) {
            trouble = Optional.of("there is no such file");
        } else {
            try {
                AudioFacts found = AudioFiles.facts(file.get());
                facts = Optional.of(new AudioFile.Facts(found.sha256(), found.lengthUs(), found.sampleRate(), found.channels()));
                compilation.input(new InputFile(path, found.sha256()));
            } catch (IOException e) {
                trouble = Optional.of(e.getMessage());
            }
        }
        return Optional.of(new AudioFile(path, facts, trouble, hash.map(h -> h.toLowerCase(Locale.ROOT)), source));
    }

    private Optional<Path> inProject(EObject owner, EStructuralFeature feature, String written) {
        Path script = ProjectRoot.path(owner.eResource().getURI());
        Optional<Path> file = DiskFile.beside(script, written);
        if (file.isEmpty() || !ProjectRoot.contains(compilation.root(), file.get())) {
            compilation.problems().report(LanguageRules.USE_OUTSIDE, "'" + Words.shown(written) + "' lies outside of the project")
                    .found(Words.shown(written), "a path relative to this file, inside the project")
                    .remedy("copy the file into the project").at(compilation.sources().of(owner, feature));
            return Optional.empty();
        }
        return file;
    }

    private List<TempoEntry> tempo(TempoField field) {
        List<TempoEntry> entries = new ArrayList<>();
        int lastBar = 1;
        for (TempoLine line : field.getEntries()) {
            boolean first = entries.isEmpty() && line == field.getEntries().get(0);
            Optional<Rational> bpm = bpm(line);
            Optional<Long> at = Optional.empty();
            Optional<Integer> bar = Optional.empty();
            if (line.getAt() != null) {
                at = startOfMusic(line, first);
            } else {
                OptionalInt number = compilation.quantities().whole(line, Literals.TEMPO_LINE__BAR, line.getBar(), "a bar", 1, MOST_BARS);
                bar = number.isPresent() && inOrder(line, first, number.getAsInt(), lastBar) ? Optional.of(number.getAsInt())
                        : Optional.empty();
                lastBar = bar.orElse(lastBar);
            }
            if (bpm.isPresent() && (at.isPresent() || bar.isPresent())) {
                Optional<TempoEntry.Ramp> ramp = !line.isRamp() || first ? Optional.empty()
                        : Optional.of(line.isInTime() ? TempoEntry.Ramp.PER_SECOND : TempoEntry.Ramp.PER_BEAT);
                entries.add(new TempoEntry(at, bar, bpm.get(), meter(line), ramp, compilation.sources().whole(line)));
            } else if (first) {
                return List.of();
            }
        }
        return entries;
    }

    private boolean inOrder(TempoLine line, boolean first, int bar, int lastBar) {
        if (first) {
            compilation.problems().report(LanguageRules.BAD_TIME, "The first line of a tempo must say when bar 1 begins")
                    .found("bar " + bar, "a time, such as at 0:02.000").remedy("write at 0:02.000 instead of bar " + bar)
                    .at(compilation.sources().of(line, Literals.TEMPO_LINE__BAR));
            return false;
        }
        if (bar <= lastBar) {
            compilation.quantities().outside(line, Literals.TEMPO_LINE__BAR, line.getBar(),
                    "the bar of a tempo change after bar " + lastBar, (lastBar + 1) + " or more");
            return false;
        }
        return true;
    }

    private Optional<Long> startOfMusic(TempoLine line, boolean first) {
        if (!first) {
            compilation.problems().report(LanguageRules.BAD_TIME, "Only the first line of a tempo has a time; later ones change at a bar")
                    .found("at " + Sources.text(line.getAt()), "bar and its number").remedy("write bar 33, say")
                    .at(compilation.sources().whole(line.getAt()));
            return Optional.empty();
        }
        Optional<TimeExpr> at = times.time(line.getAt(), new Times.Place(Map.of(), Set.of(), false));
        if (at.isEmpty()) {
            return Optional.empty();
        }
        Rational us = Rational.ZERO;
        boolean plain = at.get().anchor() instanceof TimeExpr.AtClock || at.get().anchor() instanceof TimeExpr.Origin;
        if (at.get().anchor() instanceof TimeExpr.AtClock clock) {
            us = Rational.of(clock.us());
        }
        for (TimeExpr.Step step : at.get().steps()) {
            plain &= step.unit() == TimeExpr.StepUnit.MICROSECOND;
            us = us.plus(step.amount());
        }
        if (!plain) {
            compilation.problems().report(LanguageRules.BAD_TIME, "The beginning of bar 1 cannot be counted in bars, beats, frames or marks")
                    .found(Sources.text(line.getAt()), "a time, such as 0:02.000").remedy("write the time at which bar 1 begins")
                    .at(compilation.sources().whole(line.getAt()));
            return Optional.empty();
        }
        return Optional.of(us.roundHalfUp());
    }

    private Optional<Rational> bpm(TempoLine line) {
        if (line.getBpm() == null) {
            return Optional.empty();
        }
        Optional<Rational> bpm = compilation.quantities().rational(line, Literals.TEMPO_LINE__BPM, line.getBpm(),
                Literals.TEMPO_LINE__DIVISOR, line.getDivisor(), "a tempo", FASTEST_BPM);
        if (bpm.isPresent() && bpm.get().compareTo(Rational.of(SLOWEST_BPM)) < 0) {
            compilation.quantities().outside(line, Literals.TEMPO_LINE__BPM, line.getBpm(), "a tempo",
                    SLOWEST_BPM + " to " + FASTEST_BPM + " bpm");
            return Optional.empty();
        }
        if (line.getUnit() == null || !Dimension.TEMPO.has(line.getUnit())) {
            boolean missing = line.getUnit() == null;
            compilation.problems().report(missing ? LanguageRules.MISSING_UNIT : LanguageRules.WRONG_UNIT,
                    "A tempo is in bpm, beats a minute" + (missing ? "" : ", not in " + line.getUnit()))
                    .found(missing ? line.getBpm() : line.getUnit(), "bpm").remedy("write " + line.getBpm() + " bpm")
                    .at(compilation.sources().of(line, missing ? Literals.TEMPO_LINE__BPM : Literals.TEMPO_LINE__UNIT));
            return Optional.empty();
        }
        return bpm;
    }

    private Optional<Meter> meter(TempoLine line) {
        if (line.getBeats() == null || line.getBeatUnit() == null) {
            return Optional.empty();
        }
        OptionalInt beats = Numbers.whole(line.getBeats());
        OptionalInt unit = Numbers.whole(line.getBeatUnit());
        try {
            return Optional.of(new Meter(beats.orElse(0), unit.orElse(0)));
        } catch (MusicTimeException e) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, e.getMessage()).found(line.getBeats() + "/" + line.getBeatUnit(),
                    "such as 4/4, 3/4 or 6/8").remedy("write the meter as beats in a bar, a slash, and the note that is one beat")
                    .at(compilation.sources().of(line, Literals.TEMPO_LINE__BEATS));
            return Optional.empty();
        }
    }

    private List<Mark> marks(SoundtrackDef def, Block block) {
        Map<String, Mark> marks = new LinkedHashMap<>();
        Map<MarksField, List<Mark>> fromFiles = new HashMap<>();
        Set<String> names = new LinkedHashSet<>();
        for (MarksField field : block.all("marks", MarksField.class)) {
            List<Mark> found = labels(field);
            fromFiles.put(field, found);
            found.forEach(mark -> names.add(mark.name()));
        }
        imported.put(def, names);
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
        Optional<Path> file = inProject(field, Literals.MARKS_FIELD__FILE, field.getFile());
        if (file.isEmpty()) {
            return List.of();
        }
        SourceRef source = compilation.sources().of(field, Literals.MARKS_FIELD__FILE);
        if (!DiskFile.readable(file.get())) {
            compilation.problems().report(LanguageRules.USE_MISSING, "There is no file '" + Words.shown(field.getFile()) + "' with marks")
                    .found(Words.shown(field.getFile()), "a file that is there").remedy("check the path; it is relative to this file")
                    .at(source);
            return List.of();
        }
        try {
            List<Mark> marks = new ArrayList<>();
            for (LabelTrack.Label label : LabelTrack.read(file.get())) {
                String name = markName(label.text());
                if (!name.isEmpty()) {
                    marks.add(new Mark(name, new TimeExpr(new TimeExpr.AtClock(label.us()), List.of(), source), source));
                }
            }
            compilation.input(new InputFile(ProjectRoot.relative(compilation.root(), file.get()), DiskFile.sha256(file.get())));
            return marks;
        } catch (IOException e) {
            compilation.problems().report(LanguageRules.UNREADABLE, "The marks of '" + Words.shown(field.getFile()) + "' cannot be read: "
                    + e.getMessage()).found(Words.shown(field.getFile()), "a label track")
                    .remedy("export the labels again as text separated by tabs").at(source);
            return List.of();
        }
    }

    /** A label as a name: what no name can have in it becomes an underscore. */
    static String markName(String label) {
        String name = label.strip().replaceAll("[^\\p{L}\\p{N}_]+", "_");
        return name.isEmpty() || !Character.isDigit(name.charAt(0)) ? name : "_" + name;
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
                : "These marks count from each other in a circle: " + circle).remedy("give one of them a bar or a time")
                .at(compilation.sources().whole(last.getAt()));
    }

    private static MarkDef base(MarkDef mark) {
        return mark.getAt() != null && mark.getAt().getAnchor() instanceof NameAnchor anchor
                && anchor.getTarget() instanceof MarkDef base && !base.eIsProxy() ? base : null;
    }
}
