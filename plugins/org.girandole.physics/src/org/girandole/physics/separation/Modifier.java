package org.girandole.physics.separation;

import java.util.List;

/**
 * A change to the base distance under conditions. Modifiers are applied in the order of the table.
 *
 * @param text the modifier in words
 * @param of ids of the base rules it applies to; empty for all
 * @param when all must hold; empty for always
 * @param where in which direction it holds
 * @param change what it does
 * @param citation where it is from
 */
public record Modifier(String text, List<String> of, List<Condition> when, Where where, Change change,
        Citation citation) {
    public Modifier {
        of = List.copyOf(of);
        when = List.copyOf(when);
    }

    boolean appliesTo(BaseRule rule) {
        return of.isEmpty() || of.contains(rule.id());
    }
}
