package org.girandole.music.analysis;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** Sounds for tests, and writing them with the JDK. */
final class Sounds {
    private Sounds() {
    }

    static float[] tone(int rate, double seconds, double hz, float amplitude) {
        float[] x = new float[(int) Math.round(rate * seconds)];
        for (int i = 0; i < x.length; i++) {
            x[i] = (float) (amplitude * Math.sin(2 * Math.PI * hz * i / rate));
        }
        return x;
    }

    static float[] noise(int rate, double seconds, float amplitude, long seed) {
        Random random = new Random(seed);
        float[] x = new float[(int) Math.round(rate * seconds)];
        for (int i = 0; i < x.length; i++) {
            x[i] = amplitude * (float) random.nextGaussian() / 3;
        }
        return x;
    }

    /** Adds a click: 5 ms of decaying noise. */
    static void click(float[] x, int rate, double seconds, float amplitude) {
        Random random = new Random(11);
        int at = (int) Math.round(seconds * rate);
        for (int i = 0; i < rate / 200 && at + i < x.length; i++) {
            x[at + i] += amplitude * (random.nextFloat() * 2 - 1) * (float) Math.exp(-i * 600.0 / rate);
        }
    }

    static void write(Path file, int rate, float[]... channels) throws IOException {
        int frames = channels[0].length;
        ByteBuffer bytes = ByteBuffer.allocate(frames * channels.length * 2).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < frames; i++) {
            for (float[] channel : channels) {
                bytes.putShort((short) Math.round(Math.max(-1f, Math.min(1f, channel[i])) * 32767));
            }
        }
        AudioFormat format = new AudioFormat(rate, 16, channels.length, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(bytes.array()), format, frames);
                var out = Files.newOutputStream(file)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, out);
        }
    }
}
