package org.girandole.physics.separation;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

import org.girandole.physics.Derivation;

/**
 * What a table asks for one firing towards one direction: a distance, or an assessment by somebody competent. Never
 * permission.
 *
 * @param metres the distance; empty if an assessment is needed
 * @param assessment why there is no number; empty if there is one
 * @param reducibleToM how far the document lets the distance be reduced by decision; empty if it does not
 * @param ruleText the base rule and every modifier applied, in words
 * @param citation the base rule's place, with the worst mark among all that were applied
 * @param estimated the estimated values it rests on; if any, the distance is an estimate too
 * @param assumptions what was assumed because nothing was said
 * @param derivation the computation; empty if no number came of it
 */
public record Requirement(OptionalDouble metres, Optional<String> assessment, OptionalDouble reducibleToM,
        String ruleText, Citation citation, Set<Quantity> estimated, List<String> assumptions,
        Optional<Derivation> derivation) {
    public Requirement {
        estimated = Collections.unmodifiableSet(new TreeSet<>(estimated));
        assumptions = List.copyOf(assumptions);
    }

    /** True if an assessment is needed because the table has no number. */
    public boolean assessmentNeeded() {
        return metres.isEmpty();
    }

    /** True if there is a number and {@code foundM} metres are enough. One millimetre counts as nothing. */
    public boolean metBy(double foundM) {
        return metres.isPresent() && foundM >= metres.getAsDouble() - 0.001;
    }
}
