package org.girandole.plan.diff;

import java.util.List;

/**
 * A difference in words, ready for any form of output.
 *
 * @param before stamp and name of the old plan
 * @param after stamp and name of the new plan
 * @param headline one sentence that says what matters most
 * @param parts for the audience, the hardware, safety; those without entries are left out
 */
public record DiffReport(String before, String after, String headline, List<Part> parts) {
    public DiffReport {
        parts = List.copyOf(parts);
    }

    /** One part of the report. */
    public record Part(String title, List<Entry> entries) {
        public Part {
            entries = List.copyOf(entries);
        }
    }

    /**
     * One paragraph.
     *
     * @param text stands alone
     * @param details a line a cue or value concerned
     */
    public record Entry(String text, List<String> details) {
        public Entry {
            details = List.copyOf(details);
        }
    }
}
