package org.girandole.sheets.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.music.TempoMap;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.marks.LabelTrack;
import org.girandole.timecode.marks.Mark;
import org.girandole.timecode.marks.MidiFile;
import org.girandole.timecode.marks.MidiMap;
import org.girandole.timecode.marks.WavMarks;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.WavWriter;

/**
 * The marks of a soundtrack as files for other programs. Time begins with the first note in all of them, so that they lie beside the music and a
 * script can read them back.
 */
public final class MarkFiles {
    /** Rate of the silence that carries cue points; their exact times stand beside them in notes. */
    private static final int SILENCE_HZ = 8_000;
    private static final int BLOCK_FRAMES = 4_096;

    private final List<Mark> marks = new ArrayList<>();
    private final List<String> early = new ArrayList<>();
    private final Optional<TempoMap> tempo;
    private final long lengthUs;

    private MarkFiles(PlannedSoundtrack soundtrack) {
        soundtrack.marksUs().forEach((name, us) -> {
            if (us < 0) {
                early.add(name);
            } else {
                marks.add(new Mark(us, name));
            }
        });
        marks.sort(Comparator.comparingLong(Mark::timeUs));
        this.tempo = soundtrack.tempo();
        this.lengthUs = Math.max(soundtrack.lengthUs().orElse(0L), marks.stream().mapToLong(Mark::timeUs).max().orElse(0));
    }

    public static MarkFiles of(PlannedSoundtrack soundtrack) {
        return new MarkFiles(soundtrack);
    }

    /** Marks that lie before the first note and so in none of the files. */
    public List<String> beforeFirstNote() {
        return List.copyOf(early);
    }

    /** Whether there are tempo and meters that a MIDI file can hold: the first bar does not begin before the first note. */
    public boolean hasMidiTempo() {
        return tempo.filter(map -> MidiTempo.firstBarUs(map) >= 0).isPresent();
    }

    /**
     * Tempo, meters and marks as a Standard MIDI File.
     *
     * @throws TimecodeException when a tempo is slower than such a file can hold
     */
    public byte[] midi() {
        MidiMap.Builder map = tempo.filter(each -> hasMidiTempo()).map(MidiTempo::of).orElseGet(() -> MidiMap.beginningAfter(0));
        marks.forEach(map::mark);
        return MidiFile.write(map.build());
    }

    /** A label track, UTF-8. */
    public byte[] labels() {
        return LabelTrack.write(marks).getBytes(StandardCharsets.UTF_8);
    }

    /** Silence as long as the soundtrack, 16 bit at 8 kHz, with a cue point at each mark; closes the stream. */
    public void cues(OutputStream out) throws IOException {
        long frames = (lengthUs / 1_000_000 + 1) * SILENCE_HZ;
        float[] silence = new float[BLOCK_FRAMES];
        try (WavWriter wav = new WavWriter(out, SILENCE_HZ, 1, SampleDepth.PCM_16, frames, WavMarks.toCues(marks, SILENCE_HZ))) {
            for (long left = frames; left > 0; left -= BLOCK_FRAMES) {
                wav.write(silence, 0, (int) Math.min(left, BLOCK_FRAMES));
            }
        }
    }
}
