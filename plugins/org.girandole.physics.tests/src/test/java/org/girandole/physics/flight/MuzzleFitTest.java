package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MuzzleFitTest {
    private static final Air SEA_LEVEL = new UniformAir(1.225, 340.294);

    private static Body sphere(double kg, double diameterM) {
        return new Body(kg, diameterM, DragCurve.constant(0.47, "given"));
    }

    // Closed form v0 = Vt sqrt(exp(2 g H / Vt^2) - 1) with the middle heights of the Japanese trade tables, Cd 0.47;
    // and the time to get there, t = Vt / g atan(v0 / Vt)
    @ParameterizedTest
    @CsvSource({"0.23, 0.086, 125, 83.4, 4.33", "0.55, 0.114, 165, 94.2, 5.00", "1.1, 0.142, 195, 97.7, 5.50",
            "1.9, 0.171, 220, 101.1, 5.89", "4.3, 0.233, 280, 116.4, 6.60", "8.5, 0.285, 330, 119.8, 7.27"})
    void speedThatReachesAHeight(double kg, double diameterM, double apexM, double v0, double riseS) {
        var body = sphere(kg, diameterM);
        double fitted = MuzzleFit.fromApex(body, apexM, SEA_LEVEL).speedMps();
        assertThat(fitted).isCloseTo(v0, within(0.06));
        var apex = new FlightModel(SEA_LEVEL, Wind.CALM).apex(body, Launch.vertical(fitted));
        assertThat(apex.timeUs() / 1e6).isCloseTo(riseS, within(0.006));
        assertThat(apex.place().z()).isCloseTo(apexM, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"2400000, 105", "3000000, 90", "3900000, 105", "4300000, 110"})
    void riseAndHeightAreBothMet(long riseUs, double apexM) {
        var body = Body.estimated(75);
        double speed = MuzzleFit.fromRiseAndApex(body, riseUs, apexM, SEA_LEVEL).speedMps();
        var burst = new FlightModel(SEA_LEVEL, Wind.CALM).at(body, Launch.vertical(speed), riseUs);
        assertThat(burst.place().z()).isCloseTo(apexM, within(1e-6));
    }

    @Test
    void withoutDragItIsTheParabola() {
        // h = v t - g t^2 / 2 by hand: 100 m in 4 s
        var air = new UniformAir(0, 340);
        assertThat(MuzzleFit.fromRiseAndApex(sphere(1, 0.1), 4_000_000, 100, air).speedMps())
                .isCloseTo(25 + FlightModel.STANDARD_GRAVITY * 2, within(1e-8));
    }

    @Test
    void tooSlowARiseIsImpossible() {
        assertThatThrownBy(() -> MuzzleFit.fromRiseAndApex(sphere(1, 0.1), 10_000_000, 50, new UniformAir(0, 340)))
                .isInstanceOf(PhysicsInputException.class)
                // sqrt(2 * 50 / g) by hand
                .hasMessage("a rise of 10 s to 50 m; expected at most 3.1933 s, by then a shell that reaches 50 m has done"
                        + " so and falls; correct rise or apex");
    }

    @Test
    void tooFastARiseIsImpossible() {
        assertThatThrownBy(() -> MuzzleFit.fromRiseAndApex(Body.estimated(75), 500_000, 150, SEA_LEVEL))
                .isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("a rise of 0.5 s to 150 m").hasMessageContaining("340 m/s");
    }

    @Test
    void anUnreachableHeightIsNamed() {
        assertThatThrownBy(() -> MuzzleFit.fromApex(Body.estimated(50), 1500, SEA_LEVEL))
                .hasMessageContaining("an apex of 1500 m").hasMessageContaining("340 m/s");
        assertThatThrownBy(() -> MuzzleFit.fromApex(Body.estimated(50), 0, SEA_LEVEL)).hasMessageContaining("apex is 0 m");
        assertThatThrownBy(() -> MuzzleFit.fromRiseAndApex(Body.estimated(50), 0, 50, SEA_LEVEL)).hasMessageContaining("rise is 0 us");
    }

    @ParameterizedTest
    @CsvSource({"75", "100", "125", "150", "200", "250", "300"})
    void estimatedRiseAndApexAreAPossiblePair(double calibreMm) {
        var body = Body.estimated(calibreMm);
        var rise = Estimates.riseUs(calibreMm);
        double apex = Estimates.apexM(calibreMm).value();
        double speed = MuzzleFit.fromRiseAndApex(body, Math.round(rise.value()), apex, SEA_LEVEL).speedMps();
        assertThat(speed).isBetween(60.0, 200.0);
        var highest = new FlightModel(SEA_LEVEL, Wind.CALM)
                .apex(body, Launch.vertical(MuzzleFit.fromApex(body, apex, SEA_LEVEL).speedMps()));
        assertThat((double) highest.timeUs()).isBetween(rise.value(), rise.most());
    }
}
