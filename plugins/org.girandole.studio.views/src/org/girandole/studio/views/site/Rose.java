package org.girandole.studio.views.site;

import org.girandole.protocol.WindView;

/**
 * The dial on which the wind is dragged: the knob lies where the wind comes from, the farther out the harder it blows.
 *
 * @param radius of the rim, which stands for {@link #RIM_MPS}
 */
public record Rose(double x, double y, double radius) {
    /** Speed at the rim. */
    public static final double RIM_MPS = 12;
    private static final double REACH = 1.25;
    private static final double STEP_MPS = 0.5;
    private static final double STEP_DEG = 5;
    private static final double FULL_DEG = 360;

    /** Whether a point is on the dial. */
    public boolean holds(double px, double py) {
        return Math.hypot(px - x, py - y) <= radius * REACH;
    }

    public double knobX(WindView wind) {
        return x + Math.sin(Math.toRadians(wind.fromDeg())) * reach(wind);
    }

    public double knobY(WindView wind) {
        return y - Math.cos(Math.toRadians(wind.fromDeg())) * reach(wind);
    }

    private double reach(WindView wind) {
        return radius * Math.min(1, wind.speedMps() / RIM_MPS);
    }

    /** The wind whose knob is nearest to a point: whole fives of degrees, halves of metres a second. Gusts keep their lead over the mean. */
    public WindView dragged(double px, double py, WindView before) {
        double distance = Math.min(1, Math.hypot(px - x, py - y) / radius);
        double speed = Math.round(distance * RIM_MPS / STEP_MPS) * STEP_MPS;
        double deg = distance == 0 ? before.fromDeg() : Math.toDegrees(Math.atan2(px - x, y - py));
        return with(Math.round(deg / STEP_DEG) * STEP_DEG, speed, before);
    }

    /** A step by keys. */
    public static WindView stepped(WindView before, int turns, int speeds) {
        return with(before.fromDeg() + turns * STEP_DEG, Math.max(0, before.speedMps() + speeds * STEP_MPS), before);
    }

    private static WindView with(double deg, double speed, WindView before) {
        Double gust = before.gustMps() == null ? null : speed + Math.max(0, before.gustMps() - before.speedMps());
        return new WindView((deg % FULL_DEG + FULL_DEG) % FULL_DEG, speed, gust);
    }
}
