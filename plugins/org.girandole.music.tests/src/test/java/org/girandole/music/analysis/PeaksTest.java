package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PeaksTest {
    private static final int RATE = 25_600;
    private final float[] left = new float[RATE * 4];
    private final float[] right = new float[RATE * 4];

    private Peaks peaks() {
        Random random = new Random(3);
        for (int i = 0; i < left.length; i++) {
            left[i] = (float) Math.sin(i / 300.0) * (random.nextFloat() - 0.3f);
            right[i] = random.nextFloat() * 2 - 1;
        }
        Peaks.Builder builder = new Peaks.Builder(RATE);
        builder.take(new float[][] { left, right }, left.length);
        return builder.peaks();
    }

    /** Columns of the widths of the levels, against a plain search through the samples. */
    @Test
    void columnsAreTheExtremesOfTheirSamples() {
        Peaks peaks = peaks();
        for (int framesPerColumn : new int[] { 256, 1024, 4096, 16_384 }) {
            int columns = left.length / framesPerColumn;
            Peaks.Columns drawn = peaks.columns(0, 1_000_000L * columns * framesPerColumn / RATE, columns);
            for (int c = 0; c < columns; c++) {
                float low = 1;
                float high = -1;
                double squares = 0;
                for (int i = c * framesPerColumn; i < (c + 1) * framesPerColumn; i++) {
                    float mix = (left[i] + right[i]) / 2;
                    low = Math.min(low, mix);
                    high = Math.max(high, mix);
                    squares += mix * mix;
                }
                assertThat(drawn.low()[c]).isCloseTo(low, within(1e-4f));
                assertThat(drawn.high()[c]).isCloseTo(high, within(1e-4f));
                assertThat(drawn.rms()[c]).isCloseTo((float) Math.sqrt(squares / framesPerColumn), within(1e-4f));
            }
        }
    }

    @Test
    void outsideTheSoundIsSilenceAndInsideASpanRepeats() {
        Peaks peaks = peaks();
        assertThat(peaks.lengthUs()).isEqualTo(4_000_000);
        assertThat(peaks.columns(-2_000_000, -1_000_000, 5).high()).containsOnly(0f);
        assertThat(peaks.columns(5_000_000, 6_000_000, 5).low()).containsOnly(0f);
        float[] close = peaks.columns(0, 5_000, 4).high();
        assertThat(close).containsOnly(close[0]);
    }

    @Test
    void survivesWritingAndRefusesOtherBytes() throws IOException {
        Peaks peaks = peaks();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        peaks.write(out);
        Peaks read = Peaks.read(new ByteArrayInputStream(out.toByteArray()));
        assertThat(read.columns(0, 4_000_000, 33).high()).isEqualTo(peaks.columns(0, 4_000_000, 33).high());
        byte[] bytes = out.toByteArray();
        bytes[17] ^= 1;
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Peaks.read(new ByteArrayInputStream(bytes))).isInstanceOf(IOException.class);
    }

    @Test
    void theCacheFollowsTheSoundAndHealsItself(@TempDir Path folder) throws IOException {
        Path audio = folder.resolve("a.wav");
        Sounds.write(audio, 8000, Sounds.tone(8000, 1, 440, 0.5f));
        PeaksCache cache = new PeaksCache(folder.resolve("cache"));
        float loud = cache.peaks(audio).columns(0, 1_000_000, 1).high()[0];
        assertThat(loud).isCloseTo(0.5f, within(0.01f));
        Path kept;
        try (var files = Files.list(folder.resolve("cache"))) {
            kept = files.findFirst().orElseThrow();
        }
        Files.write(kept, new byte[] { 1, 2, 3 });
        assertThat(cache.peaks(audio).columns(0, 1_000_000, 1).high()[0]).isEqualTo(loud);
        assertThat(Files.size(kept)).isGreaterThan(100);
        Sounds.write(audio, 8000, Sounds.tone(8000, 1, 440, 0.1f));
        assertThat(cache.peaks(audio).columns(0, 1_000_000, 1).high()[0]).isCloseTo(0.1f, within(0.01f));
    }
}
