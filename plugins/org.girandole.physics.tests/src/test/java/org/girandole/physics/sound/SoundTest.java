package org.girandole.physics.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SoundTest {

    // ISO 2533 gives 340.294 m/s at 15 degC; the others are c = sqrt(1.4 * 287.05287 * T) worked apart from this code.
    @ParameterizedTest
    @CsvSource({"-20, 318.958", "-10, 325.197", "0, 331.318", "10, 337.329", "15, 340.294", "20, 343.234",
            "25, 346.148", "30, 349.039", "40, 354.749"})
    void speedByTemperature(double airC, double mps) {
        assertThat(Sound.speedMps(airC)).isCloseTo(mps, within(0.0006));
    }

    // The textbook line 331.3 + 0.606 t stays within 0.8 m/s of it from -20 to 40 degC.
    @ParameterizedTest
    @CsvSource({"-20", "-5", "0", "12.5", "20", "33", "40"})
    void nearTheTextbookLine(double airC) {
        assertThat(Sound.speedMps(airC)).isCloseTo(331.3 + 0.606 * airC, within(0.8));
    }

    @Test
    void delayOfABurst150MetresAwayAnd120Up() {
        double slant = new Point3(0, 0, 120).distanceM(new Point3(150, 0, 0));
        assertThat(slant).isCloseTo(192.094, within(0.001));
        // 192.0937 m / 343.2336 m/s by hand
        assertThat(Sound.delay(slant, 20).delayUs()).isCloseTo(559_659, within(100L));
    }

    @ParameterizedTest
    @CsvSource({"100, 291347", "282.8427, 824053", "445.9821, 1299355"})
    void delayInMicroseconds(double slantM, long us) {
        // d / 343.2336 m/s by hand, to 0.1 ms
        assertThat(Sound.delay(slantM, 20).delayUs()).isCloseTo(us, within(100L));
    }

    @Test
    void noDistanceNoDelay() {
        assertThat(Sound.delay(0, 20).delayUs()).isZero();
    }

    @Test
    void derivationEndsWithTheDelay() {
        var delay = Sound.delay(100, 20);
        assertThat(delay.derivation().result().value() * 1e6).isCloseTo(delay.delayUs(), within(0.5));
        assertThat(delay.derivation().text()).contains("sqrt(1.4 * 287.05287 * 293.15)").contains("343.234 m/s");
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> Sound.speedMps(-300)).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("air temperature is -300 degC").hasMessageContaining("-60 to 60");
        assertThatThrownBy(() -> Sound.delay(-1, 20)).hasMessageContaining("distance from burst to listener is -1 m");
        assertThatThrownBy(() -> Sound.delay(Double.NaN, 20)).isInstanceOf(PhysicsInputException.class);
    }
}
