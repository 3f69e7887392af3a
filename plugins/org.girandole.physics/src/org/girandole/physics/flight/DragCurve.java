package org.girandole.physics.flight;

import java.util.List;

import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * Drag coefficient by Mach number: straight lines between the points, constant before the first and after the last.
 *
 * @param points at least one, in rising order of Mach number
 * @param source where the values are from
 */
public record DragCurve(List<Point> points, String source) {

    /**
     * @param mach Mach number
     * @param cd drag coefficient, referred to the cross-section
     */
    public record Point(double mach, double cd) {
        public Point {
            Require.notNegative(mach, "Mach number of a drag curve", "");
            Require.notNegative(cd, "drag coefficient", "");
        }
    }

    /** Rough spheres, as used for flying rock: DEFRA, quarry blasting guidance, appendix D. */
    public static final DragCurve SPHERE = new DragCurve(List.of(new Point(0.4, 0.49), new Point(0.5, 0.5),
            new Point(0.6, 0.54), new Point(1.0, 0.82), new Point(1.27, 1.0)),
            "sphere, DEFRA quarry blasting guidance, appendix D");

    public DragCurve {
        points = List.copyOf(points);
        if (points.isEmpty()) {
            throw new PhysicsInputException("a drag curve without points", "one point or more", "give a point");
        }
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).mach <= points.get(i - 1).mach) {
                throw new PhysicsInputException(
                        "Mach " + Figures.of(points.get(i).mach) + " after Mach " + Figures.of(points.get(i - 1).mach),
                        "a drag curve in rising order of Mach number", "put the points in order");
            }
        }
    }

    /** The same coefficient at every speed. */
    public static DragCurve constant(double cd, String source) {
        return new DragCurve(List.of(new Point(0, cd)), source);
    }

    /** The coefficient at a Mach number. */
    public double cd(double mach) {
        int n = points.size();
        Point below = points.get(0);
        if (mach <= below.mach) {
            return below.cd;
        }
        for (int i = 1; i < n; i++) {
            Point above = points.get(i);
            if (mach < above.mach) {
                return below.cd + (above.cd - below.cd) * (mach - below.mach) / (above.mach - below.mach);
            }
            below = above;
        }
        return below.cd;
    }
}
