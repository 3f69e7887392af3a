package org.girandole.music.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Seeded damage to every format: the only allowed ends are facts or an {@link AudioException}, soon. */
class DamagedAudioTest {
    /** Against endless loops only; a reading takes milliseconds. */
    private static final Duration HANGS = Duration.ofMinutes(1);

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = { "stereo24.wav", "float32.wav", "stereo16.aiff", "stereo16.flac", "stereo24.flac", "stereo.ogg", "stereo.mp3" })
    void anyBytesEndInFactsOrANamedError(String name) throws IOException {
        byte[] whole = Fixtures.bytes(name);
        Random random = new Random(name.hashCode());
        for (int i = 0; i < 150; i++) {
            Path file = Files.write(folder.resolve("damaged"), damaged(whole, random, i));
            assertTimeoutPreemptively(HANGS, () -> readOrNamedError(file), name + " variant " + i);
        }
    }

    private static void readOrNamedError(Path file) throws IOException {
        try {
            AudioFacts facts = AudioFiles.facts(file);
            assertThat(facts.frames()).isBetween(1L, 50_000_000L);
        } catch (AudioException e) {
            assertThat(e.getMessage()).isNotBlank().doesNotContain("null").doesNotContain("Exception");
        }
    }

    private static byte[] damaged(byte[] whole, Random random, int variant) {
        if (variant % 4 == 0) {
            return Arrays.copyOf(whole, random.nextInt(whole.length));
        }
        byte[] bytes = whole.clone();
        for (int k = random.nextInt(12); k >= 0; k--) {
            // Half of the damage goes where the headers are.
            int at = random.nextInt(random.nextBoolean() ? 200 : bytes.length);
            bytes[at] = (byte) random.nextInt(256);
        }
        return bytes;
    }
}
