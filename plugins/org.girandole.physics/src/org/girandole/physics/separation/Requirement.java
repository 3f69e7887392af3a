package org.girandole.physics.separation;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.girandole.physics.Derivation;

/**
 * What a table asks for one firing towards one direction: a distance, or an assessment by somebody competent. Never
 * permission.
 *
 * @param metres the distance; empty if an assessment is needed
 * @param assessment why there is no number; empty if there is one
 * @param reducibleToM how far the document lets the distance be reduced by decision; empty if it does not
 * @param applied the base rule and every modifier that took part, in order; where no rule fits, the table itself
 * @param estimated the estimated values it rests on; if any, the distance is an estimate too
 * @param assumptions what was assumed because nothing was said
 * @param derivation the computation; empty if no number came of it
 */
public record Requirement(OptionalDouble metres, Optional<String> assessment, OptionalDouble reducibleToM,
        List<Applied> applied, Set<Quantity> estimated, List<String> assumptions, Optional<Derivation> derivation) {
    public Requirement {
        applied = List.copyOf(applied);
        estimated = Collections.unmodifiableSet(new TreeSet<>(estimated));
        assumptions = List.copyOf(assumptions);
    }

    /** Each rule that took part, with its own document, section and mark: {@code shells: 70 ft per inch: Oregon … (text read); then …}. */
    public String basis() {
        return applied.stream().map(Applied::text).collect(Collectors.joining("; then "));
    }

    /** The worst mark among the rules that the number rests on. */
    public Verification verification() {
        return applied.stream().filter(Applied::changesNumber).map(rule -> rule.citation().verification())
                .reduce(Verification.TEXT_READ, Verification::worse);
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
