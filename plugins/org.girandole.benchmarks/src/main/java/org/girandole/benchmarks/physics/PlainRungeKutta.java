package org.girandole.benchmarks.physics;

import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.FlightModel;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.flight.Wind;

/**
 * The classic fourth-order Runge-Kutta method with a fixed step, one flight after another: what a programmer would
 * write first, and the yardstick for the product's flight. Air and wind are read from tables, as the product does, so
 * that the methods are compared and not the powers and roots of the atmosphere.
 */
final class PlainRungeKutta {
    private static final double LAYER_M = 0.25;
    private static final int LAYERS = 12_000;

    private final double[] density = new double[LAYERS + 2];
    private final double[] sound = new double[LAYERS + 2];
    private final double[] windEast = new double[LAYERS + 2];
    private final double[] windNorth = new double[LAYERS + 2];
    private final double step;
    private final double[] y = new double[6];
    private final double[] before = new double[6];
    private final double[] moved = new double[6];
    private final double[][] k = new double[4][6];
    private Body body;

    PlainRungeKutta(Air air, Wind wind, double step) {
        this.step = step;
        for (int i = 0; i < density.length; i++) {
            density[i] = air.densityKgM3(i * LAYER_M);
            sound[i] = air.soundMps(i * LAYER_M);
            windEast[i] = wind.eastMps(i * LAYER_M);
            windNorth[i] = wind.northMps(i * LAYER_M);
        }
    }

    /** Flies to the ground; returns metres east and north of the muzzle's origin. */
    double[] ground(Body what, Launch launch) {
        body = what;
        double tilt = Math.toRadians(launch.tiltDeg());
        double azimuth = Math.toRadians(launch.azimuthDeg());
        y[0] = launch.muzzle().x();
        y[1] = launch.muzzle().y();
        y[2] = launch.muzzle().z();
        y[3] = launch.speedMps() * Math.sin(tilt) * Math.sin(azimuth);
        y[4] = launch.speedMps() * Math.sin(tilt) * Math.cos(azimuth);
        y[5] = launch.speedMps() * Math.cos(tilt);
        do {
            System.arraycopy(y, 0, before, 0, 6);
            step();
        } while (y[2] > 0 || y[5] > 0);
        double part = crossing();
        return new double[] {cubic(part, 0), cubic(part, 1)};
    }

    private void step() {
        slope(y, k[0]);
        slope(move(k[0], step / 2), k[1]);
        slope(move(k[1], step / 2), k[2]);
        slope(move(k[2], step), k[3]);
        for (int i = 0; i < 6; i++) {
            y[i] += step / 6 * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
        }
    }

    private double[] move(double[] slope, double by) {
        for (int i = 0; i < 6; i++) {
            moved[i] = y[i] + by * slope[i];
        }
        return moved;
    }

    private double crossing() {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 30; i++) {
            double middle = (low + high) / 2;
            if (cubic(middle, 2) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double cubic(double s, int i) {
        double r = 1 - s;
        return r * r * (before[i] * (1 + 2 * s) + step * s * before[i + 3]) + s * s * (y[i] * (1 + 2 * r) - step * r * y[i + 3]);
    }

    private void slope(double[] state, double[] to) {
        double layer = Math.max(0, Math.min(state[2] / LAYER_M, LAYERS));
        int i = (int) layer;
        double share = layer - i;
        double east = state[3] - at(windEast, i, share);
        double north = state[4] - at(windNorth, i, share);
        double speed = Math.sqrt(east * east + north * north + state[5] * state[5]);
        double cd = body.drag().cd(speed / at(sound, i, share));
        double perMps = at(density, i, share) * cd * body.areaM2() * speed / (2 * body.massKg());
        to[0] = state[3];
        to[1] = state[4];
        to[2] = state[5];
        to[3] = -perMps * east;
        to[4] = -perMps * north;
        to[5] = -perMps * state[5] - FlightModel.STANDARD_GRAVITY;
    }

    private static double at(double[] table, int i, double share) {
        return table[i] + share * (table[i + 1] - table[i]);
    }
}
