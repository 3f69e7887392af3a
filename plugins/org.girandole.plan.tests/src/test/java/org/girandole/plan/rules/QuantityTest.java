package org.girandole.plan.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class QuantityTest {
    @Test
    void momentsAreMinutesAndSecondsFromTheFirstNote() {
        assertThat(Quantity.moment(12_480_000)).isEqualTo("0:12.480");
        assertThat(Quantity.moment(-2_400_000)).isEqualTo("-0:02.400");
        assertThat(Quantity.moment(600_000_000)).isEqualTo("10:00.000");
    }

    @Test
    void momentsBetweenMillisecondsShowTheirMicroseconds() {
        assertThat(Quantity.moment(26_666_667)).isEqualTo("0:26.666667");
    }

    @Test
    void spansChooseTheirUnit() {
        assertThat(Quantity.span(0)).isEqualTo("0 ms");
        assertThat(Quantity.span(333)).isEqualTo("0.333 ms");
        assertThat(Quantity.span(999_999)).isEqualTo("999.999 ms");
        assertThat(Quantity.span(1_000_000)).isEqualTo("1 s");
        assertThat(Quantity.span(2_450_000)).isEqualTo("2.45 s");
    }

    @Test
    void adviceIsRoundedUp() {
        assertThat(Quantity.atLeast(555_001)).isEqualTo("556 ms");
        assertThat(Quantity.atLeast(1_000_000)).isEqualTo("1 s");
    }

    @Test
    void lengthsAndCurrentsAreRoundedForReading() {
        assertThat(Quantity.millimetres(0.0762)).isEqualTo("76.2 mm");
        assertThat(Quantity.millimetres(0.1)).isEqualTo("100 mm");
        assertThat(Quantity.metres(12.34)).isEqualTo("12.3 m");
        assertThat(Quantity.amperes(0.75049)).isEqualTo("0.75 A");
        assertThat(Quantity.degrees(-0.0)).isEqualTo("0 deg");
    }
}
