package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.audio.AudioException;
import org.girandole.music.synth.Piece;
import org.girandole.music.synth.PieceRenderer;
import org.girandole.music.synth.PieceWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Truth is what was put in: clicks at chosen samples, notes written to a piece and rendered. */
class TrackAnalyserTest {
    private static final int KICK = 36;
    private static final int SNARE = 38;
    private static final int HAT = 42;

    @TempDir
    Path folder;

    /** Noise that begins with the file is an onset itself, at its very start. */
    private static List<Onset> afterStart(TrackAnalysis track) {
        return track.onsets().stream().filter(o -> o.timeUs() > 50_000).toList();
    }

    private TrackAnalysis analyse(int rate, float[]... channels) throws IOException {
        Path file = folder.resolve("sound.wav");
        Sounds.write(file, rate, channels);
        return TrackAnalyser.analyse(file);
    }

    @ParameterizedTest
    @ValueSource(ints = { 8000, 22_050, 44_100, 48_000, 96_000 })
    void findsClicksInNoiseToAFewMilliseconds(int rate) throws IOException {
        float[] x = Sounds.noise(rate, 6, 0.01f, 5);
        double[] at = { 0.5, 0.73, 1.2, 1.9, 2.05, 3.3, 3.42, 4.0, 5.111 };
        for (double t : at) {
            Sounds.click(x, rate, t, 0.6f);
        }
        List<Onset> found = afterStart(analyse(rate, x));
        for (double t : at) {
            assertThat(found).as("click at %s s", t)
                    .anySatisfy(o -> assertThat(o.timeUs()).isCloseTo(Math.round(t * 1e6), within(6000L)));
        }
        // The noise itself may look like an onset now and then.
        assertThat(found.size()).isLessThanOrEqualTo(at.length + 4);
    }

    @Test
    void tellsTheBandOfAnOnset() throws IOException {
        int rate = 44_100;
        float[] x = Sounds.noise(rate, 8, 0.0005f, 5);
        for (int i = 0; i < 4; i++) {
            burst(x, rate, 0.5 + i * 2, 60);
            burst(x, rate, 1.0 + i * 2, 700);
            burst(x, rate, 1.5 + i * 2, 6000);
        }
        List<Onset> found = afterStart(analyse(rate, x));
        assertThat(found).hasSize(12);
        assertThat(found.get(3).band()).isEqualTo(Band.LOW);
        assertThat(found.get(4).band()).isEqualTo(Band.MID);
        assertThat(found.get(5).band()).isEqualTo(Band.HIGH);
    }

    /** A tone of 150 ms that swells and fades without a click. */
    private static void burst(float[] x, int rate, double seconds, double hz) {
        int at = (int) (seconds * rate);
        int length = (int) (rate * 0.15);
        for (int i = 0; i < length; i++) {
            double fade = Math.min(1, i / (0.015 * rate)) * Math.pow(1 - (double) i / length, 2);
            x[at + i] += (float) (0.5 * fade * Math.sin(2 * Math.PI * hz * i / rate));
        }
    }

    private TrackAnalysis analyse(Piece piece) throws IOException {
        Path file = folder.resolve("piece.wav");
        PieceRenderer.writeWav(piece, file);
        return TrackAnalyser.analyse(file);
    }

    /** Drums, a bass and chords that change with the bar. */
    private static Piece band(TempoMap map, int bars) {
        PieceWriter out = new PieceWriter("Band", map, bars).instrument(0, 0, 100).instrument(1, 33, 100);
        int[] roots = { 48, 53, 55, 45 };
        for (int bar = 1; bar <= bars; bar++) {
            int root = roots[bar % 4];
            int beats = map.meterOfBar(bar).beatsPerBar();
            for (int beat = 1; beat <= beats; beat++) {
                out.hit(bar, Rational.of(beat), beat == 1 ? KICK : SNARE, beat == 1 ? 115 : 95);
                out.hit(bar, Rational.of(2L * beat + 1, 2), HAT, 70);
                out.note(1, bar, Rational.of(beat), Rational.ONE, root - 12, beat == 1 ? 110 : 90);
            }
            for (int key : new int[] { root + 12, root + 16, root + 19 }) {
                out.note(0, bar, Rational.ONE, Rational.of(beats), key, 90);
            }
        }
        return out.piece();
    }

    @ParameterizedTest
    @ValueSource(ints = { 3, 4, 5 })
    void findsTheTempoMapOfASteadyPiece(int beatsPerBar) throws IOException {
        TempoMap map = TempoMap.constant(700_000, Rational.parse("117.3"), new Meter(beatsPerBar, 4));
        TrackAnalysis track = analyse(band(map, 60 / beatsPerBar));
        assertThat(track.beatConfidence()).isGreaterThan(0.7);
        assertThat(track.beatsPerBar()).isEqualTo(beatsPerBar);
        TempoMap found = track.tempo().orElseThrow();
        for (int bar = 1; bar <= 60 / beatsPerBar; bar++) {
            assertThat(found.timeUsOfBar(bar, Rational.ONE)).isCloseTo(map.timeUsOfBar(bar, Rational.ONE), within(10_000L));
        }
        assertThat(found.events()).hasSize(1);
    }

    @Test
    void findsATempoChangeOnItsBar() throws IOException {
        TempoMap map = TempoMap.startingAt(0, Rational.of(100), Meter.COMMON).tempo(9, Rational.of(126)).build();
        TempoMap found = analyse(band(map, 18)).tempo().orElseThrow();
        assertThat(found.events()).hasSize(2);
        for (int bar = 1; bar <= 18; bar++) {
            assertThat(found.timeUsOfBar(bar, Rational.ONE)).isCloseTo(map.timeUsOfBar(bar, Rational.ONE), within(15_000L));
        }
    }

    @Test
    void findsWhereTheMusicChanges() throws IOException {
        TempoMap map = TempoMap.constant(0, Rational.of(140), Meter.COMMON);
        PieceWriter out = new PieceWriter("Two parts", map, 24).instrument(0, 48, 100).instrument(1, 33, 110);
        for (int bar = 1; bar <= 24; bar++) {
            for (int beat = 1; beat <= 4; beat++) {
                // Sections begin at bar lines, so the first beat of each bar must be heard as such.
                out.note(0, bar, Rational.of(beat), Rational.ONE, (bar <= 12 ? 72 : 48) + 4 * (beat % 2), beat == 1 ? 110 : 80);
                if (bar > 12) {
                    out.hit(bar, Rational.of(beat), beat == 1 ? KICK : SNARE, beat == 1 ? 120 : 95);
                }
            }
        }
        List<Section> sections = analyse(out.piece()).sections();
        assertThat(sections).hasSize(2);
        assertThat(sections.get(1).startUs()).isCloseTo(map.timeUsOfBar(13, Rational.ONE), within(500_000L));
        assertThat(sections).extracting(Section::label).containsExactly("A", "B");
        assertThat(sections.get(1).endUs()).isGreaterThan(map.timeUsOfBar(24, Rational.ONE));
    }

    @Test
    void noiseHasNoBeatToRelyOn() throws IOException {
        TrackAnalysis track = analyse(22_050, Sounds.noise(22_050, 20, 0.5f, 9));
        assertThat(track.beatConfidence()).isLessThan(0.3);
        assertThat(track.barConfidence()).isLessThanOrEqualTo(track.beatConfidence());
    }

    @Test
    void silenceIsSilence() throws IOException {
        TrackAnalysis track = analyse(44_100, new float[44_100 * 3]);
        assertThat(track.onsets()).isEmpty();
        assertThat(track.beats()).isEmpty();
        assertThat(track.tempo()).isEmpty();
        assertThat(track.beatConfidence()).isZero();
        assertThat(track.silences()).containsExactly(new Silence(0, 3_000_000));
        assertThat(MarksFinder.find(track)).isEmpty();
    }

    @Test
    void findsTheSilenceBetweenSounds() throws IOException {
        int rate = 44_100;
        float[] x = Sounds.tone(rate, 4, 500, 0.3f);
        Arrays.fill(x, rate, 2 * rate, 0f);
        List<Silence> silences = analyse(rate, x).silences();
        assertThat(silences).hasSize(1);
        assertThat(silences.get(0).startUs()).isCloseTo(1_000_000, within(30_000L));
        assertThat(silences.get(0).endUs()).isCloseTo(2_000_000, within(30_000L));
    }

    @Test
    void aSecondOfMonoAndEightChannelsAreHeard() throws IOException {
        float[] x = Sounds.noise(8000, 1, 0.01f, 1);
        Sounds.click(x, 8000, 0.5, 0.5f);
        assertThat(afterStart(analyse(8000, x))).hasSize(1);
        float[][] eight = new float[8][];
        Arrays.fill(eight, x);
        TrackAnalysis track = analyse(8000, eight);
        assertThat(afterStart(track)).hasSize(1);
        assertThat(track.facts().channels()).isEqualTo(8);
    }

    @Test
    void channelsThatCancelEachOtherAreHeardAllTheSame() throws IOException {
        float[] x = Sounds.noise(44_100, 3, 0.003f, 1);
        Sounds.click(x, 44_100, 1, 0.5f);
        Sounds.click(x, 44_100, 2, 0.5f);
        float[] inverted = x.clone();
        for (int i = 0; i < x.length; i++) {
            inverted[i] = -x[i];
        }
        assertThat(afterStart(analyse(44_100, x, inverted))).hasSize(2);
    }

    @Test
    void whatIsNotSoundIsRefused() throws IOException {
        Path text = Files.writeString(folder.resolve("a.wav"), "not sound");
        assertThatThrownBy(() -> TrackAnalyser.analyse(text)).isInstanceOf(AudioException.class);
    }

    @Test
    void snapsToTheNearestOnset() throws IOException {
        float[] x = Sounds.noise(44_100, 3, 0.003f, 1);
        Sounds.click(x, 44_100, 1, 0.5f);
        TrackAnalysis track = analyse(44_100, x);
        assertThat(track.nearestOnset(1_060_000, 70_000)).isPresent();
        assertThat(track.nearestOnset(1_060_000, 50_000)).isEmpty();
    }

    @Test
    void proposesMarksOnBarsWithReasons() throws IOException {
        TempoMap map = TempoMap.constant(1_500_000, Rational.of(120), Meter.COMMON);
        TrackAnalysis track = analyse(band(map, 16));
        List<ProposedMark> marks = MarksFinder.find(track);
        assertThat(marks).isNotEmpty().isSortedAccordingTo(java.util.Comparator.comparingLong(ProposedMark::timeUs));
        assertThat(marks.get(0).name()).isEqualTo("Entry1");
        assertThat(marks.get(0).timeUs()).isCloseTo(1_500_000, within(10_000L));
        assertThat(marks.get(0).barBeat()).map(Object::toString).hasValue("bar 1");
        assertThat(marks).allSatisfy(m -> assertThat(m.reason()).isNotBlank());
    }
}
