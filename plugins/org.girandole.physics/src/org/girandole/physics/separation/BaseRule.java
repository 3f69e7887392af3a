package org.girandole.physics.separation;

import java.util.List;

/**
 * One rule of a table: for which firings, which distance.
 *
 * @param id short name, unique in its table; modifiers refer to it
 * @param text the rule in words
 * @param when all must hold; empty for always
 * @param formula the distance
 * @param citation where it is from
 */
public record BaseRule(String id, String text, List<Condition> when, Formula formula, Citation citation) {
    public BaseRule {
        when = List.copyOf(when);
    }
}
