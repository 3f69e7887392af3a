package org.girandole.lang.ide.features;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.CheckedText;
import org.girandole.plan.PlannedCue;

/** What the plan makes of each line of one file. */
final class PlanLines {
    private final Map<Integer, List<PlannedCue>> cues = new LinkedHashMap<>();

    private PlanLines() {
    }

    /** By line, from 0, of the file with this URI. Empty when the plan was made of another text. */
    static Optional<PlanLines> of(CheckedScript script, ScriptView view) {
        PlanLines lines = new PlanLines();
        for (Map.Entry<String, CheckedText> entry : script.texts().entrySet()) {
            if (entry.getValue().uri().equals(view.uri())) {
                if (!entry.getValue().lines().text().equals(view.lines().text())) {
                    return Optional.empty();
                }
                script.plan().ifPresent(plan -> plan.cues().stream().filter(cue -> cue.source().file().equals(entry.getKey()))
                        .forEach(cue -> lines.cues.computeIfAbsent(cue.source().line() - 1, line -> new ArrayList<>()).add(cue)));
                return Optional.of(lines);
            }
        }
        return Optional.empty();
    }

    Map<Integer, List<PlannedCue>> cues() {
        return cues;
    }
}
