package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.SpanField;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TimecodeField;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TempoEntry;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;

/** Soundtracks, with the marks and audio that they name. */
final class Music {
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
        Optional<AudioFile> audio = block.field("audio", AudioField.class).flatMap(new NamedFiles(compilation)::audio);
        Optional<Long> length = block.field("length", SpanField.class).flatMap(field -> span(field, Range.LENGTH_OF_MUSIC))
                .or(() -> audio.flatMap(AudioFile::found).map(AudioFile.Facts::lengthUs));
        Optional<FrameRate> rate = block.field("timecode", TimecodeField.class).flatMap(this::rate);
        Optional<Timecode> start = rate.flatMap(r -> block.field("timecode", TimecodeField.class).flatMap(field -> start(field, r)));
        List<TempoEntry> tempo = block.field("tempo", TempoField.class).map(new TempoBlock(compilation, times)::tempo).orElse(List.of());
        Marks written = new Marks(compilation, times);
        List<Mark> marks = written.marks(def, block);
        imported.put(def, written.imported());
        return new Soundtrack(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), audio, length, rate, start,
                block.field("preroll", SpanField.class).flatMap(field -> span(field, Range.PREROLL)), tempo, marks,
                compilation.sources().of(def));
    }

    private Optional<Long> span(SpanField field, Range range) {
        return field.getClock() != null ? times.clocks().soundtrackTime(field, eINSTANCE.getSpanField_Clock(), field.getClock())
                : compilation.quantities().us(field.getQuantity(), range);
    }

    private Optional<FrameRate> rate(TimecodeField field) {
        if (field.getRate() == null) {
            return Optional.empty();
        }
        if (field.getUnit() != null && !Dimension.RATE.has(field.getUnit())) {
            compilation.problems().report(LanguageRules.WRONG_UNIT, "A timecode rate is in fps, not in " + field.getUnit())
                    .found(field.getUnit(), "fps").remedy("write 25 fps").at(compilation.sources().of(field, eINSTANCE.getTimecodeField_Unit()));
        }
        String words = field.getRate() + (field.getDivisor() == null ? "" : "/" + field.getDivisor())
                + (field.getCounting() == null ? "" : " " + field.getCounting());
        try {
            return Optional.of(FrameRate.parse(words));
        } catch (TimecodeException e) {
            bad(field, eINSTANCE.getTimecodeField_Rate(), words, e.getMessage());
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
            bad(field, eINSTANCE.getTimecodeField_Start(), field.getStart(), e.getMessage());
            return Optional.empty();
        }
    }

    private void bad(EObject owner, EStructuralFeature feature, String found, String message) {
        compilation.problems().report(LanguageRules.BAD_TIME, message).found(found, "a timecode of SMPTE ST 12-1")
                .remedy("write it as in: timecode 25 fps from 10:00:00:00").at(compilation.sources().of(owner, feature));
    }
}
