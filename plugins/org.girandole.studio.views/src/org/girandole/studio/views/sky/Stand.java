package org.girandole.studio.views.sky;

import java.util.List;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;

/**
 * The picture as the audience sees it: metres to the right and metres up, on pixels. Both axes alike, no perspective.
 *
 * @param lookDeg bearing in which the audience looks
 * @param middleM metres to the right that lie in the middle
 * @param pxPerM pixels a metre
 * @param groundPx where the ground is
 */
public record Stand(double lookDeg, double middleM, double pxPerM, double width, double height, double groundPx) {
    private static final double USUAL_SPREAD_M = 50;
    private static final double LOWEST_M = 40;
    private static final double MARGIN = 0.94;

    /** All that the cues reach, in a drawing. */
    public static Stand whole(List<CueView> cues, double lookDeg, double width, double height, double foot) {
        double left = Double.MAX_VALUE;
        double right = -Double.MAX_VALUE;
        double top = LOWEST_M;
        for (CueView cue : cues) {
            Spot at = cue.burst() == null ? cue.from() : cue.burst();
            double half = cue.burst() == null ? USUAL_SPREAD_M / 5 : (cue.spreadM() == null ? USUAL_SPREAD_M : cue.spreadM()) / 2;
            double across = across(lookDeg, at);
            left = Math.min(left, across - half);
            right = Math.max(right, across + half);
            top = Math.max(top, at.z() + half);
        }
        if (left > right) {
            left = -LOWEST_M;
            right = LOWEST_M;
        }
        double scale = MARGIN * Math.min(width / (right - left), (height - foot) / top);
        return new Stand(lookDeg, (left + right) / 2, scale, width, height, height - foot);
    }

    static double across(double lookDeg, Spot at) {
        double a = Math.toRadians(lookDeg);
        return at.x() * Math.cos(a) - at.y() * Math.sin(a);
    }

    double x(Spot at) {
        return width / 2 + (across(lookDeg, at) - middleM) * pxPerM;
    }

    double y(double zM) {
        return groundPx - zM * pxPerM;
    }

    /** How far a lean goes to the right in the picture for each metre along it. */
    double lean(double tiltDeg, double bearingDeg) {
        return Math.sin(Math.toRadians(Math.abs(tiltDeg))) * Math.sin(Math.toRadians(bearingDeg - lookDeg));
    }
}
