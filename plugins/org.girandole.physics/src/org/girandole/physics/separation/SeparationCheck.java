package org.girandole.physics.separation;

import java.util.Optional;

import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Shape;

/**
 * A firing at a place held against something to be protected that has an extent. What a table asks can differ by
 * direction; where it does not, the nearest point of the shape counts.
 *
 * @param requirement what is asked in the direction that is worst
 * @param foundM metres from the firing place to the nearest point of the shape in that direction
 * @param at that point
 */
public record SeparationCheck(Requirement requirement, double foundM, Point2 at) {
    /** True if a number is asked and the distance found is enough. */
    public boolean holds() {
        return requirement.metBy(foundM);
    }

    /** Metres that are missing; 0 if it holds, empty if an assessment is needed. */
    public Optional<Double> shortM() {
        if (requirement.assessmentNeeded()) {
            return Optional.empty();
        }
        return Optional.of(holds() ? 0 : requirement.metres().getAsDouble() - foundM);
    }

    /**
     * The worst of all directions in which the shape lies: one that needs an assessment before one that falls short,
     * then the one that falls short most.
     *
     * @param firing the article; its direction is replaced
     * @param from where it is fired
     * @param shape what is to be protected
     */
    public static SeparationCheck of(DistanceTable table, FiringCase firing, Point2 from, Shape shape) {
        return Asked.of(table, firing).against(from, shape);
    }

    boolean worseThan(SeparationCheck other) {
        if (requirement.assessmentNeeded() || other.requirement.assessmentNeeded()) {
            return requirement.assessmentNeeded() && (!other.requirement.assessmentNeeded() || foundM < other.foundM);
        }
        return requirement.metres().getAsDouble() - foundM > other.requirement.metres().getAsDouble() - other.foundM;
    }
}
