package org.girandole.studio.views.site;

import java.util.ArrayList;
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
    /** How much of the room that is left over lies above the plan, where the words and the dial are. */
    private static final double ABOVE = 0.85;
    private static final double SMALLEST_M = 20;

    /**
     * All that is fixed on the site in a drawing; fallout may reach beyond.
     *
     * @param foot height of the words at the foot
     */
    public static Ground whole(SiteView site, double width, double height, double foot) {
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
            return new Ground(0, 0, 1, width, height);
        }
        double west = spots.stream().mapToDouble(Spot::x).min().orElse(0);
        double east = spots.stream().mapToDouble(Spot::x).max().orElse(0);
        double south = spots.stream().mapToDouble(Spot::y).min().orElse(0);
        double north = spots.stream().mapToDouble(Spot::y).max().orElse(0);
        double room = Math.max(1, height - foot);
        double scale = Math.max(1e-3, MARGIN * Math.min(width / Math.max(SMALLEST_M, east - west), room / Math.max(SMALLEST_M, north - south)));
        double left = Math.max(0, room * MARGIN - (north - south) * scale);
        double down = left * (ABOVE - 0.5);
        return new Ground((west + east) / 2, (south + north) / 2 + (down - foot / 2) / scale, scale, width, height);
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
