package org.girandole.physics.fallout;

import java.util.List;
import java.util.Optional;

import org.girandole.physics.geometry.Point2;

/**
 * Each place where a sample of one spec comes down: for asking what would be if it were fired from elsewhere, which moves them all alike.
 *
 * @param unburst where it comes down if it does not burst
 * @param debris where what is left of it comes down if it bursts; empty for what does not burst
 */
public record Landings(List<Point2> unburst, Optional<List<Point2>> debris) {
    public Landings {
        unburst = List.copyOf(unburst);
        debris = debris.map(List::copyOf);
    }
}
