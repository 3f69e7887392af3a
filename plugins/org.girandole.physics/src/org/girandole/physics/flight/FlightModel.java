package org.girandole.physics.flight;

import java.util.ArrayList;
import java.util.List;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;
import org.girandole.physics.geometry.Point3;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * Flight of a point with quadratic drag:
 * {@code m dv/dt = -m g - rho Cd(Mach) A |v - w| (v - w) / 2}, with density and wind by height. Flat ground, constant
 * gravity; spin, tumbling and the burning away of mass are left out. Integrated by the Dormand-Prince 8(5,3) method
 * of the Hipparchus library with an error of about 1e-9 m a step. Immutable and thread safe.
 */
public final class FlightModel {
    /** Standard gravity in m/s2, ISO 80000-3. */
    public static final double STANDARD_GRAVITY = 9.80665;

    private static final double TOLERANCE = 1e-10;
    private static final double MIN_STEP_S = 1e-9;
    private static final double MAX_STEP_S = 1;
    private static final double EVENT_CHECK_S = 0.5;
    private static final double EVENT_TOLERANCE_S = 1e-10;
    private static final int EVENT_ITERATIONS = 100;
    /** Longer than anything stays up; a fall that has not ended by then means nonsense went in. */
    private static final double LONGEST_S = 3600;

    private final Air air;
    private final Wind wind;
    private final double gravity;

    public FlightModel(Air air, Wind wind) {
        this(air, wind, STANDARD_GRAVITY);
    }

    /** @param gravity acceleration of free fall in m/s2 */
    public FlightModel(Air air, Wind wind, double gravity) {
        this.air = air;
        this.wind = wind;
        this.gravity = Require.positive(gravity, "acceleration of free fall", "m/s2");
    }

    /**
     * The whole flight: highest point, burst, and where the shell comes down if it does not burst.
     *
     * @throws PhysicsInputException if the shell is back on the ground before it bursts
     */
    public Flight fly(Body body, Launch launch, Burst burst) {
        FlightState apex = apex(body, launch);
        FlightState unburst = unburst(body, launch);
        FlightState burstState = burst instanceof Burst.After after ? burstAfter(body, launch, after, unburst) : apex;
        return new Flight(apex, burstState, unburst, derivation(body, launch, apex, burstState, unburst));
    }

    private FlightState burstAfter(Body body, Launch launch, Burst.After after, FlightState unburst) {
        if (after.riseUs() >= unburst.timeUs()) {
            throw new PhysicsInputException(
                    "the shell is back on the ground after " + Figures.of(unburst.timeUs() / 1e6)
                            + " s, before it bursts at " + Figures.of(after.riseUs() / 1e6) + " s",
                    "a burst in the air", "correct the rise or the muzzle speed");
        }
        return at(body, launch, after.riseUs());
    }

    /** The state {@code timeUs} after firing, as if there were no ground. */
    public FlightState at(Body body, Launch launch, long timeUs) {
        Require.notNegative(timeUs, "time since firing", "us");
        if (timeUs == 0) {
            return state(start(launch));
        }
        return state(integrator().integrate(new Motion(body), start(launch), timeUs / 1e6));
    }

    /** The highest point. */
    public FlightState apex(Body body, Launch launch) {
        return state(toApex(body, launch));
    }

    /** Where the shell meets the ground, z = 0, if it does not burst. */
    public FlightState unburst(Body body, Launch launch) {
        ODEStateAndDerivative apex = toApex(body, launch);
        return state(until(new Motion(body), apex, s -> s.getPrimaryState()[2]));
    }

    /**
     * Points along the flight from firing to the ground, {@code stepUs} apart, the last one on the ground.
     *
     * @param stepUs microseconds between two points
     */
    public List<FlightState> path(Body body, Launch launch, long stepUs) {
        Require.positive(stepUs, "step of a path", "us");
        FlightState ground = unburst(body, launch);
        List<FlightState> path = new ArrayList<>();
        ODEIntegrator integrator = integrator();
        integrator.addStepHandler(step -> {
            long previousUs = Math.round(step.getPreviousState().getTime() * 1e6);
            long currentUs = Math.round(step.getCurrentState().getTime() * 1e6);
            long firstUs = previousUs == 0 ? 0 : (previousUs / stepUs + 1) * stepUs;
            for (long t = firstUs; t <= currentUs && t < ground.timeUs(); t += stepUs) {
                path.add(state(step.getInterpolatedState(t / 1e6), t));
            }
        });
        integrator.integrate(new Motion(body), start(launch), ground.timeUs() / 1e6);
        path.add(ground);
        return List.copyOf(path);
    }

    private ODEState start(Launch launch) {
        Point3 muzzle = launch.muzzle();
        return new ODEStateAndDerivative(0,
                new double[] {muzzle.x(), muzzle.y(), muzzle.z(), launch.eastMps(), launch.northMps(), launch.upMps()},
                new double[6]);
    }

    private ODEStateAndDerivative toApex(Body body, Launch launch) {
        return until(new Motion(body), start(launch), s -> s.getPrimaryState()[5]);
    }

    /** Integrates until {@code value}, positive at the start, falls to zero. */
    private static ODEStateAndDerivative until(Motion motion, ODEState start, Value value) {
        ODEIntegrator integrator = integrator();
        integrator.addEventDetector(new Crossing(value));
        ODEStateAndDerivative end = integrator.integrate(motion, start, start.getTime() + LONGEST_S);
        if (end.getTime() >= start.getTime() + LONGEST_S) {
            throw new PhysicsInputException("a flight of more than an hour", "a shell that comes down",
                    "correct mass, diameter or muzzle speed");
        }
        return end;
    }

    private static ODEIntegrator integrator() {
        return new DormandPrince853Integrator(MIN_STEP_S, MAX_STEP_S, TOLERANCE, TOLERANCE);
    }

    private static FlightState state(ODEState state) {
        return state(state, Math.round(state.getTime() * 1e6));
    }

    private static FlightState state(ODEState state, long timeUs) {
        double[] y = state.getPrimaryState();
        return new FlightState(timeUs, new Point3(y[0], y[1], y[2]), y[3], y[4], y[5]);
    }

    private Derivation derivation(Body body, Launch launch, FlightState apex, FlightState burst, FlightState unburst) {
        double density = air.densityKgM3(launch.muzzle().z());
        double terminal = body.terminalMps(density);
        return Derivation.builder()
                .given("m", body.massKg(), "kg", "mass of the shell")
                .given("D", body.diameterM(), "m", "diameter of the shell")
                .given("Cd", body.drag().cd(0), "", body.drag().source())
                .given("v0", launch.speedMps(), "m/s", "muzzle speed")
                .given("tilt", launch.tiltDeg(), "deg", "from the vertical, towards " + Figures.of(launch.azimuthDeg()) + " deg")
                .step("rho", "air density at the muzzle", "", density, "kg/m3", "ISO 2533")
                .step("Vt", "sqrt(2 m g / (rho Cd A))", "", terminal, "m/s", "terminal speed at the muzzle's density")
                .step("h_apex", "highest point", "", apex.place().z(), "m", MODEL)
                .step("h_burst", "burst height above the site's ground", "", burst.place().z(), "m", MODEL)
                .step("d_burst", "burst, distance over ground from the muzzle", "", away(launch, burst), "m", MODEL)
                .step("d_unburst", "unburst shell, distance over ground from the muzzle", "", away(launch, unburst), "m", MODEL)
                .build();
    }

    private static final String MODEL = "point mass with quadratic drag";

    private static double away(Launch launch, FlightState state) {
        return launch.muzzle().ground().distanceM(state.place().ground());
    }

    private interface Value {
        double of(ODEStateAndDerivative state);
    }

    /** Stops the integration when a value falls through zero. */
    private record Crossing(Value value) implements ODEEventDetector {
        @Override
        public AdaptableInterval getMaxCheckInterval() {
            return AdaptableInterval.of(EVENT_CHECK_S);
        }

        @Override
        public int getMaxIterationCount() {
            return EVENT_ITERATIONS;
        }

        @Override
        public BracketingNthOrderBrentSolver getSolver() {
            return new BracketingNthOrderBrentSolver(0, EVENT_TOLERANCE_S, 0, 5);
        }

        @Override
        public ODEEventHandler getHandler() {
            return (state, detector, increasing) -> increasing ? Action.CONTINUE : Action.STOP;
        }

        @Override
        public double g(ODEStateAndDerivative state) {
            return value.of(state);
        }
    }

    /** The equation of motion of one body. */
    private final class Motion implements OrdinaryDifferentialEquation {
        private final Body body;

        Motion(Body body) {
            this.body = body;
        }

        @Override
        public int getDimension() {
            return 6;
        }

        @Override
        public double[] computeDerivatives(double t, double[] y) {
            double height = y[2];
            double east = y[3] - wind.eastMps(height);
            double north = y[4] - wind.northMps(height);
            double speed = Math.sqrt(east * east + north * north + y[5] * y[5]);
            double cd = body.drag().cd(speed / air.soundMps(height));
            double perMps = air.densityKgM3(height) * cd * body.areaM2() * speed / (2 * body.massKg());
            return new double[] {y[3], y[4], y[5], -perMps * east, -perMps * north, -perMps * y[5] - gravity};
        }
    }
}
