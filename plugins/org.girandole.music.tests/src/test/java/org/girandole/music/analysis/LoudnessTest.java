package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LoudnessTest {

    /** ITU-R BS.1770-4 annex 1, tables 1 and 2: the coefficients for 48 kHz. */
    @Test
    void filtersAt48kHzAreTheStandardsOwn() {
        double[] c = LoudnessMeter.coefficients(48_000);
        assertThat(c).containsExactly(new double[] { 1.53512485958697, -2.69169618940638, 1.19839281085285,
            -1.69065929318241, 0.73248077421585, -1.99004745483398, 0.99007225036621 }, within(1e-9));
    }

    /**
     * ITU-R BS.1770-4 annex 1: a 0 dB FS tone of 997 Hz in one front channel reads -3.01 LKFS. The filters of other rates than
     * 48 kHz differ a little in shape; EBU Tech 3341 allows meters 0.1 LU.
     */
    @ParameterizedTest
    @ValueSource(ints = { 8000, 22_050, 44_100, 48_000, 96_000, 192_000 })
    void aFullScaleToneInOneChannelReadsMinus3(int rate) {
        LoudnessMeter meter = new LoudnessMeter(rate, 2);
        tone(meter, rate, 997, 5, 0, Double.NEGATIVE_INFINITY);
        assertThat(meter.loudness().integratedLufs()).isCloseTo(-3.01, within(rate == 48_000 ? 0.005 : 0.1));
    }

    /** EBU Tech 3341 (2016) table 1, cases 1 and 2. */
    @ParameterizedTest
    @ValueSource(doubles = { -23, -33 })
    void aStereoToneReadsItsLevel(double level) {
        LoudnessMeter meter = new LoudnessMeter(48_000, 2);
        tone(meter, 48_000, 1000, 20, level, level);
        Loudness loudness = meter.loudness();
        assertThat(loudness.integratedLufs()).isCloseTo(level, within(0.1));
        assertThat(loudness.maxShortTermLufs()).isCloseTo(level, within(0.1));
        assertThat((double) loudness.momentary()[100]).isCloseTo(level, within(0.1));
        assertThat(loudness.shortTermAround(10_000_000)).isCloseTo(level, within(0.1));
    }

    /** EBU Tech 3341 case 3: the relative gate leaves out the quiet ends. */
    @Test
    void quietEndsDoNotCount() {
        LoudnessMeter meter = new LoudnessMeter(48_000, 2);
        tone(meter, 48_000, 1000, 10, -36, -36);
        tone(meter, 48_000, 1000, 60, -23, -23);
        tone(meter, 48_000, 1000, 10, -36, -36);
        assertThat(meter.loudness().integratedLufs()).isCloseTo(-23, within(0.1));
    }

    /** EBU Tech 3341 case 4: and the absolute gate what is below -70. */
    @Test
    void nearSilenceDoesNotCount() {
        LoudnessMeter meter = new LoudnessMeter(48_000, 2);
        for (double[] part : new double[][] { { 10, -72 }, { 10, -36 }, { 60, -23 }, { 10, -36 }, { 10, -72 } }) {
            tone(meter, 48_000, 1000, part[0], part[1], part[1]);
        }
        assertThat(meter.loudness().integratedLufs()).isCloseTo(-23, within(0.1));
    }

    /** EBU Tech 3341 case 5. */
    @Test
    void louderMiddleAveragesByPower() {
        LoudnessMeter meter = new LoudnessMeter(48_000, 2);
        tone(meter, 48_000, 1000, 20, -26, -26);
        tone(meter, 48_000, 1000, 20.1, -20, -20);
        tone(meter, 48_000, 1000, 20, -26, -26);
        assertThat(meter.loudness().integratedLufs()).isCloseTo(-23, within(0.1));
    }

    /** EBU Tech 3341 case 6: 5.0 channels, here with a loud low-frequency channel that may not count. */
    @Test
    void surroundsCountMoreAndLowFrequencyNot() {
        LoudnessMeter meter = new LoudnessMeter(48_000, 6);
        tone(meter, 48_000, 1000, 20, -28, -28, -24, 0, -30, -30);
        assertThat(meter.loudness().integratedLufs()).isCloseTo(-23, within(0.1));
    }

    @Test
    void silenceAndTooLittleAreMinusInfinity() {
        LoudnessMeter silent = new LoudnessMeter(8000, 1);
        silent.take(new float[][] { new float[8000] }, 8000);
        assertThat(silent.loudness().integratedLufs()).isEqualTo(Double.NEGATIVE_INFINITY);
        LoudnessMeter brief = new LoudnessMeter(48_000, 1);
        tone(brief, 48_000, 1000, 0.2, 0);
        assertThat(brief.loudness().integratedLufs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(new LoudnessMeter(8000, 1).loudness().shortTermAround(0)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    private static void tone(LoudnessMeter meter, int rate, double hz, double seconds, double... levelsDb) {
        int frames = (int) Math.round(rate * seconds);
        float[][] block = new float[levelsDb.length][1000];
        for (int at = 0; at < frames; at += 1000) {
            int n = Math.min(1000, frames - at);
            for (int c = 0; c < levelsDb.length; c++) {
                double amplitude = Math.pow(10, levelsDb[c] / 20);
                for (int i = 0; i < n; i++) {
                    block[c][i] = (float) (amplitude * Math.sin(2 * Math.PI * hz * (at + i) / rate));
                }
            }
            meter.take(block, n);
        }
    }
}
