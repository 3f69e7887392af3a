package org.girandole.plan.script;

/** A place on the site plan: x to the east (or any chosen right), y to the north (or ahead), z up; metres. */
public record Point(double xM, double yM, double zM) {
    public Point(double xM, double yM) {
        this(xM, yM, 0);
    }
}
