package org.girandole.lang.ide.features;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.Timing.RiseSource;

/** Beside each line that fires something: when its first igniter is fired, and the timecode of that. */
public final class Hints {
    private Hints() {
    }

    /** Hints of the lines of a range; empty when the check has not caught up with the text. */
    public static List<InlayHint> of(ScriptView view, Optional<CheckedScript> checked, Range range) {
        List<InlayHint> hints = new ArrayList<>();
        checked.flatMap(script -> PlanLines.of(script, view)).ifPresent(lines -> lines.cues().forEach((line, cues) -> {
            if (line >= range.getStart().getLine() && line <= range.getEnd().getLine()) {
                hints.add(hint(view, line, cues));
            }
        }));
        hints.sort(Comparator.comparing(hint -> hint.getPosition().getLine()));
        return hints;
    }

    private static InlayHint hint(ScriptView view, int line, List<PlannedCue> cues) {
        PlannedCue first = cues.stream().min(Comparator.comparingLong((PlannedCue cue) -> cue.timing().fireUs())
                .thenComparing(PlannedCue::number)).orElseThrow();
        String estimated = first.timing().riseSource() == RiseSource.ESTIMATED ? " (estimated)" : "";
        String timecode = first.timecode().map(label -> "  " + label).orElse("  no timecode");
        String more = cues.size() > 1 ? "  first of " + cues.size() : "";
        InlayHint hint = new InlayHint(new Position(line, view.lines().line(line).stripTrailing().length()),
                Either.forLeft("fires " + Times.clock(first.timing().fireUs()) + estimated + timecode + more));
        hint.setKind(InlayHintKind.Parameter);
        hint.setPaddingLeft(true);
        hint.setTooltip(Either.forLeft("Cue " + first.number() + ": " + first.what() + " at " + first.position() + ", seen at "
                + Times.clock(first.timing().seenUs()) + ", key " + first.key()));
        return hint;
    }
}
