package org.girandole.benchmarks.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class EventScoresTest {

    /** Test case 00 of mir_eval (MIT licence): tests/data/onset/ref00.txt, est00.txt and output00.json. */
    @Test
    void scoresThePublishedOnsetCase() {
        long[] reference = us(0.355011337, 0.807006802, 0.943990929, 1.968367346, 2.171428571, 2.380612244, 2.563265306,
                3.439455782, 4.643990929, 6.185215419, 6.339047619, 6.526258503, 6.678639455, 7.397006802, 8.354829931,
                8.798911564, 8.877278911, 8.948390022, 9.184943310, 9.430204081, 9.601451247, 9.811882086);
        long[] estimate = us(0.174149659, 0.415056689, 0.850430839, 0.992653061, 1.904036281, 2.023038548, 2.214603174,
                2.438095238, 2.609342403, 3.482993197, 4.684625850, 4.728163265, 5.700498866, 5.868843537, 6.217142857,
                6.266485260, 6.385487528, 6.713469387, 7.439092970, 7.471020408, 8.182131519, 8.405623582, 8.852607709,
                9.232834467, 9.505668934, 9.665306122, 9.830748299);
        EventScores scores = EventScores.onsets(reference, estimate);
        assertThat(scores.precision()).isCloseTo(0.48148148148148145, within(1e-12));
        assertThat(scores.recall()).isCloseTo(0.5909090909090909, within(1e-12));
        assertThat(scores.f()).isCloseTo(0.5306122448979591, within(1e-12));
        assertThat(scores.matched()).isEqualTo(13);
    }

    /** By the definition: one to one, and a beat before 5 s does not count. */
    @Test
    void pairsOneToOneAndDropsTheFirstFiveSecondsOfBeats() {
        assertThat(EventScores.onsets(us(1), us(0.99, 1.01)).matched()).isEqualTo(1);
        assertThat(EventScores.onsets(us(1, 1.04), us(1.045, 1.08)).matched()).isEqualTo(2);
        assertThat(EventScores.beats(us(4.9, 5.0, 6.0), us(4.9, 5.06, 6.08))).isEqualTo(new EventScores(1, 2, 2));
        assertThat(EventScores.onsets(us(), us(1)).f()).isZero();
        assertThat(EventScores.onsets(us(1), us()).f()).isZero();
    }

    private static long[] us(double... seconds) {
        return Arrays.stream(seconds).mapToLong(s -> Math.round(s * 1e6)).toArray();
    }
}
