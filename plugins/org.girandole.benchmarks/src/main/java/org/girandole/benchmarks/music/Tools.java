package org.girandole.benchmarks.music;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** Other programs, and sound files for them. */
final class Tools {
    private Tools() {
    }

    /** What a command printed, to standard output and standard error. @throws IllegalStateException if it failed */
    static String run(List<String> command) {
        try {
            Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException(String.join(" ", command) + " ended with " + code + ": " + output);
            }
            return output;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    static String run(String... command) {
        return run(Arrays.asList(command));
    }

    static boolean has(String program) {
        String path = System.getenv("PATH");
        return path != null && Arrays.stream(path.split(":")).anyMatch(p -> Files.isExecutable(Path.of(p, program)));
    }

    /** The first number of every line, seconds, as microseconds. */
    static long[] times(String output) {
        return output.lines().filter(l -> !l.isBlank()).mapToLong(l -> Math.round(Double.parseDouble(l.trim().split("\\s+")[0]) * 1e6)).toArray();
    }

    /** Writes interleaved little-endian 16-bit stereo samples. */
    static void writeWav(Path file, byte[] samples, int rate) {
        AudioFormat format = new AudioFormat(rate, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / 4);
                var out = Files.newOutputStream(file)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
