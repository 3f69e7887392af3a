package org.girandole.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** A minute of clicks, a soundtrack to begin with: 120 beats a minute, the first of each four higher. */
final class ClickTrack {
    private static final int RATE_HZ = 8_000;
    private static final int SECONDS = 60;
    private static final int BEAT_SAMPLES = RATE_HZ / 2;
    private static final int CLICK_SAMPLES = RATE_HZ / 25;
    private static final int LOUDEST = 100;

    private ClickTrack() {
    }

    /** A WAV file, 8 bit, mono. */
    static byte[] wav() throws IOException {
        byte[] samples = new byte[RATE_HZ * SECONDS];
        for (int i = 0; i < samples.length; i++) {
            int beat = i / BEAT_SAMPLES;
            int inBeat = i % BEAT_SAMPLES;
            double fading = inBeat < CLICK_SAMPLES ? 1 - (double) inBeat / CLICK_SAMPLES : 0;
            double pitchHz = beat % 4 == 0 ? 1_000 : 800;
            samples[i] = (byte) Math.round(LOUDEST * fading * Math.sin(2 * Math.PI * pitchHz * inBeat / RATE_HZ));
            // Eight-bit WAV is unsigned: silence is 128.
            samples[i] ^= (byte) 0x80;
        }
        AudioFormat format = new AudioFormat(AudioFormat.Encoding.PCM_UNSIGNED, RATE_HZ, 8, 1, 1, RATE_HZ, false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length), AudioFileFormat.Type.WAVE, out);
        return out.toByteArray();
    }
}
