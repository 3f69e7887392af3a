package org.girandole.music.analysis;

/**
 * What the finders hear of a track: curves of 100 values a second, value n for the moment n * 10 ms, and slower ones of 10
 * values a second.
 *
 * @param lengthUs  of the track
 * @param flux      rise of the spectrum, all bands (see {@link FeatureExtractor})
 * @param low       the same below 200 Hz
 * @param mid       200 to 2500 Hz
 * @param high      above 2500 Hz
 * @param level     root mean square of the mix around the moment, dB below full scale, at least -120
 * @param attack    energy of the differenced mix, one value a millisecond, for finding the exact moment of an onset
 * @param chroma    10 a second: strength of the 12 pitch classes from C
 * @param timbre    10 a second: log energy in bands
 */
record Features(long lengthUs, float[] flux, float[] low, float[] mid, float[] high, float[] level, float[] attack,
        float[][] chroma, float[][] timbre) {
    static final int RATE = 100;
    static final long STEP_US = 1_000_000 / RATE;
    static final int SLOW_RATE = 10;
    static final long SLOW_STEP_US = 1_000_000 / SLOW_RATE;

    int size() {
        return flux.length;
    }
}
