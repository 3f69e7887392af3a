package org.girandole.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongUnaryOperator;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;

/** Cues that do not follow the music to its new edit: those of repetitions and chases that run across it go on counting. */
final class EditStrays {
    /** More than the finding and rounding of an edit adds up to. */
    private static final long ASTRAY_US = 30_000;

    private final String soundtrack;
    private final LongUnaryOperator wanted;

    /** @param wanted where a moment of the old edit belongs in the new one */
    EditStrays(String soundtrack, LongUnaryOperator wanted) {
        this.soundtrack = soundtrack;
        this.wanted = wanted;
    }

    /** One sentence for each line of the script that has strays, in the order of time; empty when all cues follow. */
    List<String> between(Plan before, Plan after) {
        Map<String, PlannedCue> now = new HashMap<>();
        after.cues().stream().filter(this::mine).forEach(cue -> now.put(cue.key(), cue));
        Map<String, List<Long>> strays = new LinkedHashMap<>();
        for (PlannedCue cue : before.cues()) {
            PlannedCue moved = mine(cue) ? now.get(cue.key()) : null;
            if (moved != null && Math.abs(moved.timing().seenUs() - wanted.applyAsLong(cue.timing().seenUs())) > ASTRAY_US) {
                strays.computeIfAbsent(moved.source().file() + ":" + moved.source().line() + " " + moved.what(), line -> new ArrayList<>())
                        .add(moved.timing().seenUs());
            }
        }
        return strays.entrySet().stream().map(stray -> stray.getKey() + ": " + stray.getValue().size() + " of its moments, from "
                + Times.clock(stray.getValue().get(0)) + " on, lie to other music than before").toList();
    }

    private boolean mine(PlannedCue cue) {
        return cue.soundtrack().equals(soundtrack);
    }
}
