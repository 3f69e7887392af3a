package org.girandole.physics.fallout;

/**
 * The pair of orders 5 and 4 of J. R. Dormand and P. J. Prince (1980), J. Comp. Appl. Math. 6, 19-26, for many flights side by
 * side. The loops are written out because they then run on several flights at once.
 */
final class DormandPrince {
    static final int STAGES = 7;

    /** Butcher tableau; the last row is the result. */
    private static final double[][] A = {
            {},
            {1.0 / 5},
            {3.0 / 40, 9.0 / 40},
            {44.0 / 45, -56.0 / 15, 32.0 / 9},
            {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
            {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
            {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}};
    /** Result less the embedded fourth-order result; that of the second stage is zero. */
    private static final double E0 = 71.0 / 57600;
    private static final double E2 = -71.0 / 16695;
    private static final double E3 = 71.0 / 1920;
    private static final double E4 = -17253.0 / 339200;
    private static final double E5 = 22.0 / 525;
    private static final double E6 = -1.0 / 40;

    private DormandPrince() {
    }

    /** The values at a stage of a step of {@code h}, {@code to = from + h (a0 k0 + a1 k1 + ...)}, for the first {@code n}. */
    static void combine(int stage, double[] to, double[] from, double[][] k, double h, int n) {
        double[] a = A[stage];
        double[] k0 = k[0];
        double[] k1 = k[1];
        double[] k2 = k[2];
        double[] k3 = k[3];
        double[] k4 = k[4];
        double[] k5 = k[5];
        double a0 = h * a[0];
        switch (stage) {
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

    /** Adds the square of the error of a step, as a rate of change, for each of the first {@code n}. */
    static void addSquareError(double[] to, double[][] k, int n) {
        double[] k0 = k[0];
        double[] k2 = k[2];
        double[] k3 = k[3];
        double[] k4 = k[4];
        double[] k5 = k[5];
        double[] k6 = k[6];
        for (int i = 0; i < n; i++) {
            double error = E0 * k0[i] + E2 * k2[i] + E3 * k3[i] + E4 * k4[i] + E5 * k5[i] + E6 * k6[i];
            to[i] += error * error;
        }
    }
}
