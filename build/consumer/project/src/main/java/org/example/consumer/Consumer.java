package org.example.consumer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;

/** Uses the language and the plan as libraries, as any program could. */
public final class Consumer {
    private Consumer() {
    }

    /** Reads the show, and writes down when its first cue fires. */
    public static void main(String[] args) throws IOException {
        Path root = Path.of(args[0]);
        CheckedShow show = new ShowPipeline().check(root.resolve("show/tiny.show"), root);
        Plan plan = show.plan().orElseThrow(() -> new IllegalStateException("no plan: " + show.findings())).plan();
        PlannedCue first = plan.cues().get(0);
        Files.writeString(root.resolve("target/consumer-ran.txt"), "cue 1 of " + plan.cues().size() + " fires at "
                + first.timing().fireUs() + " us, " + first.timecode().orElseThrow());
    }
}
