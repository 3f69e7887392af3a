package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirTest {

    // ISO 2533 (US Standard Atmosphere 1976): temperature, pressure, density, speed of sound
    @ParameterizedTest
    @CsvSource({"0, 288.150, 101325.00, 1.22500, 340.294", "500, 284.900, 95460.84, 1.16727, 338.369",
            "1000, 281.650, 89874.56, 1.11164, 336.434", "2000, 275.150, 79495.20, 1.00649, 332.529"})
    void standardAtmosphere(double heightM, double kelvin, double pascal, double density, double sound) {
        var overSeaLevel = StandardAir.undisturbed(0);
        assertThat(overSeaLevel.kelvin(heightM)).isCloseTo(kelvin, within(0.0005));
        assertThat(overSeaLevel.pascal(heightM)).isCloseTo(pascal, within(0.01));
        assertThat(overSeaLevel.densityKgM3(heightM)).isCloseTo(density, within(0.000006));
        assertThat(overSeaLevel.soundMps(heightM)).isCloseTo(sound, within(0.0006));
        // the same column of air seen from a site up there
        assertThat(StandardAir.undisturbed(heightM).densityKgM3(0)).isCloseTo(density, within(0.000006));
    }

    @Test
    void warmAirIsThinner() {
        // p / (R T) by hand at 30 degC and sea level: 101325 / (287.05287 * 303.15)
        assertThat(new StandardAir(0, 30).densityKgM3(0)).isCloseTo(1.16438, within(0.00001));
    }

    @Test
    void windDirectionIsWhereItComesFrom() {
        var west = new UniformWind(270, 8);
        assertThat(west.eastMps(50)).isCloseTo(8, within(1e-12));
        assertThat(west.northMps(50)).isCloseTo(0, within(1e-12));
        var north = new UniformWind(0, 8);
        assertThat(north.northMps(50)).isCloseTo(-8, within(1e-12));
    }

    @Test
    void powerLaw() {
        var wind = new PowerLawWind(270, 5, 10, PowerLawWind.OPEN_GROUND);
        assertThat(wind.eastMps(10)).isCloseTo(5, within(1e-12));
        // 5 * 10^(1/7) by hand
        assertThat(wind.eastMps(100)).isCloseTo(6.9475, within(0.0001));
        assertThat(wind.eastMps(0)).isZero();
    }

    @Test
    void layers() {
        var wind = new LayeredWind(List.of(new LayeredWind.Layer(10, 270, 4), new LayeredWind.Layer(110, 180, 8)));
        assertThat(wind.eastMps(0)).isCloseTo(4, within(1e-12));
        assertThat(wind.eastMps(60)).isCloseTo(2, within(1e-12));
        assertThat(wind.northMps(60)).isCloseTo(4, within(1e-12));
        assertThat(wind.northMps(500)).isCloseTo(8, within(1e-12));
    }

    // DEFRA quarry blasting guidance, appendix D: sphere
    @ParameterizedTest
    @CsvSource({"0, 0.490", "0.4, 0.490", "0.5, 0.500", "0.6, 0.540", "1.0, 0.820", "1.27, 1.000", "3, 1.000", "0.8, 0.680"})
    void dragOfASphere(double mach, double cd) {
        assertThat(DragCurve.SPHERE.cd(mach)).isCloseTo(cd, within(1e-12));
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> new UniformWind(Double.NaN, 5)).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("direction of the wind");
        assertThatThrownBy(() -> new UniformWind(0, -5)).hasMessageContaining("speed of the wind is -5 m/s");
        assertThatThrownBy(() -> new StandardAir(9000, 15)).hasMessageContaining("elevation of the site is 9000 m");
        assertThatThrownBy(() -> new LayeredWind(List.of(new LayeredWind.Layer(50, 0, 1), new LayeredWind.Layer(10, 0, 1))))
                .hasMessageContaining("a wind layer at 10 m after one at 50 m");
        assertThatThrownBy(() -> new DragCurve(List.of(), "")).hasMessageContaining("drag curve without points");
    }
}
