package org.girandole.music.synth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.girandole.music.Meter;
import org.girandole.music.RampLaw;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.audio.AudioException;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PieceTest {
    private static final Meter FOUR = new Meter(4, 4);

    /** The file is read back by the JDK; its ticks are turned to time by the rule of the Standard MIDI File 1.0. */
    @Test
    void theMidiFileHasTheNotesWhereThePieceSays() throws Exception {
        assertFileAgrees(HarbourTides.compose(), 150);
        assertFileAgrees(HarbourEncore.compose(), 150);
    }

    /** The example plays these files; whoever changes a piece writes its file anew with UPDATE_EXPECT=1. */
    @Test
    void theFilesOfTheExampleAreThePieces() throws Exception {
        assertIsPiece(HarbourTides.compose(), "tides.mid");
        assertIsPiece(HarbourEncore.compose(), "encore.mid");
    }

    private static void assertIsPiece(Piece piece, String file) throws Exception {
        Path kept = Path.of("../../examples/harbour-night/music", file);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        piece.writeMidi(bytes);
        if ("1".equals(System.getenv("UPDATE_EXPECT"))) {
            Files.write(kept, bytes.toByteArray());
        }
        assertThat(Files.readAllBytes(kept)).isEqualTo(bytes.toByteArray());
    }

    /** By its end-of-track event a file tells how long it lasts; where a note sounds up to it, its ring is added. */
    @Test
    void aMidiFileIsRenderedAsLongAsItSays() throws Exception {
        PieceWriter writer = new PieceWriter("Short", TempoMap.constant(0, Rational.of(240), FOUR), 1).instrument(0, 0, 100);
        writer.note(0, 1, Rational.ONE, Rational.of(4), 60, 100);
        assertThat(renderedUs(writer.piece())).isBetween(2_999_000L, 3_000_000L);
        writer.endAt(9_000_000);
        assertThat(renderedUs(writer.piece())).isEqualTo(9_000_000);
    }

    private static long renderedUs(Piece piece) throws Exception {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        piece.writeMidi(midi);
        return PieceRenderer.writeWav(midi.toByteArray(), new ByteArrayOutputStream());
    }

    @Test
    void aFileWithoutNotesOrThatIsNoMidiFileIsRefused() throws Exception {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        new PieceWriter("Silent", TempoMap.constant(0, Rational.of(240), FOUR), 1).piece().writeMidi(midi);
        assertThatThrownBy(() -> PieceRenderer.writeWav(midi.toByteArray(), new ByteArrayOutputStream()))
                .isInstanceOf(AudioException.class).hasMessage("It has no note");
        assertThatThrownBy(() -> PieceRenderer.writeWav(new byte[] { 'M', 'T', 'h', 'd', 0, 0 }, new ByteArrayOutputStream()))
                .isInstanceOf(AudioException.class).hasMessageContaining("no Standard MIDI File");
    }

    @Test
    void rampsMetersAndALateStartKeepTheirTimeInTheMidiFile() throws Exception {
        TempoMap map = TempoMap.startingAt(1_234_567, Rational.of(97), FOUR).ramp(2, Rational.of(151), 6)
                .tempo(7, Rational.of(133), new Meter(6, 8)).ramp(9, Rational.of(200), 12, RampLaw.LINEAR_IN_TIME)
                .tempo(12, Rational.parse("88.8"), new Meter(3, 4)).build();
        PieceWriter writer = new PieceWriter("Ramps", map, 16);
        for (int bar = 1; bar <= 16; bar++) {
            for (int beat = 1; beat <= map.meterOfBar(bar).beatsPerBar(); beat++) {
                writer.hit(bar, Rational.of(beat), 38, 100);
            }
        }
        assertFileAgrees(writer.piece(), 150);
    }

    private static void assertFileAgrees(Piece piece, double withinUs) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        piece.writeMidi(bytes);
        Sequence read = MidiSystem.getSequence(new ByteArrayInputStream(bytes.toByteArray()));
        List<Double> times = noteTimes(read);
        assertThat(times).hasSameSizeAs(piece.notes());
        for (int i = 0; i < times.size(); i++) {
            assertThat(times.get(i)).isCloseTo(piece.notes().get(i).timeUs(), within(withinUs));
        }
    }

    private static List<Double> noteTimes(Sequence sequence) {
        List<long[]> tempi = new ArrayList<>();
        List<Long> ticks = new ArrayList<>();
        for (Track track : sequence.getTracks()) {
            for (int i = 0; i < track.size(); i++) {
                MidiEvent event = track.get(i);
                if (event.getMessage() instanceof MetaMessage meta && meta.getType() == 0x51) {
                    byte[] d = meta.getData();
                    tempi.add(new long[] { event.getTick(), (d[0] & 0xFF) << 16 | (d[1] & 0xFF) << 8 | d[2] & 0xFF });
                } else if (event.getMessage() instanceof ShortMessage note && note.getCommand() == ShortMessage.NOTE_ON) {
                    ticks.add(event.getTick());
                }
            }
        }
        List<Double> times = new ArrayList<>();
        for (long tick : ticks) {
            double us = 0;
            for (int i = 0; i < tempi.size() && tempi.get(i)[0] < tick; i++) {
                long end = i + 1 < tempi.size() ? Math.min(tick, tempi.get(i + 1)[0]) : tick;
                us += (double) (end - tempi.get(i)[0]) * tempi.get(i)[1] / sequence.getResolution();
            }
            times.add(us);
        }
        times.sort(null);
        return times;
    }

    /** A stroke is heard within a millisecond of its time: the first sample above the silence before it. */
    @Test
    void strokesAreRenderedOnTheirTimes() {
        TempoMap map = TempoMap.constant(500_000, Rational.of(100), FOUR);
        PieceWriter writer = new PieceWriter("Strokes", map, 3).instrument(PieceWriter.PERCUSSION, 0, 127);
        for (int bar = 1; bar <= 3; bar++) {
            writer.hit(bar, Rational.ONE, 37, 127).hit(bar, Rational.parse("2.75"), 37, 127);
        }
        Piece piece = writer.piece();
        byte[] samples = PieceRenderer.render(piece);
        for (Piece.Note note : piece.notes()) {
            int at = (int) (note.timeUs() * 44_100 / 1_000_000);
            int loudestBefore = loudest(samples, at - 1000, at - 20);
            int loudestAfter = loudest(samples, at, at + 50);
            assertThat(loudestAfter).as("stroke at %s us", note.timeUs()).isGreaterThan(500 + 10 * loudestBefore);
        }
    }

    private static int loudest(byte[] samples, int from, int to) {
        int most = 0;
        for (int i = from; i < to; i++) {
            most = Math.max(most, Math.abs((samples[4 * i] & 0xFF) | samples[4 * i + 1] << 8));
        }
        return most;
    }

    @Test
    void renderingTwiceGivesTheSameBytes(@TempDir Path folder) throws Exception {
        PieceWriter writer = new PieceWriter("Short", TempoMap.constant(0, Rational.of(240), FOUR), 2).instrument(0, 0, 100);
        writer.note(0, 1, Rational.ONE, Rational.ONE, 60, 100);
        PieceRenderer.writeWav(writer.piece(), folder.resolve("a.wav"));
        PieceRenderer.writeWav(writer.piece(), folder.resolve("b.wav"));
        AudioFacts facts = AudioFiles.facts(folder.resolve("a.wav"));
        assertThat(facts.sha256()).isEqualTo(AudioFiles.facts(folder.resolve("b.wav")).sha256());
        assertThat(facts.lengthUs()).isEqualTo(4_000_000);
        assertThat(facts.sampleRate()).isEqualTo(44_100);
    }

    @Test
    void aLongerSilenceThanATempoEventCanSayIsRefused() {
        TempoMap map = TempoMap.constant(17_000_000, Rational.of(100), FOUR);
        assertThatThrownBy(() -> new PieceWriter("Late", map, 1)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("16000000");
    }
}
