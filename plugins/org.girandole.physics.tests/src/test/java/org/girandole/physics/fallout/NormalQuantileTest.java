package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalQuantileTest {

    // qnorm of R 4; the first three are in every table of the normal distribution. From memory, to the digits shown.
    @ParameterizedTest
    @CsvSource({"0.975, 1.959963984540054", "0.95, 1.644853626951473", "0.99, 2.326347874040841",
            "0.75, 0.674489750196082", "0.001, -3.090232306167813", "0.0000000001, -6.361340902404056"})
    void tables(double p, double z) {
        assertThat(NormalQuantile.of(p)).isCloseTo(z, within(2e-14 * Math.abs(z) + 1e-13));
    }

    @Test
    void oddAboutTheMiddleAndRising() {
        assertThat(NormalQuantile.of(0.5)).isZero();
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < 10_000; i++) {
            double p = i / 10_000.0;
            double z = NormalQuantile.of(p);
            assertThat(z).isGreaterThan(before);
            assertThat(NormalQuantile.of(1 - p)).isCloseTo(-z, within(1e-9));
            before = z;
        }
    }
}
