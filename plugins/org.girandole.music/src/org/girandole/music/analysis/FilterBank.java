package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/** Triangular filters over the bins of a spectrum, evenly spaced in pitch; filters that would share all bins are merged. */
final class FilterBank {
    private final List<float[]> weights = new ArrayList<>();
    private final List<Integer> firstBin = new ArrayList<>();
    private final List<Double> centres = new ArrayList<>();

    FilterBank(int rate, int window, double fromHz, double toHz, int perOctave) {
        double binHz = (double) rate / window;
        int last = -1;
        List<Integer> bins = new ArrayList<>();
        for (int i = 0; fromHz * Math.pow(2, (double) i / perOctave) <= Math.min(toHz, rate * 0.48); i++) {
            int bin = (int) Math.round(fromHz * Math.pow(2, (double) i / perOctave) / binHz);
            if (bin > Math.max(0, last)) {
                bins.add(bin);
                last = bin;
            }
        }
        for (int i = 1; i + 1 < bins.size(); i++) {
            add(bins.get(i - 1), bins.get(i), bins.get(i + 1), binHz);
        }
    }

    private void add(int from, int peak, int to, double binHz) {
        float[] w = new float[to - from - 1];
        for (int bin = from + 1; bin < to; bin++) {
            w[bin - from - 1] = bin <= peak ? (float) (bin - from) / (peak - from) : (float) (to - bin) / (to - peak);
        }
        weights.add(w);
        firstBin.add(from + 1);
        centres.add(peak * binHz);
    }

    int size() {
        return weights.size();
    }

    double centreHz(int band) {
        return centres.get(band);
    }

    /** @param spectrum real and imaginary parts in turn, as the transform leaves them */
    void apply(float[] spectrum, float[] bands) {
        for (int b = 0; b < bands.length; b++) {
            float[] w = weights.get(b);
            int bin = firstBin.get(b);
            float sum = 0;
            for (float weight : w) {
                float re = spectrum[2 * bin];
                float im = spectrum[2 * bin + 1];
                sum += weight * (float) Math.sqrt(re * re + im * im);
                bin++;
            }
            bands[b] = sum;
        }
    }
}
