package org.girandole.studio.views.site;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.SiteView;

/**
 * Metres of the site on pixels of the drawing; both axes alike, y upwards.
 *
 * @param centreX metres in the middle of the drawing
 * @param centreY metres in the middle of the drawing
 * @param pxPerM pixels a metre
 */
public record Ground(double centreX, double centreY, double pxPerM, double width, double height) {
    private static final double MARGIN = 0.88;
    private static final double SMALLEST_M = 20;

    /**
     * All that is fixed on the site in a part of a drawing; fallout may reach beyond.
     *
     * @param above how much of the height that is left over lies above the plan, 0 to 1
     */
    static Ground whole(SiteView site, Box room, double above, double width, double height) {
        Box fixed = fixed(site);
        if (fixed == null) {
            return new Ground(0, 0, 1, width, height);
        }
        double scale = scale(fixed, room);
        double over = Math.max(0, room.height() * MARGIN - (fixed.bottom() - fixed.top()) * scale);
        double middle = room.top() + room.height() / 2 + over * (above - 0.5);
        return new Ground(fixed.centreX() - (room.centreX() - width / 2) / scale, (fixed.top() + fixed.bottom()) / 2 + (middle - height / 2) / scale, scale,
                width, height);
    }

    /** Pixels a metre when all that is fixed on the site fits into a part of a drawing. */
    static double scale(SiteView site, Box room) {
        Box fixed = fixed(site);
        return fixed == null ? 1 : scale(fixed, room);
    }

    private static double scale(Box fixed, Box room) {
        double across = room.width() / Math.max(SMALLEST_M, fixed.right() - fixed.left());
        return Math.max(1e-3, MARGIN * Math.min(across, room.height() / Math.max(SMALLEST_M, fixed.bottom() - fixed.top())));
    }

    /** In metres, south at the top; null when there is nothing. */
    private static Box fixed(SiteView site) {
        List<Spot> spots = new ArrayList<>();
        site.positions().forEach(position -> spots.add(position.at()));
        site.audience().forEach(outline -> spots.addAll(outline.points()));
        if (site.boundary() != null) {
            spots.addAll(site.boundary().points());
        }
        for (SiteView.Outline place : site.protectedPlaces()) {
            double r = place.radiusM() == null ? 0 : place.radiusM();
            place.points().forEach(at -> {
                spots.add(new Spot(at.x() - r, at.y() - r, 0));
                spots.add(new Spot(at.x() + r, at.y() + r, 0));
            });
        }
        if (spots.isEmpty()) {
            return null;
        }
        DoubleSummaryStatistics x = spots.stream().mapToDouble(Spot::x).summaryStatistics();
        DoubleSummaryStatistics y = spots.stream().mapToDouble(Spot::y).summaryStatistics();
        return new Box(x.getMin(), y.getMin(), x.getMax(), y.getMax());
    }

    public double px(double xM) {
        return width / 2 + (xM - centreX) * pxPerM;
    }

    public double py(double yM) {
        return height / 2 - (yM - centreY) * pxPerM;
    }

    public Ground zoomed(double factor) {
        return new Ground(centreX, centreY, Math.max(1e-3, Math.min(100, pxPerM * factor)), width, height);
    }

    public Ground moved(double dx, double dy) {
        return new Ground(centreX - dx / pxPerM, centreY + dy / pxPerM, pxPerM, width, height);
    }

    public Ground sized(double newWidth, double newHeight) {
        return new Ground(centreX, centreY, pxPerM, newWidth, newHeight);
    }

    double[] xy(List<Spot> spots) {
        double[] xy = new double[spots.size() * 2];
        for (int i = 0; i < spots.size(); i++) {
            xy[2 * i] = px(spots.get(i).x());
            xy[2 * i + 1] = py(spots.get(i).y());
        }
        return xy;
    }
}
