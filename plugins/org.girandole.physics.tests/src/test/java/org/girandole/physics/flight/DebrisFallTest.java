package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;

/** Drift of something that sinks evenly: speed of the wind times height over terminal speed, by hand. */
class DebrisFallTest {
    private static final Air SEA_LEVEL = new UniformAir(1.225, 340);

    @Test
    void evenWind() {
        var fall = DebrisFall.from(new Point3(10, 20, 120), 8, SEA_LEVEL, new UniformWind(270, 5));
        assertThat(fall.fallUs()).isEqualTo(15_000_000);
        assertThat(fall.place().x()).isCloseTo(10 + 75, within(1e-9));
        assertThat(fall.place().y()).isCloseTo(20, within(1e-9));
        assertThat(fall.derivation().result().value()).isCloseTo(75, within(1e-9));
    }

    @Test
    void powerLawWind() {
        // integral of 5 (z/10)^(1/7) / 8 from 0 to 120 = 5/8 * 10^(-1/7) * 7/8 * 120^(8/7)
        double drift = 5.0 / 8 * Math.pow(10, -1.0 / 7) * 7 / 8 * Math.pow(120, 8.0 / 7);
        var fall = DebrisFall.from(new Point3(0, 0, 120), 8, SEA_LEVEL, new PowerLawWind(180, 5, 10, 1.0 / 7));
        assertThat(fall.place().y()).isCloseTo(drift, within(0.001 * drift / 10));
    }

    @Test
    void thinnerAirSinksFaster() {
        var thin = DebrisFall.from(new Point3(0, 0, 100), 10, new UniformAir(1.225 / 4, 340), Wind.CALM);
        assertThat(thin.fallUs()).isEqualTo(5_000_000);
    }

    @Test
    void onTheGroundItStays() {
        assertThat(DebrisFall.from(new Point3(1, 2, 0), 8, SEA_LEVEL, new UniformWind(0, 9)).place()).isEqualTo(new Point2(1, 2));
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> DebrisFall.from(new Point3(0, 0, 50), 0, SEA_LEVEL, Wind.CALM))
                .hasMessageContaining("terminal speed of debris is 0 m/s");
    }
}
