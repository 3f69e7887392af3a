package org.girandole.plan.script;

import java.util.List;

/**
 * The cues of one soundtrack, to be loaded in one slot of the controller.
 *
 * @param items cues outside of sections
 */
public record Score(String soundtrack, int slot, List<Section> sections, List<ScoreItem> items, List<Hold> holds, SourceRef source) {
    public Score {
        sections = List.copyOf(sections);
        items = List.copyOf(items);
        holds = List.copyOf(holds);
    }

    /** A named part of the score. */
    public record Section(String name, String label, TimeExpr from, TimeExpr to, List<ScoreItem> items, SourceRef source) {
        public Section {
            items = List.copyOf(items);
        }
    }

    /** A window in which nothing may fire. */
    public record Hold(TimeExpr from, TimeExpr to, String reason, SourceRef source) {
    }
}
