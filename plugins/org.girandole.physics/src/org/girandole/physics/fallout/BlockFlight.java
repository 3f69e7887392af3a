package org.girandole.physics.fallout;

import java.util.Arrays;

import org.girandole.physics.flight.DragCurve;
import org.girandole.physics.flight.FlightModel;

/**
 * The flight of {@link FlightModel} made fast for many samples of one body: a block of flights is carried in step by
 * the Dormand-Prince 5(4) pair, the step held small enough for the worst of the block. A processor works on several
 * flights at once because no flight waits for another. Air and wind come from an {@link AirColumn}; no object is made
 * on the way. One instance a thread.
 */
final class BlockFlight {
    /** Flights in a block: enough to fill the processor, few enough to stay in its nearest cache. */
    static final int LANES = 50;

    private static final double FIRST_STEP_S = 0.2;
    private static final double LONGEST_STEP_S = 2.5;
    private static final double SHORTEST_STEP_S = 1e-4;
    private static final double SAFETY = 0.85;
    private static final double MOST_GROWTH = 3;
    private static final double MOST_SHRINKING = 0.2;
    private static final int ROOT_ITERATIONS = 8;
    private static final double ROOT_TOLERANCE = 1e-9;
    private static final double LONGEST_FLIGHT_S = 900;

    private static final int LAST = DormandPrince.STAGES - 1;

    // What each flight brings along.
    /** Cross-section over twice the mass, m2/kg. */
    final double[] perCd = new double[LANES];
    /** Factor on the wind times the cosine and the sine of its turn, clockwise seen from above. */
    final double[] windAlong = new double[LANES];
    final double[] windAcross = new double[LANES];
    /** Time of burst in seconds, infinite for none. */
    final double[] burstS = new double[LANES];
    /** Speeds east, north and up at each stage of a step, m/s: the first are those of now, the last those after the step. */
    private final double[][] us = new double[DormandPrince.STAGES][LANES];
    private final double[][] vs = new double[DormandPrince.STAGES][LANES];
    private final double[][] ws = new double[DormandPrince.STAGES][LANES];
    /** State: metres from the muzzle east and north, metres above ground, and speeds in m/s. Set before, used up after. */
    final double[] x = new double[LANES];
    final double[] y = new double[LANES];
    final double[] z = new double[LANES];
    final double[] u = us[0];
    final double[] v = vs[0];
    final double[] w = ws[0];

    // What comes of it.
    final double[] burstX = new double[LANES];
    final double[] burstY = new double[LANES];
    final double[] burstZ = new double[LANES];
    final double[] groundX = new double[LANES];
    final double[] groundY = new double[LANES];

    /** Accelerations at each stage. */
    private final double[][] ku = new double[DormandPrince.STAGES][LANES];
    private final double[][] kv = new double[DormandPrince.STAGES][LANES];
    private final double[][] kw = new double[DormandPrince.STAGES][LANES];
    /** Heights at a stage, and places after the step. */
    private final double[] zs = new double[LANES];
    private final double[] nx = new double[LANES];
    private final double[] ny = new double[LANES];
    private final double[] squareError = new double[LANES];
    private final boolean[] burst = new boolean[LANES];
    private final boolean[] down = new boolean[LANES];

    private final BlockForces forces;
    private final double tolerance;

    /** @param tolerance error allowed in one step, in m/s */
    BlockFlight(AirColumn column, double tolerance) {
        this.forces = new BlockForces(column);
        this.tolerance = tolerance;
    }

    /** Sets how what flies is braked. */
    void drag(DragCurve drag) {
        forces.drag(drag);
    }

    /** Flies the first {@code n} flights to the ground. */
    void fly(int n) {
        double t = 0;
        double h = FIRST_STEP_S;
        int flying = n;
        Arrays.fill(burst, false);
        Arrays.fill(down, false);
        accelerate(0, z, n);
        while (flying > 0) {
            if (t > LONGEST_FLIGHT_S) {
                throw new IllegalStateException("a flight did not end within " + LONGEST_FLIGHT_S + " s");
            }
            for (int stage = 1; stage < DormandPrince.STAGES; stage++) {
                stage(stage, h, n);
            }
            double error = h * error(n) / tolerance;
            double next = h * Math.max(MOST_SHRINKING, Math.min(MOST_GROWTH, error == 0 ? MOST_GROWTH
                    : SAFETY / Math.sqrt(Math.sqrt(error))));
            if (error > 1 && h > SHORTEST_STEP_S) {
                h = next;
                continue;
            }
            flying -= finish(t, h, n);
            t += h;
            advance(n);
            h = Math.min(next, LONGEST_STEP_S);
        }
    }

    /** Speeds, height and accelerations of a stage. East and north never act on the motion and are summed at the end. */
    private void stage(int stage, double h, int n) {
        DormandPrince.combine(stage, us[stage], u, ku, h, n);
        DormandPrince.combine(stage, vs[stage], v, kv, h, n);
        DormandPrince.combine(stage, ws[stage], w, kw, h, n);
        DormandPrince.combine(stage, zs, z, ws, h, n);
        accelerate(stage, zs, n);
    }

    private void accelerate(int stage, double[] heights, int n) {
        forces.accelerate(this, heights, us[stage], vs[stage], ws[stage], ku[stage], kv[stage], kw[stage], n);
    }

    /** The greatest error of any flight, as a rate of change of speed. */
    private double error(int n) {
        Arrays.fill(squareError, 0);
        DormandPrince.addSquareError(squareError, ku, n);
        DormandPrince.addSquareError(squareError, kv, n);
        DormandPrince.addSquareError(squareError, kw, n);
        double greatest = 0;
        for (int i = 0; i < n; i++) {
            greatest = squareError[i] > greatest ? squareError[i] : greatest;
        }
        return Math.sqrt(greatest);
    }

    /** Notes bursts and landings of the step from {@code t}; returns how many landed. */
    private int finish(double t, double h, int n) {
        DormandPrince.combine(LAST, nx, x, us, h, n);
        DormandPrince.combine(LAST, ny, y, vs, h, n);
        double[] nu = us[LAST];
        double[] nv = vs[LAST];
        double[] nw = ws[LAST];
        int landed = 0;
        for (int i = 0; i < n; i++) {
            double s = 2;
            if (!down[i] && zs[i] <= 0 && nw[i] < 0) {
                s = crossing(h, z[i], w[i], zs[i], nw[i]);
                groundX[i] = cubic(s, h, x[i], u[i], nx[i], nu[i]);
                groundY[i] = cubic(s, h, y[i], v[i], ny[i], nv[i]);
                down[i] = true;
                landed++;
            }
            if (!burst[i] && (s <= 1 || burstS[i] <= t + h)) {
                double at = Math.min(s, (burstS[i] - t) / h);
                burstX[i] = cubic(at, h, x[i], u[i], nx[i], nu[i]);
                burstY[i] = cubic(at, h, y[i], v[i], ny[i], nv[i]);
                burstZ[i] = Math.max(0, cubic(at, h, z[i], w[i], zs[i], nw[i]));
                burst[i] = true;
            }
        }
        return landed;
    }

    private void advance(int n) {
        System.arraycopy(nx, 0, x, 0, n);
        System.arraycopy(ny, 0, y, 0, n);
        System.arraycopy(zs, 0, z, 0, n);
        System.arraycopy(us[LAST], 0, u, 0, n);
        System.arraycopy(vs[LAST], 0, v, 0, n);
        System.arraycopy(ws[LAST], 0, w, 0, n);
        System.arraycopy(ku[LAST], 0, ku[0], 0, n);
        System.arraycopy(kv[LAST], 0, kv[0], 0, n);
        System.arraycopy(kw[LAST], 0, kw[0], 0, n);
    }

    /** The part of a step after which the height falls through zero, by Newton's method on the cubic. */
    private static double crossing(double h, double z, double w, double nz, double nw) {
        double s = z / (z - nz);
        for (int i = 0; i < ROOT_ITERATIONS; i++) {
            double slope = 6 * s * (1 - s) * (nz - z) + h * ((1 - s) * (1 - 3 * s) * w + s * (3 * s - 2) * nw);
            double better = Math.max(0, Math.min(1, s - cubic(s, h, z, w, nz, nw) / slope));
            if (Math.abs(better - s) < ROOT_TOLERANCE) {
                return better;
            }
            s = better;
        }
        return s;
    }

    /** Cubic Hermite interpolation over a step of {@code h} seconds at its part {@code s}. */
    private static double cubic(double s, double h, double a, double slopeA, double b, double slopeB) {
        double r = 1 - s;
        return r * r * (a * (1 + 2 * s) + h * s * slopeA) + s * s * (b * (1 + 2 * r) - h * r * slopeB);
    }
}
