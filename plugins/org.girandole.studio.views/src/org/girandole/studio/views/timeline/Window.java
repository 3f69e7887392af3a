package org.girandole.studio.views.timeline;

/**
 * The stretch of time and of lanes that is in view. Immutable; every change keeps it inside of the score.
 *
 * @param fromUs at the left edge
 * @param usPerPx microseconds a pixel
 * @param top how many pixels of the lanes are above the edge
 */
public record Window(long fromUs, double usPerPx, double top) {
    /** Nearest: one pixel is a millisecond. */
    private static final double NEAREST = 1_000;
    private static final double MARGIN = 0.02;

    /** The whole score in so many pixels. */
    public static Window whole(Score score, double widthPx) {
        double span = (score.toUs() - score.fromUs()) * (1 + 2 * MARGIN);
        return new Window(Math.round(score.fromUs() - (score.toUs() - score.fromUs()) * MARGIN), Math.max(NEAREST, span / Math.max(1, widthPx)), 0);
    }

    public double x(long us) {
        return (us - fromUs) / usPerPx;
    }

    public long us(double x) {
        return Math.round(fromUs + x * usPerPx);
    }

    /** Closer or farther about a place that stays where it is. */
    public Window zoomed(double factor, double aboutPx, Score score, double widthPx) {
        double widest = whole(score, widthPx).usPerPx;
        double wanted = Math.max(NEAREST, Math.min(widest, usPerPx * factor));
        return new Window(Math.round(fromUs + aboutPx * (usPerPx - wanted)), wanted, top).inside(score, widthPx);
    }

    public Window movedBy(double px, Score score, double widthPx) {
        return new Window(Math.round(fromUs + px * usPerPx), usPerPx, top).inside(score, widthPx);
    }

    /** Farther up or down in the lanes. */
    public Window scrolledBy(double px, double lanesHeight, double roomPx) {
        return new Window(fromUs, usPerPx, Math.max(0, Math.min(Math.max(0, lanesHeight - roomPx), top + px)));
    }

    /** With a moment in view; unchanged if it is well inside. */
    public Window showing(long us, Score score, double widthPx) {
        double x = x(us);
        if (x >= widthPx * 0.04 && x <= widthPx * 0.9) {
            return this;
        }
        return new Window(Math.round(us - widthPx * usPerPx * 0.2), usPerPx, top).inside(score, widthPx);
    }

    private Window inside(Score score, double widthPx) {
        Window whole = whole(score, widthPx);
        long last = Math.round(whole.fromUs + (whole.usPerPx - Math.min(usPerPx, whole.usPerPx)) * widthPx);
        return new Window(Math.max(whole.fromUs, Math.min(last, fromUs)), usPerPx, top);
    }
}
