package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;
import org.girandole.music.audio.AudioFiles;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * Turns samples into {@link Features} in one pass, holding only a window of them.
 *
 * <p>The rise of the spectrum is the "SuperFlux" of S. Böck and G. Widmer, Maximum filter vibrato suppression for onset
 * detection, DAFx 2013: short-time spectra with a Hann window of about 46 ms, magnitudes gathered by triangular filters a
 * semitone apart, their logarithm, and the positive difference to the maximum over the neighbouring bands of an earlier
 * spectrum. Pitch classes: spectra of about 186 ms, peaks only, folded into octaves (T. Fujishima, ICMC 1999).
 */
final class FeatureExtractor implements SampleSink {
    private static final double LOWEST_HZ = 30;
    private static final double HIGHEST_HZ = 16_000;
    private static final int BANDS_PER_OCTAVE = 12;
    private static final double LOW_TO_HZ = 200;
    private static final double MID_TO_HZ = 2500;
    /** Magnitudes of a full-scale tone are 1; the logarithm bends at 1/1000 of that. */
    private static final float LOG_GAIN = 1000;
    private static final int TIMBRE_BANDS = 20;
    private static final double CHROMA_FROM_HZ = 100;
    private static final double CHROMA_TO_HZ = 2000;

    private final int rate;
    private final float gain;
    private final int onlyChannel;
    private final int window;
    private final int longWindow;
    private final FloatFFT_1D fft;
    private final FloatFFT_1D longFft;
    private final float[] hann;
    private final float[] longHann;
    private final FilterBank bank;
    private final int[] pitchClass;
    /** The last samples, a ring. */
    private final float[] ring;
    private final int mask;
    private long written;
    private long frame;
    private float previousSample;

    private final float[] spectrum;
    private final float[] longSpectrum;
    private float[] bands;
    private float[] previousBands;
    private final double[] timbreSum = new double[TIMBRE_BANDS];
    private final FloatList flux = new FloatList();
    private final FloatList low = new FloatList();
    private final FloatList mid = new FloatList();
    private final FloatList high = new FloatList();
    private final FloatList level = new FloatList();
    private final FloatList attack = new FloatList();
    private final List<float[]> chroma = new ArrayList<>();
    private final List<float[]> timbre = new ArrayList<>();
    private double attackSum;
    private long attackEnd;

    /**
     * @param gain        brings the track to the loudness the logarithm is made for
     * @param onlyChannel -1 mixes all channels; else this one alone, for tracks whose channels cancel each other
     */
    FeatureExtractor(int sampleRate, double gain, int onlyChannel) {
        this.rate = sampleRate;
        this.gain = (float) gain;
        this.onlyChannel = onlyChannel;
        this.window = powerOfTwo(sampleRate * 2048 / 46_000.0);
        this.longWindow = 4 * window;
        this.fft = new FloatFFT_1D(window);
        this.longFft = new FloatFFT_1D(longWindow);
        this.hann = hann(window);
        this.longHann = hann(longWindow);
        this.bank = new FilterBank(sampleRate, window, LOWEST_HZ, HIGHEST_HZ, BANDS_PER_OCTAVE);
        this.bands = new float[bank.size()];
        this.previousBands = new float[bank.size()];
        this.pitchClass = pitchClasses(sampleRate, longWindow);
        this.ring = new float[2 * longWindow];
        this.mask = ring.length - 1;
        this.spectrum = new float[window];
        this.longSpectrum = new float[longWindow];
        this.attackEnd = sampleRate / 1000;
    }

    private static int powerOfTwo(double about) {
        return 1 << Math.max(6, (int) Math.round(Math.log(about) / Math.log(2)));
    }

    private static float[] hann(int size) {
        float[] w = new float[size];
        for (int i = 0; i < size; i++) {
            // Twice the window over its sum: a tone of full scale has magnitude 1.
            w[i] = (float) ((1 - Math.cos(2 * Math.PI * i / size)) * 2 / size);
        }
        return w;
    }

    private static int[] pitchClasses(int rate, int size) {
        int[] classes = new int[size / 2];
        for (int k = 0; k < classes.length; k++) {
            double hz = (double) k * rate / size;
            boolean used = hz >= CHROMA_FROM_HZ && hz <= CHROMA_TO_HZ;
            classes[k] = used ? Math.floorMod(Math.round(12 * Math.log(hz / 440) / Math.log(2)) + 9, 12) : -1;
        }
        return classes;
    }

    @Override
    public void take(float[][] channels, int count) {
        float share = gain / channels.length;
        for (int i = 0; i < count; i++) {
            float mix = 0;
            if (onlyChannel >= 0) {
                mix = channels[onlyChannel][i] * gain;
            } else {
                for (float[] channel : channels) {
                    mix += channel[i];
                }
                mix *= share;
            }
            add(mix);
        }
    }

    private void add(float sample) {
        ring[(int) (written & mask)] = sample;
        float difference = sample - previousSample;
        previousSample = sample;
        attackSum += difference * difference;
        written++;
        if (written >= attackEnd) {
            attack.add((float) attackSum);
            attackSum = 0;
            attackEnd = (attack.size() + 1L) * rate / 1000;
        }
        // The long window is centred on the same moment, so everything waits for it.
        while (centre(frame) + longWindow / 2 <= written) {
            analyse();
        }
    }

    private long centre(long index) {
        return index * rate / Features.RATE;
    }

    private void analyse() {
        long centre = centre(frame);
        transform(centre, hann, spectrum, fft);
        bank.apply(spectrum, bands);
        for (int b = 0; b < bands.length; b++) {
            bands[b] = (float) Math.log10(1 + LOG_GAIN * bands[b]);
        }
        rise();
        level.add(levelAt(centre));
        for (int b = 0; b < bands.length; b++) {
            timbreSum[b * TIMBRE_BANDS / bands.length] += bands[b];
        }
        if (frame % (Features.RATE / Features.SLOW_RATE) == 0) {
            chroma.add(chromaAt(centre));
            endTimbre();
        }
        float[] swap = previousBands;
        previousBands = bands;
        bands = swap;
        frame++;
    }

    private void rise() {
        double[] sums = new double[3];
        for (int b = 0; b < bands.length && frame > 0; b++) {
            float before = previousBands[b];
            if (b > 0) {
                before = Math.max(before, previousBands[b - 1]);
            }
            if (b + 1 < bands.length) {
                before = Math.max(before, previousBands[b + 1]);
            }
            double hz = bank.centreHz(b);
            sums[hz < LOW_TO_HZ ? 0 : hz < MID_TO_HZ ? 1 : 2] += Math.max(0, bands[b] - before);
        }
        flux.add((float) (sums[0] + sums[1] + sums[2]));
        low.add((float) sums[0]);
        mid.add((float) sums[1]);
        high.add((float) sums[2]);
    }

    private float levelAt(long centre) {
        int half = window / 4;
        double sum = 0;
        for (long i = centre - half; i < centre + half; i++) {
            float x = sample(i);
            sum += x * x;
        }
        // Without the gain: the level is that of the file.
        double meanSquare = sum / (2.0 * half) / ((double) gain * gain);
        return (float) Math.max(-120, 10 * Math.log10(meanSquare + 1e-12));
    }

    private float sample(long index) {
        return index < 0 || index >= written || index < written - ring.length ? 0 : ring[(int) (index & mask)];
    }

    private void transform(long centre, float[] shape, float[] out, FloatFFT_1D by) {
        long from = centre - shape.length / 2;
        for (int i = 0; i < shape.length; i++) {
            out[i] = sample(from + i) * shape[i];
        }
        by.realForward(out);
    }

    private float[] chromaAt(long centre) {
        transform(centre, longHann, longSpectrum, longFft);
        int n = longWindow / 2;
        float[] magnitude = new float[n];
        for (int k = 1; k < n; k++) {
            magnitude[k] = (float) Math.hypot(longSpectrum[2 * k], longSpectrum[2 * k + 1]);
        }
        float[] classes = new float[12];
        for (int k = 2; k + 1 < n; k++) {
            boolean peak = magnitude[k] > magnitude[k - 1] && magnitude[k] >= magnitude[k + 1];
            if (peak && pitchClass[k] >= 0) {
                classes[pitchClass[k]] += (float) Math.log10(1 + LOG_GAIN * magnitude[k]);
            }
        }
        return classes;
    }

    private void endTimbre() {
        float[] vector = new float[TIMBRE_BANDS];
        for (int b = 0; b < TIMBRE_BANDS; b++) {
            vector[b] = (float) timbreSum[b];
            timbreSum[b] = 0;
        }
        timbre.add(vector);
    }

    /** Ends the track: the last moments are analysed with silence after them. */
    Features features() {
        long length = written;
        while (centre(frame) < length) {
            while (written < centre(frame) + longWindow / 2) {
                ring[(int) (written & mask)] = 0;
                written++;
            }
            analyse();
        }
        return new Features(AudioFiles.lengthUs(length, rate), flux.toArray(), low.toArray(),
                mid.toArray(), high.toArray(), level.toArray(), attack.toArray(), chroma.toArray(float[][]::new),
                timbre.toArray(float[][]::new));
    }
}
