package org.girandole.physics.separation;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * A separation table. The first base rule whose conditions hold gives the base distance; every modifier that holds
 * then changes it, in order. A firing that no rule covers has no distance: it needs an assessment.
 *
 * @param name the name scripts use
 * @param title the table in words
 * @param document the document as a whole
 * @param sectorDeg how far either side of a direction still counts as that direction, degrees; where the document
 *        says nothing more than "in the direction of", this is the program's reading
 * @param rules base rules in order
 * @param modifiers modifiers in order
 * @param notes what a reader of the table must know, such as readings of open points
 */
public record DistanceTable(String name, String title, Citation document, double sectorDeg, List<BaseRule> rules,
        List<Modifier> modifiers, List<String> notes) {
    /** A third of the circle: wide enough that a slant lean still counts, narrow enough that a sideways one does not. */
    public static final double DEFAULT_SECTOR_DEG = 60;

    /** @throws PhysicsInputException if there is no rule, an id twice, or a modifier of an unknown rule */
    public DistanceTable {
        rules = List.copyOf(rules);
        modifiers = List.copyOf(modifiers);
        notes = List.copyOf(notes);
        Require.between(sectorDeg, 1, 90, "sector of the distance table " + name, "deg");
        if (rules.isEmpty()) {
            throw new PhysicsInputException("the distance table " + name + " has no rule", "one rule or more",
                    "add a rule");
        }
        Set<String> ids = new HashSet<>();
        for (BaseRule rule : rules) {
            if (!ids.add(rule.id())) {
                throw new PhysicsInputException("the distance table " + name + " has two rules " + rule.id(),
                        "each rule under its own name", "rename one");
            }
        }
        for (Modifier modifier : modifiers) {
            for (String id : modifier.of()) {
                if (!ids.contains(id)) {
                    throw new PhysicsInputException(
                            "the distance table " + name + " has a modifier of the rule " + id + ", which it has not",
                            "one of " + String.join(", ", rules.stream().map(BaseRule::id).toList()),
                            "correct the name");
                }
            }
        }
    }

    /** What the table asks for this firing towards this direction. */
    public Requirement evaluate(FiringCase firing) {
        return new Evaluation(this, firing).run();
    }
}
