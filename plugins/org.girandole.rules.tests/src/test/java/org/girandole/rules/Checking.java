package org.girandole.rules;

import java.nio.file.Path;
import java.util.List;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Finding;

/** From script to findings, the way every tool goes. */
final class Checking {
    private static final ShowPipeline PIPELINE = new ShowPipeline();

    private Checking() {
    }

    /** Everything that the language, the planner and the rules have to say about a script. */
    static List<Finding> findings(Path script, Path root) {
        return PIPELINE.check(script, root).findings().stream().filter(finding -> !finding.rule().equals(ShowPipeline.NO_SHOW.id()))
                .toList();
    }
}
