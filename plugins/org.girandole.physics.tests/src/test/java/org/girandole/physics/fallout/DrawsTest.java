package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;

import org.junit.jupiter.api.Test;

class DrawsTest {

    @Test
    void mixingIsThatOfTheJdksSplittableRandom() {
        for (long seed : new long[] {0, 1, -1, 42, Long.MIN_VALUE, 0x123456789ABCDEFL}) {
            assertThat(Draws.mix(seed + Draws.GOLDEN)).isEqualTo(new SplittableRandom(seed).nextLong());
        }
    }

    @Test
    void aSampleDoesNotDependOnThoseBefore() {
        var all = new Draws(7, "RedPeony75 at A");
        double[] first = new double[100];
        for (int i = 0; i < first.length; i++) {
            all.sample(i);
            first[i] = all.uniform();
            all.uniform();
        }
        var one = new Draws(7, "RedPeony75 at A");
        one.sample(57);
        assertThat(one.uniform()).isEqualTo(first[57]);
    }

    @Test
    void seedKeyAndPieceEachChangeTheDraws() {
        assertThat(first(7, "a", false)).isNotEqualTo(first(8, "a", false)).isNotEqualTo(first(7, "b", false))
                .isNotEqualTo(first(7, "a", true));
    }

    private static double first(long seed, String key, boolean piece) {
        var draws = new Draws(seed, key);
        if (piece) {
            draws.piece(0);
        } else {
            draws.sample(0);
        }
        return draws.uniform();
    }

    @Test
    void momentsOfTheNormalDistribution() {
        var draws = new Draws(1, "moments");
        double sum = 0;
        double squares = 0;
        double fourths = 0;
        int n = 200_000;
        for (int i = 0; i < n / 4; i++) {
            draws.sample(i);
            for (int k = 0; k < 4; k++) {
                double z = draws.normal();
                sum += z;
                squares += z * z;
                fourths += z * z * z * z;
            }
        }
        // mean 0, variance 1, fourth moment 3, each within five standard errors
        assertThat(sum / n).isCloseTo(0, within(5 / Math.sqrt(n)));
        assertThat(squares / n).isCloseTo(1, within(5 * Math.sqrt(2.0 / n)));
        assertThat(fourths / n).isCloseTo(3, within(5 * Math.sqrt(96.0 / n)));
    }
}
