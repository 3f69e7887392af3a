package org.girandole.lang.compile;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;

/**
 * The cue lines of one script as they were compiled last, for a program that compiles at each key press. A line that reads the same, where all
 * names mean the same, says the same; only its place may have moved. Lines with anything wrong in them are not kept, so that what is wrong is
 * found anew each time. Not for several threads at once.
 */
public final class CueMemory {
    private CueFrame frame;
    private Map<Line, Kept> kept = Map.of();

    /**
     * A cue line in its surroundings.
     *
     * @param relative whether it stands in a repetition
     * @param text all of it as it is written
     */
    record Line(String soundtrack, String file, boolean relative, String text) {
    }

    /** A line with what it says. The line is handed on as it is: what lives long should not be made anew at each key press. */
    private record Kept(Line line, ScoreItem.Cue cue) {
    }

    /** Starts compiling the lines of all scores. What is remembered from another frame is of no use. */
    Round round(CueFrame now) {
        return new Round(now, now.equals(frame) ? kept : Map.of());
    }

    /** One pass over all lines. What comes up in it is remembered when it ends, and nothing else. */
    final class Round {
        private final CueFrame now;
        private final Map<Line, Kept> before;
        private final Map<Line, Kept> seen = new HashMap<>();

        private Round(CueFrame now, Map<Line, Kept> before) {
            this.now = now;
            this.before = before;
        }

        /**
         * The line as remembered, or as compiled now.
         *
         * @param start where it begins
         * @param problems where compiling it reports what is wrong with it
         */
        Optional<ScoreItem> cue(Line line, SourceRef start, Problems problems, Supplier<Optional<ScoreItem>> compile) {
            Kept known = before.get(line);
            if (known != null) {
                ScoreItem.Cue moved = Moved.to(known.cue, start);
                seen.put(known.line, moved == known.cue ? known : new Kept(known.line, moved));
                return Optional.of(moved);
            }
            int reported = problems.reported();
            Optional<ScoreItem> compiled = compile.get();
            if (problems.reported() == reported && compiled.isPresent() && compiled.get() instanceof ScoreItem.Cue cue) {
                seen.put(line, new Kept(line, cue));
            }
            return compiled;
        }

        void end() {
            frame = now;
            kept = seen;
        }
    }
}
