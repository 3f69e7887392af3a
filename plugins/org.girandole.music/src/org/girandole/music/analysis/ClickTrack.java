package org.girandole.music.analysis;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;

/**
 * A WAV file to check beats by ear: the music, somewhat lowered, with a click on each beat and a higher one on each first
 * beat. The first sample of a click that is not zero is sample {@code round(timeUs * rate / 1e6) + 1}; it rises and falls as a
 * short tone burst, which is kinder to the ear than a bare impulse. 16 bits, mono.
 */
public final class ClickTrack {
    private static final float MUSIC = 0.5f;
    private static final float CLICK = 0.45f;
    private static final double DOWNBEAT_HZ = 1760;
    private static final double BEAT_HZ = 1174.66;
    private static final double LENGTH_S = 0.03;
    private static final int BLOCK = 4096;

    private ClickTrack() {
    }

    /** Writes the clicks over the music of a file. */
    public static void overMusic(Path audio, List<Beat> beats, Path out) throws IOException {
        AudioFacts facts = AudioFiles.facts(audio);
        try (AudioSource source = AudioFiles.open(audio);
                OutputStream file = new BufferedOutputStream(Files.newOutputStream(out))) {
            file.write(header(facts.sampleRate(), facts.frames()));
            float[][] block = new float[source.channels()][BLOCK];
            float[] mono = new float[BLOCK];
            Clicks clicks = new Clicks(beats, facts.sampleRate());
            for (int n = source.read(block, 0, BLOCK); n >= 0; n = source.read(block, 0, BLOCK)) {
                for (int i = 0; i < n; i++) {
                    float sum = 0;
                    for (float[] channel : block) {
                        sum += channel[i];
                    }
                    mono[i] = sum / block.length * MUSIC;
                }
                clicks.add(mono, n);
                file.write(bytes(mono, n));
            }
        }
    }

    /** Adds the clicks to a signal going by. */
    private static final class Clicks {
        private final List<Beat> beats;
        private final int rate;
        private final int length;
        private long frame;
        private int next;

        Clicks(List<Beat> beats, int rate) {
            this.beats = beats;
            this.rate = rate;
            this.length = (int) (LENGTH_S * rate);
        }

        void add(float[] mono, int count) {
            while (next < beats.size() && start(next) + length <= frame) {
                next++;
            }
            for (int b = next; b < beats.size() && start(b) < frame + count; b++) {
                double step = 2 * Math.PI * (beats.get(b).isDownbeat() ? DOWNBEAT_HZ : BEAT_HZ) / rate;
                for (long i = Math.max(start(b), frame); i < Math.min(start(b) + length, frame + count); i++) {
                    long into = i - start(b);
                    double fade = Math.exp(-5.0 * into / length);
                    mono[(int) (i - frame)] += (float) (CLICK * fade * Math.sin(step * into));
                }
            }
            frame += count;
        }

        private long start(int beat) {
            return (2 * beats.get(beat).timeUs() * rate + 1_000_000) / 2_000_000;
        }
    }

    private static byte[] header(int rate, long frames) {
        int data = (int) Math.min(Integer.MAX_VALUE - 64L, frames * 2);
        ByteBuffer b = ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN);
        b.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(data + 36).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
        b.putInt(16).putShort((short) 1).putShort((short) 1).putInt(rate).putInt(rate * 2).putShort((short) 2).putShort((short) 16);
        b.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(data);
        return b.array();
    }

    private static byte[] bytes(float[] mono, int count) {
        ByteBuffer b = ByteBuffer.allocate(2 * count).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < count; i++) {
            b.putShort((short) Math.round(Math.max(-1f, Math.min(1f, mono[i])) * 32767));
        }
        return b.array();
    }
}
