package org.girandole.physics.fallout;

import org.girandole.physics.flight.DragCurve;
import org.girandole.physics.flight.FlightModel;

/** How air and gravity change the speeds of a block of flights. Each loop does one thing, so that it runs on several flights at once. */
final class BlockForces {
    private final AirColumn column;
    private final double leastSoundMps;
    private final double[] density = new double[BlockFlight.LANES];
    private final double[] windEast = new double[BlockFlight.LANES];
    private final double[] windNorth = new double[BlockFlight.LANES];
    private final double[] speed = new double[BlockFlight.LANES];
    private double[] mach;
    private double[] cd;
    /** Up to here the drag coefficient is the first of the curve, whatever the height. */
    private double slowMps;

    BlockForces(AirColumn column) {
        this.column = column;
        this.leastSoundMps = column.leastSoundMps();
    }

    void drag(DragCurve drag) {
        mach = drag.points().stream().mapToDouble(DragCurve.Point::mach).toArray();
        cd = drag.points().stream().mapToDouble(DragCurve.Point::cd).toArray();
        slowMps = cd.length == 1 ? Double.POSITIVE_INFINITY : mach[0] * leastSoundMps;
    }

    /** Accelerations {@code au, av, aw} of the first {@code n} flights of a block at heights {@code z} and speeds {@code u, v, w}. */
    void accelerate(BlockFlight flights, double[] z, double[] u, double[] v, double[] w, double[] au, double[] av, double[] aw, int n) {
        look(z, n);
        meet(flights.windAlong, flights.windAcross, u, v, w, au, av, n);
        resist(z, n);
        brake(flights.perCd, w, au, av, aw, n);
    }

    /** Air and wind at the heights. */
    private void look(double[] z, int n) {
        double[] table = column.table;
        for (int i = 0; i < n; i++) {
            double layer = AirColumn.layer(z[i]);
            int below = (int) layer;
            double share = layer - below;
            int at = below * AirColumn.FIELDS;
            density[i] = table[at + AirColumn.DENSITY] + share * table[at + AirColumn.DENSITY_GROWTH];
            windEast[i] = table[at + AirColumn.EAST] + share * table[at + AirColumn.EAST_GROWTH];
            windNorth[i] = table[at + AirColumn.NORTH] + share * table[at + AirColumn.NORTH_GROWTH];
        }
    }

    /** Speeds through the air: east and north, and in all. */
    private void meet(double[] windAlong, double[] windAcross, double[] u, double[] v, double[] w, double[] du, double[] dv, int n) {
        for (int i = 0; i < n; i++) {
            du[i] = u[i] - (windAlong[i] * windEast[i] + windAcross[i] * windNorth[i]);
        }
        for (int i = 0; i < n; i++) {
            dv[i] = v[i] - (windAlong[i] * windNorth[i] - windAcross[i] * windEast[i]);
        }
        for (int i = 0; i < n; i++) {
            speed[i] = Math.sqrt(du[i] * du[i] + dv[i] * dv[i] + w[i] * w[i]);
        }
    }

    /** Makes of the density the density times the drag coefficient. */
    private void resist(double[] z, int n) {
        double slow = slowMps;
        double slowCd = cd[0];
        for (int i = 0; i < n; i++) {
            density[i] *= speed[i] <= slow ? slowCd : coefficient(speed[i] * column.perSound(z[i]));
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

    private void brake(double[] perCd, double[] w, double[] au, double[] av, double[] aw, int n) {
        for (int i = 0; i < n; i++) {
            double perMps = -density[i] * perCd[i] * speed[i];
            au[i] *= perMps;
            av[i] *= perMps;
            aw[i] = perMps * w[i] - FlightModel.STANDARD_GRAVITY;
        }
    }
}
