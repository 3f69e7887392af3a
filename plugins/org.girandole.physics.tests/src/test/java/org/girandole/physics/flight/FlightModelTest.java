package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.assertj.core.data.Percentage;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlightModelTest {
    private static final double G = FlightModel.STANDARD_GRAVITY;
    private static final Air SEA_LEVEL = new UniformAir(1.225, 340.294);
    private static final Air VACUUM = new UniformAir(0, 340.294);
    private static final Percentage A_THOUSANDTH = Percentage.withPercentage(0.1);
    private static final Point3 ORIGIN = new Point3(0, 0, 0);

    private static Body sphere(double kg, double diameterM, double cd) {
        return new Body(kg, diameterM, DragCurve.constant(cd, "given"));
    }

    // Pennsylvania State University, programming exercise on a vertical shot: 10 kg, Cd 0.40, rho 1.15, A 0.008 m2,
    // 300 m/s, g 9.807; the results are its closed form
    @Test
    void verticalShotOfAUniversityExercise() {
        var body = sphere(10, Math.sqrt(4 * 0.008 / Math.PI), 0.40);
        var flight = new FlightModel(new UniformAir(1.15, 340), Wind.CALM, 9.807)
                .fly(body, Launch.vertical(300), new Burst.AtApex());
        assertThat(flight.apex().place().z()).isCloseTo(2687.546, A_THOUSANDTH);
        assertThat(flight.apex().timeUs() / 1e6).isCloseTo(21.53754, A_THOUSANDTH);
        assertThat(flight.unburst().timeUs() / 1e6).isCloseTo(46.91746, A_THOUSANDTH);
        assertThat(flight.unburst().speedMps()).isCloseTo(182.961, A_THOUSANDTH);
    }

    // College physics text, chapter 4: a shell without drag rises 110 m; g 9.80
    @Test
    void textbookShellWithoutDrag() {
        var model = new FlightModel(VACUUM, Wind.CALM, 9.80);
        assertThat(model.apex(sphere(2.5, 0.1, 0.47), Launch.vertical(46.43)).place().z()).isCloseTo(110, within(0.02));
    }

    // Parabola by hand: 100 m/s tilted 10 degrees
    @Test
    void parabolaWithoutDrag() {
        var flight = new FlightModel(VACUUM, Wind.CALM).fly(sphere(1, 0.1, 0.47), new Launch(ORIGIN, 100, 10, 90),
                new Burst.AtApex());
        assertThat(flight.unburst().place().x()).isCloseTo(348.763, within(0.001));
        assertThat(flight.apex().place().z()).isCloseTo(494.484, within(0.001));
        assertThat(flight.unburst().timeUs() / 1e6).isCloseTo(20.0845, within(0.0001));
        assertThat(flight.unburst().place().y()).isCloseTo(0, within(1e-9));
    }

    // Sphere, Cd 0.47, rho 1.225: worked apart from this code by a Runge-Kutta of 1 ms step, the vertical ones also by
    // closed form. Tilt is positive downwind, x downwind.
    @ParameterizedTest
    @CsvSource({
            "100, 1.1, 0.142, 0, 0, 5.546, 0, 199.50, 12.829, 0, 43.74",
            "100, 1.1, 0.142, 5, 0, 5.522, 27.65, 198.15, 12.782, 48.42, 43.69",
            "100, 1.1, 0.142, 0, 5, 5.540, 11.80, 199.30, 12.822, 36.17, 43.91",
            "100, 1.1, 0.142, 0, 9, 5.529, 21.24, 198.86, 12.805, 65.34, 44.30",
            "100, 1.1, 0.142, -5, 9, 5.476, -6.11, 196.33, 12.713, 18.57, 43.89",
            "80, 0.23, 0.086, 0, 0, 4.271, 0, 120.23, 9.966, 0, 33.38",
            "80, 0.23, 0.086, 0, 9, 4.250, 17.04, 119.62, 9.936, 52.66, 34.15",
            "110, 8.5, 0.285, 0, 0, 7.016, 0, 300.63, 15.715, 0, 57.45"})
    void workedFlights(double v0, double kg, double diameterM, double tiltDeg, double windMps, double apexS,
            double apexX, double apexZ, double downS, double downX, double downMps) {
        // wind from the west blows towards +x; a negative tilt leans west
        var model = new FlightModel(SEA_LEVEL, new UniformWind(270, windMps));
        var flight = model.fly(sphere(kg, diameterM, 0.47),
                new Launch(ORIGIN, v0, Math.abs(tiltDeg), tiltDeg < 0 ? 270 : 90), new Burst.AtApex());
        assertThat(flight.apex().timeUs() / 1e6).isCloseTo(apexS, A_THOUSANDTH);
        assertThat(flight.apex().place().x()).isCloseTo(apexX, within(0.001 * Math.abs(apexX) + 0.005));
        assertThat(flight.apex().place().z()).isCloseTo(apexZ, A_THOUSANDTH);
        assertThat(flight.unburst().timeUs() / 1e6).isCloseTo(downS, A_THOUSANDTH);
        assertThat(flight.unburst().place().x()).isCloseTo(downX, within(0.001 * Math.abs(downX) + 0.005));
        assertThat(flight.unburst().speedMps()).isCloseTo(downMps, A_THOUSANDTH);
    }

    // Closed forms of vertical flight with quadratic drag at constant density
    @ParameterizedTest
    @CsvSource({"40, 0.05, 0.05", "75, 0.12, 0.069", "95, 0.55, 0.114", "120, 4.3, 0.233", "200, 60, 0.6"})
    void closedForms(double v0, double kg, double diameterM) {
        var body = sphere(kg, diameterM, 0.45);
        double vt = Math.sqrt(2 * kg * G / (1.225 * 0.45 * Math.PI * diameterM * diameterM / 4));
        double height = vt * vt / (2 * G) * Math.log(1 + v0 * v0 / (vt * vt));
        double up = vt / G * Math.atan(v0 / vt);
        double cosh = Math.exp(G * height / (vt * vt));
        double down = vt / G * Math.log(cosh + Math.sqrt(cosh * cosh - 1));
        var flight = new FlightModel(SEA_LEVEL, Wind.CALM).fly(body, Launch.vertical(v0), new Burst.AtApex());
        assertThat(flight.apex().place().z()).isCloseTo(height, within(1e-5));
        assertThat(flight.apex().timeUs() / 1e6).isCloseTo(up, within(2e-6));
        assertThat(flight.unburst().timeUs() / 1e6).isCloseTo(up + down, within(2e-6));
        assertThat(flight.unburst().speedMps()).isCloseTo(v0 / Math.sqrt(1 + v0 * v0 / (vt * vt)), within(1e-5));
        assertThat(body.terminalMps(1.225)).isCloseTo(vt, within(1e-9));
    }

    // Terminal speeds by sqrt(2 m g / (rho Cd A)) from the masses and diameters of the Japanese trade tables
    @ParameterizedTest
    @CsvSource({"0.12, 0.069, 33.06", "0.23, 0.086, 36.73", "0.55, 0.114, 42.84", "1.1, 0.142, 48.64", "1.9, 0.171, 53.09",
            "2.8, 0.199, 55.38", "4.3, 0.233, 58.61", "8.5, 0.285, 67.37"})
    void terminalSpeeds(double kg, double diameterM, double mps) {
        assertThat(sphere(kg, diameterM, 0.47).terminalMps(1.225)).isCloseTo(mps, within(0.006));
    }

    @Test
    void aLongFallReachesTerminalSpeed() {
        var body = sphere(0.23, 0.086, 0.47);
        var high = new Launch(new Point3(0, 0, 3000), 1e-3, 0, 0);
        assertThat(new FlightModel(SEA_LEVEL, Wind.CALM).unburst(body, high).speedMps())
                .isCloseTo(body.terminalMps(1.225), within(1e-6));
    }

    @Test
    void burstByTimeLiesOnTheWay() {
        var model = new FlightModel(SEA_LEVEL, Wind.CALM);
        var flight = model.fly(sphere(1.1, 0.142, 0.47), Launch.vertical(100), new Burst.After(4_000_000));
        assertThat(flight.burst().timeUs()).isEqualTo(4_000_000);
        // closed form: v(t) = Vt tan(atan(v0 / Vt) - g t / Vt), z from the speed by the height formula
        double vt = sphere(1.1, 0.142, 0.47).terminalMps(1.225);
        double v = vt * Math.tan(Math.atan(100 / vt) - G * 4 / vt);
        double z = vt * vt / (2 * G) * Math.log((1 + 1e4 / (vt * vt)) / (1 + v * v / (vt * vt)));
        assertThat(flight.burst().place().z()).isCloseTo(z, within(1e-6));
        assertThat(flight.burst().upMps()).isCloseTo(v, within(1e-6));
    }

    @Test
    void aBurstAfterTheFallIsRefused() {
        var model = new FlightModel(SEA_LEVEL, Wind.CALM);
        assertThatThrownBy(() -> model.fly(sphere(1.1, 0.142, 0.47), Launch.vertical(100), new Burst.After(20_000_000)))
                .isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("back on the ground after 12.8").hasMessageContaining("bursts at 20 s");
    }

    @Test
    void mirroredWindMirrorsTheAnswer() {
        var body = Body.estimated(100);
        var air = new StandardAir(200, 18);
        var east = new FlightModel(air, new PowerLawWind(270, 7, 10, 1.0 / 7));
        var west = new FlightModel(air, new PowerLawWind(90, 7, 10, 1.0 / 7));
        var a = east.fly(body, new Launch(ORIGIN, 90, 8, 30), new Burst.After(3_500_000));
        var b = west.fly(body, new Launch(ORIGIN, 90, 8, -30), new Burst.After(3_500_000));
        assertThat(b.burst().place().x()).isCloseTo(-a.burst().place().x(), within(1e-9));
        assertThat(b.burst().place().y()).isCloseTo(a.burst().place().y(), within(1e-9));
        assertThat(b.unburst().place().x()).isCloseTo(-a.unburst().place().x(), within(1e-7));
        assertThat(b.unburst().place().z()).isCloseTo(0, within(1e-7));
    }

    @ParameterizedTest
    @CsvSource({"37", "90", "211"})
    void turningEverythingTurnsTheAnswer(double turnDeg) {
        var body = Body.estimated(75);
        var a = new FlightModel(SEA_LEVEL, new UniformWind(240, 6)).unburst(body, new Launch(ORIGIN, 80, 12, 10));
        var b = new FlightModel(SEA_LEVEL, new UniformWind(240 + turnDeg, 6))
                .unburst(body, new Launch(ORIGIN, 80, 12, 10 + turnDeg));
        double azimuth = new Point2(0, 0).azimuthDegTo(a.place().ground());
        var turned = new Point2(0, 0).towards(azimuth + turnDeg, new Point2(0, 0).distanceM(a.place().ground()));
        assertThat(turned.distanceM(b.place().ground())).isCloseTo(0, within(1e-6));
    }

    @Test
    void uniformWindIsAMovingFrame() {
        // In air that moves evenly, the flight is that of still air with the launch speed seen from the air, carried along.
        var body = sphere(1.1, 0.142, 0.47);
        double wind = 9;
        var blown = new FlightModel(SEA_LEVEL, new UniformWind(270, wind)).at(body, Launch.vertical(100), 5_000_000);
        double tilt = Math.toDegrees(Math.atan2(wind, 100));
        var still = new FlightModel(SEA_LEVEL, Wind.CALM)
                .at(body, new Launch(ORIGIN, Math.hypot(100, wind), tilt, 270), 5_000_000);
        assertThat(blown.place().x()).isCloseTo(still.place().x() + wind * 5, within(1e-7));
        assertThat(blown.place().z()).isCloseTo(still.place().z(), within(1e-7));
    }

    @Test
    void independentFixedStepsConvergeToItWithTheirOrder() {
        var model = new FlightModel(SEA_LEVEL, new UniformWind(270, 9));
        var exact = model.at(sphere(0.23, 0.086, 0.47), new Launch(ORIGIN, 80, 6, 0), 6_000_000).place();
        double before = Double.NaN;
        for (int steps = 30; steps <= 480; steps *= 2) {
            double error = exact.distanceM(rungeKutta(steps, 6.0 / steps));
            if (steps > 30) {
                assertThat(before / error).as("error ratio when the step is halved").isBetween(12.0, 20.0);
            }
            before = error;
        }
        assertThat(before).isLessThan(1e-6);
    }

    /** Classic fourth-order Runge-Kutta of the same flight, written apart from the model. */
    private static Point3 rungeKutta(int steps, double h) {
        double tilt = Math.toRadians(6);
        double[] y = {0, 0, 0, 0, 80 * Math.sin(tilt), 80 * Math.cos(tilt)};
        for (int i = 0; i < steps; i++) {
            double[] a = slope(y);
            double[] b = slope(plus(y, a, h / 2));
            double[] c = slope(plus(y, b, h / 2));
            double[] d = slope(plus(y, c, h));
            for (int k = 0; k < 6; k++) {
                y[k] += h / 6 * (a[k] + 2 * b[k] + 2 * c[k] + d[k]);
            }
        }
        return new Point3(y[0], y[1], y[2]);
    }

    private static double[] plus(double[] y, double[] slope, double h) {
        double[] sum = new double[6];
        for (int k = 0; k < 6; k++) {
            sum[k] = y[k] + h * slope[k];
        }
        return sum;
    }

    private static double[] slope(double[] y) {
        double k = 1.225 * 0.47 * Math.PI * 0.086 * 0.086 / 4 / (2 * 0.23);
        double x = y[3] - 9;
        double speed = Math.sqrt(x * x + y[4] * y[4] + y[5] * y[5]);
        return new double[] {y[3], y[4], y[5], -k * speed * x, -k * speed * y[4], -k * speed * y[5] - G};
    }

    @Test
    void thinAirCarriesHigher() {
        var body = Body.estimated(100);
        var low = new FlightModel(new StandardAir(0, 15), Wind.CALM).apex(body, Launch.vertical(95));
        var high = new FlightModel(new StandardAir(2000, 15), Wind.CALM).apex(body, Launch.vertical(95));
        assertThat(high.place().z()).isGreaterThan(low.place().z() * 1.03);
    }

    @Test
    void pathRunsFromMuzzleToGround() {
        var model = new FlightModel(SEA_LEVEL, new UniformWind(270, 5));
        var body = sphere(1.1, 0.142, 0.47);
        var path = model.path(body, Launch.vertical(100), 500_000);
        assertThat(path.get(0).place()).isEqualTo(ORIGIN);
        assertThat(path.get(path.size() - 1)).isEqualTo(model.unburst(body, Launch.vertical(100)));
        for (int i = 0; i < path.size() - 1; i++) {
            assertThat(path.get(i).timeUs()).isEqualTo(i * 500_000L);
        }
        var at = model.at(body, Launch.vertical(100), 3_000_000);
        assertThat(path.get(6).place().distanceM(at.place())).isLessThan(1e-4);
    }

    @Test
    void derivationNamesItsSources() {
        var flight = new FlightModel(new StandardAir(0, 15), Wind.CALM)
                .fly(Body.sphere(1.1, 0.142), Launch.vertical(100), new Burst.AtApex());
        assertThat(flight.derivation().text()).contains("DEFRA").contains("ISO 2533").contains("h_burst");
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> Body.sphere(0, 0.1)).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("mass of the shell is 0 kg");
        assertThatThrownBy(() -> new Launch(ORIGIN, 80, 90, 0)).hasMessageContaining("tilt from the vertical is 90 deg");
        assertThatThrownBy(() -> new Launch(new Point3(0, 0, -1), 80, 0, 0)).hasMessageContaining("muzzle above ground is -1 m");
        assertThatThrownBy(() -> Launch.vertical(-3)).hasMessageContaining("muzzle speed is -3 m/s");
        assertThatThrownBy(() -> new FlightModel(VACUUM, Wind.CALM).apex(Body.sphere(1, 0.1), Launch.vertical(1e6)))
                .hasMessageContaining("more than an hour");
    }

    @Test
    void aMuzzleOnARoofFallsFurther() {
        var model = new FlightModel(SEA_LEVEL, Wind.CALM);
        var body = sphere(1.1, 0.142, 0.47);
        var roof = model.fly(body, new Launch(new Point3(0, 0, 25), 100, 0, 0), new Burst.AtApex());
        assertThat(roof.apex().place().z()).isCloseTo(199.50 + 25, withinPercentage(0.1));
        assertThat(roof.unburst().place().z()).isCloseTo(0, within(1e-6));
    }
}
