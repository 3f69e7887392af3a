package org.girandole.plan.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.Timing;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.Timing.SeenMode;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.RuleSetting;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowHeader;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;
import org.girandole.plan.script.Waiver;

/** Plans small enough to read, without a language or a planner. All of it is invented. */
final class PlanBuilder {
    private static final String TRACK = "Tides";
    private final List<PlannedCue> cues = new ArrayList<>();
    private final List<Waiver> waivers = new ArrayList<>();
    private final List<RuleSetting> settings = new ArrayList<>();
    private final List<Finding> troubles = new ArrayList<>();
    private Optional<LocalDate> date = Optional.of(LocalDate.of(2027, 6, 19));

    static SourceRef line(int line) {
        return new SourceRef("harbour.show", line, 1, 1);
    }

    PlanBuilder undated() {
        date = Optional.empty();
        return this;
    }

    /** A shell without scatter, seen at this time, in a line of its own. */
    PlanBuilder shell(String effect, String position, long seenUs) {
        SourceRef source = line(100 + cues.size());
        ScoreItem.Cue script = new ScoreItem.Cue(Optional.empty(),
                new TimeExpr(new TimeExpr.AtClock(seenUs), List.of(), source), List.of(position),
                ScoreItem.Distribution.TOGETHER, 1, effect, Optional.empty(), Optional.empty(), Optional.empty(), false, List.of(),
                List.of(), Optional.empty(), source);
        Timing timing = new Timing(SeenMode.SEEN, seenUs, 2_400_000, RiseSource.CATALOGUE, 0, 0, 0, 0, 0, seenUs - 2_400_000, 150_000,
                0, 0, 0);
        cues.add(new PlannedCue("k" + cues.size(), cues.size() + 1, TRACK, 0, "", Optional.empty(), 0, effect(effect), Optional.empty(),
                Optional.empty(), position, timing, Optional.empty(), new PlannedCue.Aim(0, ScoreItem.Lean.SIDE, 0), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), List.of(), script, source));
        return this;
    }

    PlanBuilder waive(String rule, String subject, String position, String until) {
        waivers.add(new Waiver(rule, Optional.ofNullable(subject), Optional.ofNullable(position), "agreed on site", "A. Inspector",
                Optional.ofNullable(until).map(LocalDate::parse), line(200 + waivers.size())));
        return this;
    }

    PlanBuilder set(String rule, String severity) {
        settings.add(new RuleSetting(rule, severity, line(300 + settings.size())));
        return this;
    }

    PlanBuilder trouble(Finding trouble) {
        troubles.add(trouble);
        return this;
    }

    Plan plan() {
        ShowHeader show = new ShowHeader("HarbourNight", "Harbour Night", date, Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.of(100_000L), Optional.empty(), line(1));
        Soundtrack track = new Soundtrack(TRACK, TRACK, Optional.empty(), Optional.of(250_000_000L), Optional.empty(),
                Optional.empty(), Optional.of(60_000_000L), List.of(), List.of(), line(10));
        ShowScript script = new ShowScript(show, List.of(track), List.of(), List.of(), List.of(), Optional.empty(), List.of(), List.of(),
                List.of(), List.of(), List.of(), Optional.empty(), List.of(), List.of(), waivers, settings, List.of(), Optional.empty(), List.of());
        PlannedSoundtrack planned = new PlannedSoundtrack(track, 0, Optional.empty(), Optional.empty(), track.lengthUs(), Map.of(),
                List.of(), List.of());
        return new Plan(script, ReleaseStamp.of(List.of()), List.of(planned), cues, troubles);
    }

    private static Effect effect(String name) {
        return new Effect(name, name, EffectKind.SHELL, Optional.of(0.075), Optional.empty(), Optional.of(105.0), Optional.of(70.0),
                Optional.of(1_600_000L), Optional.of(0.062), Optional.of("1.3G"), Optional.of("UN0335"), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false,
                Optional.empty(), line(50));
    }
}
