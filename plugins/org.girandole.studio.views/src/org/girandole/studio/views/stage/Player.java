package org.girandole.studio.views.stage;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;

/** Plays a sound file from any moment, on a thread of its own; looking for a device takes its time too. Says where it is by what the sound device has let out. */
final class Player {
    private static final int FRAMES = 2048;
    private static final int BYTES = 2;
    private static final int FULL_SCALE = 32_767;
    private static final double US_PER_S = 1e6;

    private final AtomicReference<Run> current = new AtomicReference<>();

    /** One time of playing. */
    private static final class Run {
        private final long fromUs;
        private volatile SourceDataLine line;
        private volatile boolean stopped;
        private volatile boolean ended;

        Run(long fromUs) {
            this.fromUs = fromUs;
        }
    }

    /** Begins to play; what played before stops. */
    void play(Path file, long fromUs) {
        stop();
        Run run = new Run(fromUs);
        current.set(run);
        Thread thread = new Thread(() -> run(run, file), "girandole-player");
        thread.setDaemon(true);
        thread.start();
    }

    void stop() {
        Run run = current.getAndSet(null);
        if (run != null) {
            run.stopped = true;
            SourceDataLine line = run.line;
            if (line != null) {
                line.stop();
                line.flush();
            }
        }
    }

    /** What is being heard, or a negative number while nothing can be. */
    long positionUs() {
        Run run = current.get();
        if (run == null || run.ended || run.line == null) {
            return -1;
        }
        return run.fromUs + run.line.getMicrosecondPosition();
    }

    private static void run(Run run, Path file) {
        try (AudioSource source = AudioFiles.open(file)) {
            int channels = Math.min(2, source.channels());
            AudioFormat format = format(source.sampleRate(), channels);
            try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
                line.open(format);
                float[][] block = new float[source.channels()][FRAMES];
                if (skip(source, block, Math.round(run.fromUs / US_PER_S * source.sampleRate()))) {
                    run.line = line;
                    line.start();
                    pump(run, source, block, channels, line);
                }
                if (!run.stopped) {
                    line.drain();
                }
            }
        } catch (IOException | LineUnavailableException | IllegalArgumentException e) {
            // Without sound the clock goes on: the playhead is what matters.
            run.ended = true;
        }
        run.ended = true;
    }

    private static boolean skip(AudioSource source, float[][] block, long frames) throws IOException {
        long left = frames;
        while (left > 0) {
            int read = source.read(block, 0, (int) Math.min(left, FRAMES));
            if (read < 0) {
                return false;
            }
            left -= read;
        }
        return true;
    }

    private static void pump(Run run, AudioSource source, float[][] block, int channels, SourceDataLine line) throws IOException {
        byte[] out = new byte[FRAMES * channels * BYTES];
        for (int read = source.read(block, 0, FRAMES); read >= 0 && !run.stopped; read = source.read(block, 0, FRAMES)) {
            int at = 0;
            for (int frame = 0; frame < read; frame++) {
                for (int channel = 0; channel < channels; channel++) {
                    int sample = Math.round(Math.max(-1f, Math.min(1f, block[channel][frame])) * FULL_SCALE);
                    out[at++] = (byte) sample;
                    out[at++] = (byte) (sample >> 8);
                }
            }
            line.write(out, 0, at);
        }
    }

    private static AudioFormat format(int sampleRate, int channels) {
        return new AudioFormat(sampleRate, BYTES * 8, channels, true, false);
    }
}
