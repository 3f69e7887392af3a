package org.girandole.protocol;

/**
 * A waveform, one value each column of time from the first note on.
 *
 * @param nothing why there is none; null when there is one
 * @param columnUs length of a column
 * @param columns how many
 * @param low lowest samples, one signed byte a column, 127 is full scale; in Base64
 * @param high highest samples, likewise
 * @param rms root mean square, likewise
 */
public record WaveView(String nothing, long columnUs, int columns, String low, String high, String rms) {
    /** An answer that says why there is none. */
    public static WaveView nothing(String why) {
        return new WaveView(why, 1, 0, "", "", "");
    }
}
