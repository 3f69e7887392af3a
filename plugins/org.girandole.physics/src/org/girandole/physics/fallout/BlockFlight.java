package org.girandole.physics.fallout;

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

    private static final double GRAVITY = FlightModel.STANDARD_GRAVITY;
    private static final double FIRST_STEP_S = 0.2;
    private static final double LONGEST_STEP_S = 2.5;
    private static final double SHORTEST_STEP_S = 1e-4;
    private static final double SAFETY = 0.85;
    private static final double MOST_GROWTH = 3;
    private static final double MOST_SHRINKING = 0.2;
    private static final int ROOT_ITERATIONS = 8;
    private static final double ROOT_TOLERANCE = 1e-9;
    private static final double LONGEST_FLIGHT_S = 900;

    /** Butcher tableau of Dormand and Prince (1980), J. Comp. Appl. Math. 6, 19-26; the last row is the result. */
    private static final double[][] A = {
            {},
            {1.0 / 5},
            {3.0 / 40, 9.0 / 40},
            {44.0 / 45, -56.0 / 15, 32.0 / 9},
            {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
            {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
            {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}};
    /** Result less the embedded fourth-order result. */
    private static final double[] ERROR = {71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525,
            -1.0 / 40};
    private static final int STAGES = 7;

    // What each flight brings along.
    /** Cross-section over twice the mass, m2/kg. */
    final double[] perCd = new double[LANES];
    /** Factor on the wind times the cosine and the sine of its turn, clockwise seen from above. */
    final double[] windAlong = new double[LANES];
    final double[] windAcross = new double[LANES];
    /** Time of burst in seconds, infinite for none. */
    final double[] burstS = new double[LANES];
    /** State: metres from the muzzle east and north, metres above ground, and speeds in m/s. Set before, used up after. */
    final double[] x = new double[LANES];
    final double[] y = new double[LANES];
    final double[] z = new double[LANES];
    final double[] u = new double[LANES];
    final double[] v = new double[LANES];
    final double[] w = new double[LANES];

    // What comes of it.
    final double[] burstX = new double[LANES];
    final double[] burstY = new double[LANES];
    final double[] burstZ = new double[LANES];
    final double[] groundX = new double[LANES];
    final double[] groundY = new double[LANES];

    /** Speeds at each stage; the last is the new state. */
    private final double[][] us = new double[STAGES][LANES];
    private final double[][] vs = new double[STAGES][LANES];
    private final double[][] ws = new double[STAGES][LANES];
    /** Accelerations at each stage. */
    private final double[][] ku = new double[STAGES][LANES];
    private final double[][] kv = new double[STAGES][LANES];
    private final double[][] kw = new double[STAGES][LANES];
    private final double[] zs = new double[LANES];
    private final double[] nx = new double[LANES];
    private final double[] ny = new double[LANES];
    private final double[] density = new double[LANES];
    private final double[] perSound = new double[LANES];
    private final double[] windEast = new double[LANES];
    private final double[] windNorth = new double[LANES];
    private final double[] speed = new double[LANES];
    private final boolean[] burst = new boolean[LANES];
    private final boolean[] down = new boolean[LANES];

    private final double[] air;
    private final double tolerance;
    private double[] mach;
    private double[] cd;

    /** @param tolerance error allowed in one step, in m/s */
    BlockFlight(AirColumn column, double tolerance) {
        this.air = column.table;
        this.tolerance = tolerance;
    }

    /** Sets how what flies is braked. */
    void drag(DragCurve drag) {
        int n = drag.points().size();
        mach = new double[n];
        cd = new double[n];
        for (int i = 0; i < n; i++) {
            mach[i] = drag.points().get(i).mach();
            cd[i] = drag.points().get(i).cd();
        }
    }

    /** Flies the first {@code n} flights to the ground. */
    void fly(int n) {
        double t = 0;
        double h = FIRST_STEP_S;
        int flying = n;
        for (int i = 0; i < n; i++) {
            burst[i] = false;
            down[i] = false;
            us[0][i] = u[i];
            vs[0][i] = v[i];
            ws[0][i] = w[i];
            zs[i] = z[i];
        }
        slope(0, n);
        while (flying > 0) {
            if (t > LONGEST_FLIGHT_S) {
                throw new IllegalStateException("a flight did not end within " + LONGEST_FLIGHT_S + " s");
            }
            for (int stage = 1; stage < STAGES; stage++) {
                stage(stage, h, n);
                slope(stage, n);
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

    /** Speeds and height of a stage. East and north never act on the motion and are summed at the end. */
    private void stage(int stage, double h, int n) {
        double[] a = A[stage];
        combine(us[stage], u, ku, a, h, n);
        combine(vs[stage], v, kv, a, h, n);
        combine(ws[stage], w, kw, a, h, n);
        combine(zs, z, ws, a, h, n);
    }

    /** {@code to = from + h (a0 k0 + a1 k1 + ...)}, written out because the loops then run on several flights at once. */
    private static void combine(double[] to, double[] from, double[][] k, double[] a, double h, int n) {
        double[] k0 = k[0];
        double[] k1 = k[1];
        double[] k2 = k[2];
        double[] k3 = k[3];
        double[] k4 = k[4];
        double[] k5 = k[5];
        double a0 = h * a[0];
        switch (a.length) {
            case 1 -> {
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i];
                }
            }
            case 2 -> {
                double a1 = h * a[1];
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i] + a1 * k1[i];
                }
            }
            case 3 -> {
                double a1 = h * a[1];
                double a2 = h * a[2];
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i] + a1 * k1[i] + a2 * k2[i];
                }
            }
            case 4 -> {
                double a1 = h * a[1];
                double a2 = h * a[2];
                double a3 = h * a[3];
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i] + a1 * k1[i] + a2 * k2[i] + a3 * k3[i];
                }
            }
            case 5 -> {
                double a1 = h * a[1];
                double a2 = h * a[2];
                double a3 = h * a[3];
                double a4 = h * a[4];
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i] + a1 * k1[i] + a2 * k2[i] + a3 * k3[i] + a4 * k4[i];
                }
            }
            default -> {
                // The result row; its second coefficient is zero.
                double a2 = h * a[2];
                double a3 = h * a[3];
                double a4 = h * a[4];
                double a5 = h * a[5];
                for (int i = 0; i < n; i++) {
                    to[i] = from[i] + a0 * k0[i] + a2 * k2[i] + a3 * k3[i] + a4 * k4[i] + a5 * k5[i];
                }
            }
        }
    }

    /** The greatest error of any flight, as a rate of change of speed. */
    private double error(int n) {
        double greatest = 0;
        for (int i = 0; i < n; i++) {
            double eu = 0;
            double ev = 0;
            double ew = 0;
            for (int stage = 0; stage < STAGES; stage++) {
                eu += ERROR[stage] * ku[stage][i];
                ev += ERROR[stage] * kv[stage][i];
                ew += ERROR[stage] * kw[stage][i];
            }
            greatest = Math.max(greatest, eu * eu + ev * ev + ew * ew);
        }
        return Math.sqrt(greatest);
    }

    /** Notes bursts and landings of the step from {@code t}; returns how many landed. */
    private int finish(double t, double h, int n) {
        combine(nx, x, us, A[STAGES - 1], h, n);
        combine(ny, y, vs, A[STAGES - 1], h, n);
        double[] nu = us[STAGES - 1];
        double[] nv = vs[STAGES - 1];
        double[] nw = ws[STAGES - 1];
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
        int last = STAGES - 1;
        System.arraycopy(us[last], 0, u, 0, n);
        System.arraycopy(vs[last], 0, v, 0, n);
        System.arraycopy(ws[last], 0, w, 0, n);
        System.arraycopy(us[last], 0, us[0], 0, n);
        System.arraycopy(vs[last], 0, vs[0], 0, n);
        System.arraycopy(ws[last], 0, ws[0], 0, n);
        System.arraycopy(ku[last], 0, ku[0], 0, n);
        System.arraycopy(kv[last], 0, kv[0], 0, n);
        System.arraycopy(kw[last], 0, kw[0], 0, n);
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

    /** Accelerations at a stage, in loops that each do one thing. */
    private void slope(int stage, int n) {
        look(n);
        double[] su = us[stage];
        double[] sv = vs[stage];
        double[] sw = ws[stage];
        double[] au = ku[stage];
        double[] av = kv[stage];
        double[] aw = kw[stage];
        for (int i = 0; i < n; i++) {
            double du = su[i] - (windAlong[i] * windEast[i] + windAcross[i] * windNorth[i]);
            double dv = sv[i] - (windAlong[i] * windNorth[i] - windAcross[i] * windEast[i]);
            speed[i] = Math.sqrt(du * du + dv * dv + sw[i] * sw[i]);
            au[i] = du;
            av[i] = dv;
        }
        for (int i = 0; i < n; i++) {
            density[i] *= coefficient(speed[i] * perSound[i]);
        }
        for (int i = 0; i < n; i++) {
            double perMps = -density[i] * perCd[i] * speed[i];
            au[i] *= perMps;
            av[i] *= perMps;
            aw[i] = perMps * sw[i] - GRAVITY;
        }
    }

    /** Air and wind at the heights of a stage. */
    private void look(int n) {
        double[] table = air;
        for (int i = 0; i < n; i++) {
            double layer = Math.max(0, Math.min(zs[i] * (1 / AirColumn.LAYER_M), AirColumn.TOP_LAYER));
            int below = (int) layer;
            double share = layer - below;
            int at = below * AirColumn.FIELDS;
            int above = at + AirColumn.FIELDS;
            density[i] = table[at] + share * (table[above] - table[at]);
            perSound[i] = table[at + AirColumn.PER_SOUND];
            windEast[i] = table[at + AirColumn.EAST] + share * (table[above + AirColumn.EAST] - table[at + AirColumn.EAST]);
            windNorth[i] = table[at + AirColumn.NORTH]
                    + share * (table[above + AirColumn.NORTH] - table[at + AirColumn.NORTH]);
        }
    }

    private double coefficient(double m) {
        if (m <= mach[0]) {
            return cd[0];
        }
        for (int i = 1; i < mach.length; i++) {
            if (m < mach[i]) {
                return cd[i - 1] + (cd[i] - cd[i - 1]) * (m - mach[i - 1]) / (mach[i] - mach[i - 1]);
            }
        }
        return cd[cd.length - 1];
    }
}
