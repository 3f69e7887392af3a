package org.girandole.studio.views.timeline;

import java.util.List;
import org.girandole.protocol.CueView;

/**
 * What is drawn as one: the shots of one line that are fired and seen at one position at the same moments.
 *
 * @param cue the first of them
 * @param numbers of all of them
 * @param endUs when the last of it is gone
 * @param severity of the gravest finding that nobody agreed to, {@code waived} if all are agreed to, empty if there is none
 */
public record Glyph(CueView cue, List<Integer> numbers, long endUs, String severity) {
    /** Severity of a glyph whose findings are all agreed to. */
    public static final String WAIVED = "waived";

    public Glyph {
        numbers = List.copyOf(numbers);
    }

    public long fireUs() {
        return cue.fireUs();
    }

    public long burstUs() {
        return cue.burstUs();
    }

    /** Whether something is seen to go up before the effect shows. */
    public boolean rises() {
        return cue.burstUs() > cue.fireUs();
    }
}
