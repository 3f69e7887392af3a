package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClickTrackTest {
    @TempDir
    Path folder;

    /** Over silence, the first sample that is not zero is the one after the beat's own, where the tone starts from zero. */
    @Test
    void clicksBeginOnTheirSamples() throws IOException {
        Path music = folder.resolve("music.wav");
        Sounds.write(music, 44_100, new float[44_100 * 3], new float[44_100 * 3]);
        Path out = folder.resolve("clicks.wav");
        List<Beat> beats = List.of(new Beat(0, 1, 3), new Beat(500_011, 2, 3), new Beat(1_333_333, 1, 3), new Beat(2_999_990, 2, 3));
        ClickTrack.overMusic(music, beats, out);
        AudioFacts facts = AudioFiles.facts(out);
        assertThat(facts.lengthUs()).isEqualTo(3_000_000);
        assertThat(facts.format()).isEqualTo("WAV, 16-bit PCM");
        float[][] x = new float[1][44_100 * 3];
        try (AudioSource source = AudioFiles.open(out)) {
            for (int at = 0, n; (n = source.read(x, at, x[0].length - at == 0 ? 1 : x[0].length - at)) > 0;) {
                at += n;
                if (at == x[0].length) {
                    break;
                }
            }
        }
        // 0.500011 s * 44100 = 22050.49 and 1.333333 s * 44100 = 58799.99, rounded to the nearest sample.
        for (int start : new int[] { 0, 22_050, 58_800 }) {
            assertThat(x[0][start]).isZero();
            assertThat(x[0][start + 1]).isGreaterThan(0.01f);
            assertThat(start == 0 || x[0][start - 1] == 0).isTrue();
        }
        assertThat(crossings(x[0], 0)).isGreaterThan(crossings(x[0], 22_050));
    }

    private static int crossings(float[] x, int from) {
        int count = 0;
        for (int i = from + 1; i < from + 1000; i++) {
            count += x[i] > 0 != x[i - 1] > 0 ? 1 : 0;
        }
        return count;
    }
}
