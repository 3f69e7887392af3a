package org.girandole.music.synth;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;

/** Plays the notes of a performance, block by block. */
final class Band {
    private static final int BLOCK_FRAMES = 4096;
    /** A loud chord of six keys with drums comes near full scale. */
    private static final double NOTE_GAIN = 0.11;
    private static final double STROKE_GAIN = 0.3;
    /** From here on what is louder is bent and not cut. */
    private static final double KNEE = 0.7;
    private static final int PERCUSSION = PieceWriter.PERCUSSION;
    private static final int A4 = 69;
    private static final double A4_HZ = 440;

    private final List<Performance.Note> notes;
    /** No two notes of a player are alike; these are unlike in the same way on every machine. */
    private final SplittableRandom random = new SplittableRandom(1);
    private final Percussion percussion = new Percussion();
    private final List<Voice> sounding = new ArrayList<>();
    private int next;

    Band(Performance performance) {
        notes = performance.notes();
    }

    /**
     * The first {@code frames} frames from the beginning: little-endian signed 16 bits, the same on both sides.
     *
     * @throws CancellationException as soon as the listener does not want to hear more
     */
    byte[] play(int frames, DoublePredicate goesOn) {
        byte[] out = new byte[Math.multiplyExact(frames, PieceRenderer.FRAME_BYTES)];
        for (int at = 0; at < frames; at += BLOCK_FRAMES) {
            if (!goesOn.test((double) at / frames)) {
                throw new CancellationException("stopped at frame " + at + " of " + frames);
            }
            double[] block = new double[Math.min(BLOCK_FRAMES, frames - at)];
            sounding.removeIf(voice -> !voice.addTo(block, 0));
            begin(block, at);
            for (int i = 0; i < block.length; i++) {
                int sample = (int) Math.rint(bent(block[i]) * Short.MAX_VALUE);
                int to = (at + i) * PieceRenderer.FRAME_BYTES;
                out[to] = out[to + 2] = (byte) sample;
                out[to + 1] = out[to + 3] = (byte) (sample >> 8);
            }
        }
        return out;
    }

    private void begin(double[] block, int at) {
        while (next < notes.size() && frame(notes.get(next).fromUs()) < at + block.length) {
            Performance.Note note = notes.get(next++);
            Voice voice = voice(note);
            if (voice.addTo(block, (int) (frame(note.fromUs()) - at))) {
                sounding.add(voice);
            }
        }
    }

    private Voice voice(Performance.Note note) {
        double loudness = loudness(note.velocity()) * loudness(note.volume());
        if (note.channel() == PERCUSSION) {
            return percussion.stroke(note.key(), STROKE_GAIN * loudness, random.split());
        }
        double frequencyHz = A4_HZ * StrictMath.pow(2, (note.key() - A4) / 12.0);
        return new Tones(Timbre.of(note.program()), frequencyHz, NOTE_GAIN * loudness, frame(note.toUs()) - frame(note.fromUs()), random.split());
    }

    /** General MIDI Level 2 (from memory): 40 lg(value / 127) decibels, for velocity and volume alike. */
    private static double loudness(int value) {
        return value / 127.0 * value / 127.0;
    }

    private static long frame(double us) {
        return Math.round(us * PieceRenderer.SAMPLE_RATE / 1e6);
    }

    private static double bent(double value) {
        double size = Math.abs(value);
        return size <= KNEE ? value : Math.signum(value) * (KNEE + (1 - KNEE) * StrictMath.tanh((size - KNEE) / (1 - KNEE)));
    }
}
