package org.girandole.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RationalTest {

    @ParameterizedTest
    @CsvSource({ "1/2, 1, 2", "3.5, 7, 2", "-6/4, -3, 2", "0, 0, 1", "+12, 12, 1", "0.333, 333, 1000", "-0.5, -1, 2" })
    void readsTextInLowestTerms(String text, long num, long den) {
        Rational read = Rational.parse(text);
        assertThat(read.num()).isEqualTo(num);
        assertThat(read.den()).isEqualTo(den);
        assertThat(Rational.parse(read.toString())).isEqualTo(read);
    }

    @ParameterizedTest
    @ValueSource(strings = { "", " 1", "1/", "/2", "1.", ".5", "1e3", "1/2/3", "one", "1,5", "1234567890123456789", "٣" })
    void refusesOtherText(String text) {
        assertThatThrownBy(() -> Rational.parse(text)).isInstanceOf(NumberFormatException.class).hasMessageContaining("3.5 or 1/2");
    }

    @Test
    void refusesZeroBelowTheLine() {
        assertThatThrownBy(() -> Rational.parse("1/0")).isInstanceOf(NumberFormatException.class).hasMessageContaining("zero");
        assertThatThrownBy(() -> Rational.of(1, 0)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Rational.ONE.dividedBy(Rational.ZERO)).isInstanceOf(ArithmeticException.class);
    }

    @ParameterizedTest
    @CsvSource({ "7/2, 3, 4, 4", "-7/2, -4, -3, -3", "5, 5, 5, 5", "1/3, 0, 1, 0", "-1/3, -1, 0, 0", "-2/3, -1, 0, -1" })
    void roundsDownUpAndHalfUp(String text, long floor, long ceil, long halfUp) {
        Rational value = Rational.parse(text);
        assertThat(value.floor()).isEqualTo(floor);
        assertThat(value.ceil()).isEqualTo(ceil);
        assertThat(value.roundHalfUp()).isEqualTo(halfUp);
    }

    /** The JDK's BigDecimal is the judge: sums, products and order of decimal fractions. */
    @Test
    void agreesWithBigDecimal() {
        Random random = new Random(7);
        for (int i = 0; i < 2000; i++) {
            BigDecimal a = BigDecimal.valueOf(random.nextLong(), random.nextInt(18));
            BigDecimal b = BigDecimal.valueOf(random.nextInt(), random.nextInt(9));
            assertThat(Rational.of(a).plus(Rational.of(b))).isEqualTo(Rational.of(a.add(b)));
            assertThat(Rational.of(a).minus(Rational.of(b))).isEqualTo(Rational.of(a.subtract(b)));
            assertThat(Rational.of(a).times(Rational.of(b))).isEqualTo(Rational.of(a.multiply(b)));
            assertThat(Rational.of(a).compareTo(Rational.of(b))).isEqualTo(a.compareTo(b));
            assertThat(Rational.of(b).floor()).isEqualTo(b.setScale(0, RoundingMode.FLOOR).longValueExact());
            assertThat(Rational.of(b).toDouble()).isEqualTo(b.doubleValue());
        }
    }

    @Test
    void saysSoWhenALongIsTooSmall() {
        Rational large = Rational.of(Long.MAX_VALUE).times(2);
        assertThat(large.dividedBy(Rational.of(2)).num()).isEqualTo(Long.MAX_VALUE);
        assertThatThrownBy(large::num).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(large::floor).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(large::roundHalfUp).isInstanceOf(ArithmeticException.class);
    }
}
