package org.girandole.physics.fallout;

import java.util.List;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;

/**
 * Where one kind of thing comes down. The area of a share is the convex hull of that share of the samples that lies
 * nearest to the mean, near being measured by the samples' own spread (Mahalanobis distance); so areas of growing
 * shares lie one in another, follow the drift, and hold at least the share of samples they are named for.
 *
 * @param samples how many samples
 * @param mean the mean of all samples
 * @param farthest the sample farthest from the firing place
 * @param areas one for each share asked, in rising order
 * @param inWatched for each watched shape the share of samples that came down in it, 0 to 1
 */
public record Footprint(int samples, Point2 mean, Point2 farthest, List<Area> areas, List<Double> inWatched) {
    public Footprint {
        areas = List.copyOf(areas);
        inWatched = List.copyOf(inWatched);
    }

    /**
     * @param share the share of samples, such as 0.9
     * @param outline the area
     */
    public record Area(double share, Polygon outline) {
    }
}
