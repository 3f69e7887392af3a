package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.synth.Piece;
import org.girandole.music.synth.PieceRenderer;
import org.girandole.music.synth.PieceWriter;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Edits made here with scissors, so that every moment's new place is known. */
class EditAlignerTest {
    private static final int RATE = 44_100;
    private static final TempoMap MAP = TempoMap.constant(0, Rational.of(120), Meter.COMMON);
    private static final int BARS = 20;
    private static float[] track;

    @TempDir
    Path folder;

    @BeforeAll
    static void makeTrack() {
        Random random = new Random(4);
        PieceWriter out = new PieceWriter("Edited", MAP, BARS).instrument(0, 0, 110).instrument(1, 33, 100);
        for (int bar = 1; bar <= BARS; bar++) {
            for (int half = 0; half < 8; half++) {
                out.note(0, bar, Rational.of(2L + half, 2), Rational.of(1, 2), 55 + random.nextInt(24), 60 + random.nextInt(50));
            }
            out.note(1, bar, Rational.ONE, Rational.of(3), 36 + random.nextInt(12), 100);
            out.hit(bar, Rational.of(1 + random.nextInt(4)), 38, 100);
        }
        Piece piece = out.piece();
        byte[] bytes = PieceRenderer.render(piece);
        track = new float[bytes.length / 4];
        for (int i = 0; i < track.length; i++) {
            track[i] = ((bytes[4 * i] & 0xFF) | bytes[4 * i + 1] << 8) / 32768f;
        }
    }

    private EditMap align(float[] edited) throws IOException {
        Path old = folder.resolve("old.wav");
        Path edit = folder.resolve("new.wav");
        Sounds.write(old, RATE, track);
        Sounds.write(edit, RATE, edited);
        return EditAligner.align(old, edit);
    }

    private static float[] join(float[]... parts) {
        float[] all = new float[Arrays.stream(parts).mapToInt(p -> p.length).sum()];
        int at = 0;
        for (float[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    private static float[] part(double fromS, double toS) {
        return Arrays.copyOfRange(track, (int) (fromS * RATE), (int) (toS * RATE));
    }

    @Test
    void theSameTrackIsTheSame() throws IOException {
        EditMap map = align(track);
        assertThat(map.changes()).isEmpty();
        assertThat(map.newTime(12_345_678)).hasValue(12_345_678);
        assertThat(map.confidence()).isGreaterThan(0.9);
    }

    @Test
    void findsACutAndMovesMarksAndTempoMap() throws IOException {
        // Bars 7 to 10 are gone: 8 seconds from 12 s on.
        EditMap map = align(join(part(0, 12), part(20, 42)));
        assertThat(map.changes()).singleElement().satisfies(c -> {
            assertThat(c.kind()).isEqualTo(EditMap.Kind.CUT);
            assertThat(c.oldStartUs()).isCloseTo(12_000_000, within(50_000L));
            assertThat(c.oldEndUs()).isCloseTo(20_000_000, within(50_000L));
        });
        assertThat(map.newTime(5_500_000).orElseThrow()).isCloseTo(5_500_000, within(3_000L));
        assertThat(map.newTime(15_000_000)).isEmpty();
        assertThat(map.newTime(30_250_000).orElseThrow()).isCloseTo(22_250_000, within(3_000L));
        TempoMap moved = map.moved(MAP, BARS).orElseThrow();
        for (int bar = 1; bar <= BARS - 4; bar++) {
            assertThat(moved.timeUsOfBar(bar, Rational.ONE)).isCloseTo(MAP.timeUsOfBar(bar, Rational.ONE), within(20_000L));
        }
    }

    @Test
    void findsAnInsertion() throws IOException {
        float[] noise = Sounds.noise(RATE, 3.3, 0.3f, 8);
        EditMap map = align(join(part(0, 16), noise, part(16, 42)));
        assertThat(map.changes()).singleElement().satisfies(c -> {
            assertThat(c.kind()).isEqualTo(EditMap.Kind.INSERTED);
            assertThat(c.newStartUs()).isCloseTo(16_000_000, within(50_000L));
            assertThat(c.newEndUs()).isCloseTo(19_300_000, within(50_000L));
        });
        assertThat(map.newTime(10_000_000).orElseThrow()).isCloseTo(10_000_000, within(3_000L));
        assertThat(map.newTime(25_000_000).orElseThrow()).isCloseTo(28_300_000, within(3_000L));
    }

    @Test
    void followsADifferentSpeed() throws IOException {
        // Half a per cent faster, by linear interpolation between samples.
        float[] faster = new float[(int) (track.length / 1.005) - 1];
        for (int i = 0; i < faster.length; i++) {
            double at = i * 1.005;
            int n = (int) at;
            faster[i] = (float) (track[n] * (1 - at + n) + track[n + 1] * (at - n));
        }
        EditMap map = align(faster);
        for (long us = 1_000_000; us < 40_000_000; us += 777_777) {
            assertThat(map.newTime(us).orElseThrow()).isCloseTo(Math.round(us / 1.005), within(10_000L));
        }
        assertThat(map.stretches().get(0).speed()).isCloseTo(1.005, within(0.0005));
    }

    @Test
    void strangersAreNotAligned() throws IOException {
        EditMap map = align(Sounds.noise(RATE, 30, 0.4f, 3));
        assertThat(map.confidence()).isLessThan(0.5);
    }

    @Test
    void thePlotIsAnSvgDocument() throws Exception {
        EditMap map = align(join(part(0, 12), part(20, 42)));
        var svg = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new ByteArrayInputStream(EditPlot.svg(map).getBytes(StandardCharsets.UTF_8)));
        assertThat(svg.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(svg.getElementsByTagName("polygon").getLength()).isEqualTo(map.stretches().size());
    }
}
