package org.girandole.physics.flight;

import java.util.function.DoubleSupplier;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The muzzle speed that brings a shell, fired straight up in calm air, to its burst height, and with a rise given
 * there in that time.
 *
 * @param speedMps muzzle speed in m/s
 * @param derivation how it was found; the last step is the speed
 */
public record MuzzleFit(double speedMps, Derivation derivation) {
    /** No mortar is believed to lift a shell faster: about the speed of sound; common practice, no published source. */
    public static final double FASTEST_MPS = 340;
    /**
     * How much later than at the apex a shell may burst, as a share of the time to the apex. A shell hangs there: in
     * that time it has fallen by no more than a metre or two, and both figures are measured by eye.
     */
    private static final double LATE_SHARE = 0.1;
    private static final double LOWEST_M = 1;
    private static final double HIGHEST_M = 3000;
    private static final double SLOWEST_MPS = 0.5;
    private static final double SPEED_TOLERANCE_MPS = 1e-9;
    private static final int ITERATIONS = 200;

    /**
     * The speed that just reaches a height.
     *
     * @throws PhysicsInputException if no believable muzzle speed reaches it
     */
    public static MuzzleFit fromApex(Body body, double apexM, Air air) {
        FlightModel model = new FlightModel(air, Wind.CALM);
        double speed = speedForApex(model, body, apexM);
        return new MuzzleFit(speed, Derivation.builder()
                .given("h", apexM, "m", "burst height")
                .step("v0", "muzzle speed whose highest point is h", "", speed, "m/s",
                        "point mass with quadratic drag, straight up in calm air")
                .build());
    }

    /**
     * The speed that brings the shell to its burst height in its rise.
     *
     * @param riseUs microseconds from firing to burst
     * @param apexM burst height in metres above the muzzle
     * @throws PhysicsInputException if that height is not reached in that time on the way up, or only at an
     *         unbelievable speed
     */
    public static MuzzleFit fromRiseAndApex(Body body, long riseUs, double apexM, Air air) {
        return fromRiseAndApex(body, riseUs, apexM, air, () -> speedForApex(new FlightModel(air, Wind.CALM), body, apexM));
    }

    /**
     * The same where the speed that just reaches the height may be known already.
     *
     * @param reachesApexMps what {@link #fromApex} finds, in m/s, or fails with
     */
    public static MuzzleFit fromRiseAndApex(Body body, long riseUs, double apexM, Air air, DoubleSupplier reachesApexMps) {
        Require.positive(riseUs, "rise", "us");
        FlightModel model = new FlightModel(air, Wind.CALM);
        double slowest = reachesApexMps.getAsDouble();
        FlightState latest = model.apex(body, Launch.vertical(slowest));
        String pair = "a rise of " + Figures.of(riseUs / 1e6) + " s to " + Figures.of(apexM) + " m";
        if (riseUs > latest.timeUs() * (1 + LATE_SHARE)) {
            throw new PhysicsInputException(pair,
                    "at most " + Figures.of(latest.timeUs() / 1e6) + " s, by then a shell that reaches "
                            + Figures.of(apexM) + " m has done so and falls",
                    "correct rise or apex");
        }
        if (model.at(body, Launch.vertical(FASTEST_MPS), riseUs).place().z() < apexM) {
            throw new PhysicsInputException(pair,
                    "a height that a muzzle speed of " + Figures.of(FASTEST_MPS) + " m/s reaches in that time",
                    "correct rise or apex");
        }
        double speed = solve(v -> model.at(body, Launch.vertical(v), riseUs).place().z() - apexM, SLOWEST_MPS);
        return new MuzzleFit(speed, Derivation.builder()
                .given("rise", riseUs / 1e6, "s", "firing to burst")
                .given("h", apexM, "m", "burst height")
                .step("v0", "muzzle speed that is at h after the rise", "", speed, "m/s",
                        "point mass with quadratic drag, straight up in calm air")
                .build());
    }

    private static double speedForApex(FlightModel model, Body body, double apexM) {
        Require.between(apexM, LOWEST_M, HIGHEST_M, "apex", "m");
        if (model.apex(body, Launch.vertical(FASTEST_MPS)).place().z() < apexM) {
            throw new PhysicsInputException("an apex of " + Figures.of(apexM) + " m",
                    "a height that a muzzle speed of " + Figures.of(FASTEST_MPS) + " m/s reaches",
                    "correct the apex, or mass and calibre");
        }
        return solve(v -> model.apex(body, Launch.vertical(v)).place().z() - apexM, SLOWEST_MPS);
    }

    private static double solve(UnivariateFunction height, double slowest) {
        return new BracketingNthOrderBrentSolver(0, SPEED_TOLERANCE_MPS, 0, 5).solve(ITERATIONS, height, slowest, FASTEST_MPS);
    }
}
