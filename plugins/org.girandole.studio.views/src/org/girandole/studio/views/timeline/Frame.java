package org.girandole.studio.views.timeline;

import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Letters;

/**
 * Where the parts of the timeline are. All sizes follow the height of the letters, so that larger letters make larger everything.
 *
 * @param width of the whole drawing
 * @param height of the whole drawing
 * @param unit height of a line of normal letters
 * @param waveHeight height of the waveform
 * @param footHeight height of the overview
 * @param headWidth width of the names of the lanes
 * @param top where the lanes begin
 * @param bottom where the lanes end
 * @param laneHeight of each lane
 */
public record Frame(double width, double height, double unit, double waveHeight, double footHeight, double headWidth, double top, double bottom, double laneHeight) {
    private static final double SECTIONS = 1.5;
    private static final double RULER = 3;
    private static final double WAVE = 3.2;
    private static final double OVERVIEW = 1.9;
    private static final double LEAST_WAVE = 0.9;
    private static final double LEAST_OVERVIEW = 0.9;
    private static final double STATUS = 1.4;
    /** What the lanes get of the height before waveform and overview grow, if there are many of them. */
    private static final double SHARE_OF_LANES = 0.62;
    /** One line of letters and the signs beside it can still be read. */
    private static final double LOWEST_LANE = 1.4;
    private static final double HIGHEST_LANE = 5.5;
    /** From here on a lane has two lines of words, and the signs have their full size. */
    private static final double ROOMY_LANE = 2.7;
    private static final double SIGN = 0.46;

    /** Arranges a drawing of a size for a number of lanes. */
    public static Frame of(Pen pen, double width, double height, int lanes) {
        double unit = pen.height(Letters.NORMAL);
        // In a low view the lanes come first: waveform and overview shrink.
        double spare = height / unit - SECTIONS - RULER - STATUS - LEAST_WAVE - LEAST_OVERVIEW - Math.min(lanes * ROOMY_LANE, SHARE_OF_LANES * height / unit);
        double ample = Math.max(0, Math.min(1, spare / (WAVE - LEAST_WAVE + OVERVIEW - LEAST_OVERVIEW)));
        double wave = unit * (LEAST_WAVE + (WAVE - LEAST_WAVE) * ample);
        double foot = unit * (LEAST_OVERVIEW + (OVERVIEW - LEAST_OVERVIEW) * ample);
        double top = unit * (SECTIONS + RULER) + wave;
        double bottom = Math.max(top + unit, height - foot - unit * STATUS);
        double fair = lanes == 0 ? unit : (bottom - top) / lanes;
        return new Frame(width, height, unit, wave, foot, unit * 7.4, top, bottom, Math.max(unit * LOWEST_LANE, Math.min(unit * HIGHEST_LANE, fair)));
    }

    /** Left edge of the time. */
    public double left() {
        return headWidth;
    }

    /** Width of the time. */
    public double timeWidth() {
        return Math.max(1, width - headWidth);
    }

    public double rulerTop() {
        return unit * SECTIONS;
    }

    public double waveTop() {
        return unit * (SECTIONS + RULER);
    }

    public double overviewTop() {
        return bottom;
    }

    public double overviewHeight() {
        return footHeight;
    }

    public double statusTop() {
        return bottom + footHeight;
    }

    public double statusHeight() {
        return unit * STATUS;
    }

    /** Upper edge of a lane. */
    public double laneTop(int lane, Window window) {
        return top + lane * laneHeight - window.top();
    }

    /** Height of the part that lanes are seen in. */
    public double room() {
        return bottom - top;
    }

    /** Whether lanes are so low that there is one line of words in each. */
    public boolean narrowLanes() {
        return laneHeight < unit * ROOMY_LANE;
    }

    /** Size of a sign. */
    public double sign() {
        return Math.min(unit * SIGN, laneHeight * 0.2);
    }

    /** Where the ground of a lane is: things are fired from here. */
    public double floor(int lane, Window window) {
        return laneTop(lane, window) + laneHeight - Math.min(unit * 0.5, laneHeight * 0.185);
    }

    /** Where signs of what has burst are. */
    public double sky(int lane, Window window) {
        return laneTop(lane, window) + Math.min(unit * 0.85, laneHeight * 0.32);
    }

    /** Where signs of what begins at the ground are. */
    public double low(int lane, Window window) {
        return laneTop(lane, window) + laneHeight * 0.58;
    }
}
