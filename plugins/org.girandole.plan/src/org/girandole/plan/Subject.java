package org.girandole.plan;

import java.util.List;

/**
 * What a finding is about, in the names a waiver may use.
 *
 * @param names cue, effect, chain, module, rack, soundtrack … names
 * @param positions positions concerned
 */
public record Subject(List<String> names, List<String> positions) {
    public static final Subject SHOW = new Subject(List.of(), List.of());

    public Subject {
        names = List.copyOf(names);
        positions = List.copyOf(positions);
    }

    public static Subject of(String... names) {
        return new Subject(List.of(names), List.of());
    }
}
