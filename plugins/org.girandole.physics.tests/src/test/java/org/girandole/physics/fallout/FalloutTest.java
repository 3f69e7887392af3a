package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.DebrisFall;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.flight.FlightModel;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.flight.MuzzleFit;
import org.girandole.physics.flight.PowerLawWind;
import org.girandole.physics.flight.StandardAir;
import org.girandole.physics.flight.UniformWind;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Shape;
import org.junit.jupiter.api.Test;

class FalloutTest {
    private static final Air AIR = new StandardAir(20, 18);
    private static final Wind BREEZE = new PowerLawWind(240, 6, 10, PowerLawWind.OPEN_GROUND);
    private static final Point3 A = new Point3(-60, 10, 0);

    private static FalloutSpec shell(String key, double calibreMm, double tiltDeg, Scatter scatter) {
        var body = Body.estimated(calibreMm);
        long riseUs = Math.round(Estimates.riseUs(calibreMm).value());
        double speed = MuzzleFit.fromRiseAndApex(body, riseUs, Estimates.apexM(calibreMm).value(), AIR).speedMps();
        return new FalloutSpec(key, body, new Launch(A, speed, tiltDeg, 200), Optional.of(new Burst.After(riseUs)),
                Optional.of(Debris.usual(Estimates.spreadM(calibreMm).value())), scatter);
    }

    private static List<FalloutSpec> someShells() {
        List<FalloutSpec> specs = new ArrayList<>();
        for (double calibreMm : new double[] {75, 100, 150}) {
            for (double tiltDeg : new double[] {0, 7, 15}) {
                specs.add(shell("shell " + calibreMm + " tilt " + tiltDeg, calibreMm, tiltDeg, Scatter.USUAL));
            }
        }
        return specs;
    }

    private static Fallout fallout(Wind wind, List<Shape> watched) {
        return new Fallout(AIR, wind, 20270619, 1000, Fallout.USUAL_SHARES, watched);
    }

    @Test
    void theSameOnAnyNumberOfThreads() {
        var once = fallout(BREEZE, List.of()).run(someShells(), 1);
        assertThat(fallout(BREEZE, List.of()).run(someShells(), 2)).isEqualTo(once);
        assertThat(fallout(BREEZE, List.of()).run(someShells(), 5)).isEqualTo(once);
    }

    @Test
    void theSameWhateverElseIsInTheShow() {
        var all = fallout(BREEZE, List.of()).run(someShells(), 1);
        List<FalloutSpec> reversed = someShells();
        Collections.reverse(reversed);
        var backwards = new ArrayList<>(fallout(BREEZE, List.of()).run(reversed, 1));
        Collections.reverse(backwards);
        assertThat(backwards).isEqualTo(all);
        assertThat(fallout(BREEZE, List.of()).run(List.of(someShells().get(4)), 1)).containsExactly(all.get(4));
    }

    @Test
    void anotherSeedIsAnotherSampleOfTheSameThing() {
        var one = fallout(BREEZE, List.of()).run(someShells(), 1).get(4).unburst();
        var other = new Fallout(AIR, BREEZE, 1, 1000, Fallout.USUAL_SHARES, List.of()).run(someShells(), 1).get(4).unburst();
        assertThat(other).isNotEqualTo(one);
        assertThat(other.mean().distanceM(one.mean())).isLessThan(5);
    }

    @Test
    void withoutScatterItIsTheNominalFlight() {
        var spec = shell("nominal", 100, 10, Scatter.NONE);
        var result = fallout(BREEZE, List.of()).run(List.of(spec), 1).get(0);
        var model = new FlightModel(AIR, BREEZE);
        var ground = model.unburst(spec.body(), spec.launch()).place().ground();
        assertThat(result.unburst().mean().distanceM(ground)).isLessThan(0.2);
        assertThat(result.unburst().areas()).allSatisfy(area -> assertThat(area.outline().areaM2()).isLessThan(1));
    }

    @Test
    void debrisWithoutScatterDriftsAsItSinks() {
        var scattered = shell("debris", 100, 10, Scatter.NONE);
        var spec = new FalloutSpec("debris", scattered.body(), scattered.launch(), scattered.burst(),
                Optional.of(new Debris(8, 8, 0)), Scatter.NONE);
        var result = fallout(BREEZE, List.of()).run(List.of(spec), 1).get(0);
        var burst = new FlightModel(AIR, BREEZE).at(spec.body(), spec.launch(), spec.burst().get().riseUs()).place();
        var fall = DebrisFall.from(burst, 8, AIR, BREEZE);
        assertThat(result.debris().orElseThrow().mean().distanceM(fall.place())).isLessThan(0.3);
    }

    /** Counted one by one from the places themselves; shapes far off, near, all around, and at the edge of where the samples come. */
    @Test
    void theShareInAShapeIsTheShareOfThePlacesInIt() {
        List<Shape> watched = new ArrayList<>();
        for (double away = 0; away <= 400; away += 8) {
            watched.add(new Disc(new Point2(A.x() + away, A.y()), 40));
            watched.add(new Disc(A.ground(), away));
            watched.add(new Polygon(List.of(new Point2(A.x() + away, -500), new Point2(900, -500), new Point2(900, 500), new Point2(A.x() + away, 500))));
        }
        var fallout = fallout(BREEZE, watched);
        for (FalloutSpec spec : someShells()) {
            var result = fallout.run(List.of(spec), 1).get(0);
            var places = fallout.landings(spec);
            for (int i = 0; i < watched.size(); i++) {
                Shape shape = watched.get(i);
                assertThat(result.unburst().inWatched().get(i)).as("%s", shape)
                        .isEqualTo(places.unburst().stream().filter(shape::contains).count() / 1000.0);
                assertThat(result.debris().orElseThrow().inWatched().get(i)).as("%s", shape)
                        .isEqualTo(places.debris().orElseThrow().stream().filter(shape::contains).count() / 1000.0);
            }
        }
    }

    @Test
    void areasHoldTheSharesTheyAreNamedFor() {
        var specs = someShells();
        var results = fallout(BREEZE, List.of()).run(specs, 2);
        for (int i = 0; i < specs.size(); i++) {
            List<Shape> areas = new ArrayList<>();
            results.get(i).unburst().areas().forEach(area -> areas.add(area.outline()));
            var again = fallout(BREEZE, areas).run(List.of(specs.get(i)), 1).get(0).unburst();
            assertThat(again.inWatched().get(0)).isBetween(0.5, 0.6);
            assertThat(again.inWatched().get(1)).isBetween(0.9, 0.95);
            assertThat(again.inWatched().get(2)).isBetween(0.99, 1.0);
        }
    }

    @Test
    void areasLieOneInAnother() {
        for (FalloutResult result : fallout(BREEZE, List.of()).run(someShells(), 2)) {
            for (Footprint footprint : List.of(result.unburst(), result.debris().orElseThrow())) {
                for (int i = 1; i < footprint.areas().size(); i++) {
                    Polygon outer = footprint.areas().get(i).outline();
                    assertThat(footprint.areas().get(i - 1).outline().corners())
                            .allSatisfy(corner -> assertThat(outer.contains(corner)).isTrue());
                }
                assertThat(footprint.areas().get(0).outline().contains(footprint.mean())).isTrue();
            }
        }
    }

    @Test
    void aRoundCloudHasTheAreasOfTheRayleighDistribution() {
        // Straight up in calm air with tilt scatter alone the landing places are nearly normal in both directions; the
        // circle that holds a share p of them has the area -2 ln(1 - p) pi sigma^2.
        var spec = shell("round", 100, 0, new Scatter(0, 3, 0, 0, 0, 0));
        var footprint = new Fallout(AIR, Wind.CALM, 5, 20_000, Fallout.USUAL_SHARES, List.of()).run(List.of(spec), 1).get(0)
                .unburst();
        double half = footprint.areas().get(0).outline().areaM2();
        double nine = footprint.areas().get(1).outline().areaM2();
        assertThat(nine / half).isCloseTo(Math.log(10) / Math.log(2), within(0.12));
        assertThat(footprint.mean().distanceM(A.ground())).isLessThan(1);
        // sigma: how far a shell tilted by 3 degrees comes down
        var model = new FlightModel(AIR, Wind.CALM);
        double sigma = model.unburst(spec.body(), new Launch(A, spec.launch().speedMps(), 3, 0)).place().ground()
                .distanceM(A.ground());
        assertThat(half).isCloseTo(2 * Math.log(2) * Math.PI * sigma * sigma, within(0.05 * half));
    }

    @Test
    void mirroredWindMirrorsTheAreas() {
        // Scatter along the flight alone, so that both runs draw the same numbers for the same thing
        var scatter = new Scatter(0.05, 0, 0.2, 0, 100_000, 0.1);
        var spec = shell("mirror", 100, 0, scatter);
        var east = fallout(new UniformWind(270, 7), List.of()).run(List.of(spec), 1).get(0).unburst();
        var west = fallout(new UniformWind(90, 7), List.of()).run(List.of(spec), 1).get(0).unburst();
        assertThat(west.mean().x() - A.x()).isCloseTo(A.x() - east.mean().x(), within(1e-6));
        assertThat(west.farthest().x() - A.x()).isCloseTo(A.x() - east.farthest().x(), within(1e-6));
        assertThat(west.areas().get(2).outline().areaM2()).isCloseTo(east.areas().get(2).outline().areaM2(), within(1e-3));
    }

    @Test
    void moreWindCarriesFurther() {
        var spec = shell("wind", 75, 0, Scatter.USUAL);
        double before = -1;
        for (double mps : new double[] {0, 3, 6, 9, 12}) {
            var result = fallout(new UniformWind(270, mps), List.of()).run(List.of(spec), 1).get(0);
            double drift = result.debris().orElseThrow().mean().x() - A.x();
            assertThat(drift).isGreaterThan(before);
            before = drift;
        }
    }

    @Test
    void usualScatterOfUnburstShellsIsThatOfTheTrials() {
        // Dud-drift trials are quoted for about 30 ft per inch of calibre on average, 0.36 m per mm: from memory. Of a
        // Rayleigh distribution 1 - exp(-pi / 4) = 0.54 lie within the mean.
        for (double calibreMm : new double[] {75, 100, 125, 150, 200, 300}) {
            var spec = shell("drift " + calibreMm, calibreMm, 0, Scatter.USUAL);
            double within = 0.36 * calibreMm;
            var near = new Disc(A.ground(), within);
            double share = fallout(Wind.CALM, List.of(near)).run(List.of(spec), 1).get(0).unburst().inWatched().get(0);
            assertThat(share).as("within the mean drift of %s mm", calibreMm).isBetween(0.4, 0.65);
        }
    }

    @Test
    void watchedShapesAreCounted() {
        var spec = shell("watch", 100, 0, Scatter.USUAL);
        var everything = new Disc(new Point2(0, 0), 5000);
        var nothing = new Disc(new Point2(4000, 4000), 10);
        var result = fallout(BREEZE, List.of(everything, nothing)).run(List.of(spec), 1).get(0);
        assertThat(result.unburst().inWatched()).containsExactly(1.0, 0.0);
        assertThat(result.debris().orElseThrow().inWatched()).containsExactly(1.0, 0.0);
    }

    @Test
    void whatDoesNotBurstLeavesNoDebris() {
        var comet = new FalloutSpec("comet", Body.sphere(0.05, 0.03), new Launch(A, 40, 10, 90), Optional.empty(),
                Optional.empty(), Scatter.USUAL);
        var result = fallout(BREEZE, List.of()).run(List.of(comet), 1).get(0);
        assertThat(result.debris()).isEmpty();
        assertThat(result.unburst().mean().x()).isGreaterThan(A.x());
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> new Fallout(AIR, BREEZE, 1, 5, Fallout.USUAL_SHARES, List.of()))
                .isInstanceOf(PhysicsInputException.class).hasMessageContaining("5 samples");
        assertThatThrownBy(() -> new Fallout(AIR, BREEZE, 1, 100, List.of(0.9, 0.5), List.of()))
                .hasMessageContaining("rising shares");
        assertThatThrownBy(() -> new FalloutSpec("x", Body.sphere(1, 0.1), new Launch(A, 40, 10, 90),
                Optional.of(new Burst.After(3_000_000)), Optional.empty(), Scatter.USUAL))
                .hasMessageContaining("a burst but no debris");
        assertThatThrownBy(() -> new Debris(10, 5, 0)).hasMessageContaining("slower terminal speed first");
        assertThatThrownBy(() -> new Scatter(-0.1, 0, 0, 0, 0, 0)).hasMessageContaining("muzzle speed");
    }
}
