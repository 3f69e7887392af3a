package org.girandole.plan.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Soundtrack;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.junit.jupiter.api.Test;

class TimecodeTroubleTest {
    @Test
    void aFirstLabelOfAnotherRateGivesNoTimecode() {
        Soundtrack track = new Soundtrack("Tides", "Tides", Optional.empty(), Optional.of(60_000_000L), Optional.of(FrameRate.FPS_25),
                Optional.of(Timecode.parse("10:00:00:00", FrameRate.FPS_30)), Optional.of(60_000_000L), List.of(), List.of(),
                PlanBuilder.line(10));
        Score score = new Score("Tides", 0, List.of(), List.of(), List.of(), PlanBuilder.line(20));
        ShowScript bare = new PlanBuilder().plan().script();
        Plan plan = new Planner().plan(new ShowScript(bare.show(), List.of(track), List.of(), List.of(), List.of(), Optional.empty(),
                List.of(), List.of(), List.of(), List.of(), List.of(), Optional.empty(), List.of(score), List.of(), List.of(), List.of(), List.of(),
                Optional.empty(), List.of()));
        assertThat(plan.troubles()).extracting(Finding::rule).contains("timecode-impossible");
        assertThat(Checker.check(plan).findings()).extracting(Finding::rule).contains("timecode-missing");
    }
}
