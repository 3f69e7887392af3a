package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;

import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.DragCurve;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.flight.FlightModel;
import org.girandole.physics.flight.FlightState;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.flight.LayeredWind;
import org.girandole.physics.flight.PowerLawWind;
import org.girandole.physics.flight.StandardAir;
import org.girandole.physics.flight.UniformAir;
import org.girandole.physics.flight.UniformWind;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fast flight held against the flight model, which the Hipparchus library integrates. */
class BlockFlightTest {
    private static final Air AIR = new StandardAir(150, 12);

    private static void set(BlockFlight flight, int lane, Body body, Launch launch, double burstS) {
        double tilt = Math.toRadians(launch.tiltDeg());
        double azimuth = Math.toRadians(launch.azimuthDeg());
        flight.perCd[lane] = body.areaM2() / (2 * body.massKg());
        flight.windAlong[lane] = 1;
        flight.windAcross[lane] = 0;
        flight.burstS[lane] = burstS;
        flight.x[lane] = 0;
        flight.y[lane] = 0;
        flight.z[lane] = launch.muzzle().z();
        flight.u[lane] = launch.speedMps() * Math.sin(tilt) * Math.sin(azimuth);
        flight.v[lane] = launch.speedMps() * Math.sin(tilt) * Math.cos(azimuth);
        flight.w[lane] = launch.speedMps() * Math.cos(tilt);
    }

    @ParameterizedTest
    @CsvSource({"50, 60", "65, 70", "75, 80", "100, 92", "125, 100", "150, 100", "200, 110", "300, 140"})
    void landsWhereTheModelLands(double calibreMm, double speedMps) {
        List<Wind> winds = List.of(Wind.CALM, new UniformWind(200, 9), new PowerLawWind(240, 6, 10, 1.0 / 7),
                new LayeredWind(List.of(new LayeredWind.Layer(10, 90, 3), new LayeredWind.Layer(80, 140, 7),
                        new LayeredWind.Layer(300, 170, 11))));
        var body = Body.estimated(calibreMm);
        long riseUs = Math.round(Estimates.riseUs(calibreMm).value());
        for (Wind wind : winds) {
            var model = new FlightModel(AIR, wind);
            var flight = new BlockFlight(new AirColumn(AIR, wind), SampleFlights.TOLERANCE_MPS);
            flight.drag(body.drag());
            for (double tiltDeg : new double[] {0, 4, 15, 40}) {
                for (double muzzleM : new double[] {0, 30}) {
                    var launch = new Launch(new Point3(0, 0, muzzleM), speedMps, tiltDeg, 70);
                    set(flight, 0, body, launch, riseUs / 1e6);
                    flight.fly(1);
                    FlightState ground = model.unburst(body, launch);
                    FlightState burst = model.at(body, launch, riseUs);
                    assertThat(ground.place().distanceM(new Point3(flight.groundX[0], flight.groundY[0], 0)))
                            .as("unburst, %s, tilt %s, muzzle %s m", wind, tiltDeg, muzzleM).isLessThan(0.2);
                    assertThat(burst.place().distanceM(new Point3(flight.burstX[0], flight.burstY[0], flight.burstZ[0])))
                            .as("burst, %s, tilt %s, muzzle %s m", wind, tiltDeg, muzzleM).isLessThan(0.15);
                }
            }
        }
    }

    @Test
    void aTighterToleranceComesCloser() {
        var wind = new UniformWind(200, 9);
        var body = new Body(1.1, 0.142, DragCurve.constant(0.47, "given"));
        var launch = new Launch(new Point3(0, 0, 0), 100, 12, 30);
        var exact = new FlightModel(AIR, wind).unburst(body, launch).place();
        double loose = error(wind, body, launch, exact, 0.3);
        double usual = error(wind, body, launch, exact, 0.005);
        double tight = error(wind, body, launch, exact, 1e-5);
        assertThat(usual).isLessThan(loose / 3);
        assertThat(tight).isLessThan(usual / 5).isLessThan(0.002);
    }

    private static double error(Wind wind, Body body, Launch launch, Point3 exact, double tolerance) {
        var flight = new BlockFlight(new AirColumn(AIR, wind), tolerance);
        flight.drag(body.drag());
        set(flight, 0, body, launch, Double.POSITIVE_INFINITY);
        flight.fly(1);
        return exact.distanceM(new Point3(flight.groundX[0], flight.groundY[0], 0));
    }

    @Test
    void closedFormOfTheTimeAloft() {
        // No drag on the horizontal parts either: a parabola, range v^2 sin(2 tilt) / g
        var vacuum = new UniformAir(0, 340);
        var body = Body.sphere(1, 0.1);
        var flight = new BlockFlight(new AirColumn(vacuum, Wind.CALM), SampleFlights.TOLERANCE_MPS);
        flight.drag(body.drag());
        set(flight, 0, body, new Launch(new Point3(0, 0, 0), 100, 10, 90), 10);
        flight.fly(1);
        assertThat(flight.groundX[0]).isCloseTo(1e4 * Math.sin(Math.toRadians(20)) / FlightModel.STANDARD_GRAVITY, within(1e-6));
        assertThat(flight.groundY[0]).isCloseTo(0, within(1e-9));
    }

    @Test
    void whatIsFlownBesideChangesAFlightOnlyWithinItsError() {
        var wind = new UniformWind(200, 9);
        var body = Body.estimated(100);
        var flight = new BlockFlight(new AirColumn(AIR, wind), SampleFlights.TOLERANCE_MPS);
        flight.drag(body.drag());
        set(flight, 0, body, new Launch(new Point3(0, 0, 0), 92, 5, 70), 3.5);
        flight.fly(1);
        double alone = flight.groundX[0];
        set(flight, 0, body, new Launch(new Point3(0, 0, 0), 92, 5, 70), 3.5);
        set(flight, 1, body, new Launch(new Point3(0, 0, 0), 130, 25, 10), 2);
        flight.fly(2);
        assertThat(flight.groundX[0]).isCloseTo(alone, within(0.2));
    }

    @Test
    void aBurstAfterTheFallIsOnTheGround() {
        var body = Body.estimated(75);
        var flight = new BlockFlight(new AirColumn(AIR, Wind.CALM), SampleFlights.TOLERANCE_MPS);
        flight.drag(body.drag());
        set(flight, 0, body, new Launch(new Point3(0, 0, 0), 30, 5, 70), 60);
        flight.fly(1);
        assertThat(flight.burstZ[0]).isCloseTo(0, within(1e-6));
        assertThat(flight.burstX[0]).isCloseTo(flight.groundX[0], within(1e-9));
    }
}
