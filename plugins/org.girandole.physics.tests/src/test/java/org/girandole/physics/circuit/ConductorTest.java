package org.girandole.physics.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConductorTest {

    // AWG table of a wire maker (cirris.com): ohm per 1000 ft; 1000 ft = 0.3048 km
    @ParameterizedTest
    @CsvSource({"16, 4.016", "20, 10.15", "22, 16.14", "24, 25.67"})
    void gaugeAgainstAPrintedTable(int gauge, double ohmPer1000Ft) {
        assertThat(Conductor.awg(gauge).ohmPerKm() * 0.3048).isCloseTo(ohmPer1000Ft, within(0.005 * ohmPer1000Ft / 10));
    }

    @Test
    void diameterAndAreaOfAGaugeStandInItsDerivation() {
        // ASTM B258: 24 AWG is 0.5106 mm, 0.2047 mm2
        var steps = Conductor.awg(24).derivation().steps();
        assertThat(steps.get(0).value()).isCloseTo(0.5106, within(0.00005));
        assertThat(steps.get(1).value()).isCloseTo(0.2047, within(0.00005));
        assertThat(Conductor.awg(24).name()).isEqualTo("24 AWG");
        assertThat(Conductor.awg(-1).name()).isEqualTo("00 AWG");
    }

    // IEC 60228 tables 1, 2 and 3 as printed by several cable makers
    @ParameterizedTest
    @CsvSource({"0.5, 36.0, 36.7, 39.0, 40.1", "0.75, 24.5, 24.8, 26.0, 26.7", "1.0, 18.1, 18.2, 19.5, 20.0",
            "1.5, 12.1, 12.2, 13.3, 13.7", "2.5, 7.41, 7.56, 7.98, 8.21"})
    void maximaOfTheStandard(double mm2, double plain, double coated, double flexible, double flexibleCoated) {
        assertThat(Conductor.crossSection(mm2, Strands.SOLID, false).ohmPerKm()).isEqualTo(plain);
        assertThat(Conductor.crossSection(mm2, Strands.STRANDED, true).ohmPerKm()).isEqualTo(coated);
        assertThat(Conductor.crossSection(mm2, Strands.FLEXIBLE, false).ohmPerKm()).isEqualTo(flexible);
        assertThat(Conductor.crossSection(mm2, Strands.FLEXIBLE, true).ohmPerKm()).isEqualTo(flexibleCoated);
    }

    @Test
    void sizesOutsideTheTableFollowFromResistivity() {
        var conductor = Conductor.crossSection(0.25, Strands.FLEXIBLE, false);
        assertThat(conductor.ohmPerKm()).isCloseTo(68.964, within(1e-9)); // 17.241 / 0.25 by hand
        assertThat(conductor.derivation().text()).contains("IEC 60028").doesNotContain("IEC 60228");
    }

    // 1 + 0.00393 (t - 20) by hand; IEC 60028
    @ParameterizedTest
    @CsvSource({"-20, 0.8428", "0, 0.9214", "20, 1", "40, 1.0786", "60, 1.1572"})
    void temperature(double copperC, double factor) {
        assertThat(Lead.temperatureFactor(copperC)).isCloseTo(factor, within(1e-12));
    }

    // IEC 60228 annex: k = 254.5 / (234.5 + t) brings a measured value back to 20 degC
    @ParameterizedTest
    @CsvSource({"5", "10", "30", "40", "60"})
    void temperatureAgreesWithTheStandardsReduction(double copperC) {
        assertThat(Lead.temperatureFactor(copperC)).isCloseTo((234.5 + copperC) / 254.5, within(2e-5 * 40));
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> Conductor.awg(99)).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("99 AWG").hasMessageContaining("-3 (0000) to 40");
        assertThatThrownBy(() -> Conductor.crossSection(0, Strands.SOLID, false)).hasMessageContaining("cross-section is 0 mm2");
        assertThatThrownBy(() -> new Lead(Conductor.awg(24), -1, 20)).hasMessageContaining("length of the lead is -1 m");
    }
}
