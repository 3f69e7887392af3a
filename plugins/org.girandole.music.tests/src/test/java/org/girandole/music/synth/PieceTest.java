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
import java.util.concurrent.CancellationException;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    @Test
    void whoWaitsHearsHowFarItIsAndCanStopIt() throws Exception {
        ByteArrayOutputStream midi = new ByteArrayOutputStream();
        HarbourEncore.compose().writeMidi(midi);
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        List<Double> shares = new ArrayList<>();
        PieceRenderer.writeWav(midi.toByteArray(), whole, shares::add);
        assertThat(shares).isSorted().hasSizeGreaterThan(100).allSatisfy(share -> assertThat(share).isBetween(0.0, 1.0));
        assertThat(shares.get(shares.size() - 1)).isGreaterThan(0.99);
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        PieceRenderer.writeWav(midi.toByteArray(), plain);
        assertThat(whole.toByteArray()).as("watching changes nothing").isEqualTo(plain.toByteArray());
        ByteArrayOutputStream stopped = new ByteArrayOutputStream();
        assertThatThrownBy(() -> PieceRenderer.writeWav(midi.toByteArray(), stopped, share -> share < 0.5)).isInstanceOf(CancellationException.class);
        assertThat(stopped.size()).as("nothing is written").isZero();
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
            most = Math.max(most, Math.abs(sample(samples, i)));
        }
        return most;
    }

    /** The recording of a show belongs to the inputs of its release: on no machine may it come out otherwise than here. */
    @Test
    void everyMachineHearsTheSame(@TempDir Path folder) throws Exception {
        PieceWriter writer = new PieceWriter("Short", TempoMap.constant(0, Rational.of(240), FOUR), 2).instrument(0, 0, 100).instrument(1, 33, 100)
                .instrument(2, 48, 90).instrument(3, 73, 127);
        for (int channel = 0; channel < 4; channel++) {
            writer.note(channel, 1, Rational.of(1 + channel), Rational.of(2), 45 + 9 * channel, 70 + 15 * channel);
        }
        for (int key = 35; key < 83; key++) {
            writer.hit(1, Rational.of(key - 19, 16), key, 127);
        }
        PieceRenderer.writeWav(writer.piece(), folder.resolve("a.wav"));
        AudioFacts facts = AudioFiles.facts(folder.resolve("a.wav"));
        assertThat(facts.lengthUs()).isEqualTo(4_000_000);
        assertThat(facts.sampleRate()).isEqualTo(44_100);
        assertThat(facts.sha256()).isEqualTo("138599fb0890fc6e6922a54078a50d25d5678662a0adda54d1263f2ab0ccf45e");
    }

    /** ISO 16:1975: the A above middle C, key 69 of MIDI, has 440 Hz; an octave doubles the frequency. */
    @ParameterizedTest
    @CsvSource({ "69, 440", "57, 220", "81, 880" })
    void notesHaveTheirPitch(int key, double hertz) throws Exception {
        PieceWriter writer = new PieceWriter("Pitch", TempoMap.constant(0, Rational.of(60), FOUR), 1).instrument(0, 73, 127);
        writer.note(0, 1, Rational.ONE, Rational.of(2), key, 127);
        byte[] samples = PieceRenderer.render(writer.piece());
        int rises = 0;
        for (int i = 44_100 / 2; i < 44_100 * 3 / 2; i++) {
            rises += sample(samples, i) < 0 && sample(samples, i + 1) >= 0 ? 1 : 0;
        }
        assertThat((double) rises).isCloseTo(hertz, within(1.0));
    }

    private static int sample(byte[] samples, int frame) {
        return (samples[4 * frame] & 0xFF) | samples[4 * frame + 1] << 8;
    }

    /** However much plays at once, nothing runs over the range of 16 bits. */
    @Test
    void aCrowdOfNotesIsNotCut() {
        PieceWriter writer = new PieceWriter("Crowd", TempoMap.constant(0, Rational.of(60), FOUR), 1).instrument(0, 48, 127);
        for (int key = 40; key < 90; key++) {
            writer.note(0, 1, Rational.ONE, Rational.of(2), key, 127);
        }
        byte[] samples = PieceRenderer.render(writer.piece());
        int worstStep = 0;
        for (int i = 1; i < samples.length / 4; i++) {
            worstStep = Math.max(worstStep, Math.abs(sample(samples, i) - sample(samples, i - 1)));
        }
        assertThat(loudest(samples, 0, samples.length / 4)).isBetween(30_000, 32_767);
        assertThat(worstStep).as("a sample that ran over would jump by twice full scale").isLessThan(50_000);
    }

    @Test
    void aLongerSilenceThanATempoEventCanSayIsRefused() {
        TempoMap map = TempoMap.constant(17_000_000, Rational.of(100), FOUR);
        assertThatThrownBy(() -> new PieceWriter("Late", map, 1)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("16000000");
    }
}
