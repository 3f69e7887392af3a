package org.girandole.sheets;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowHeader;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TableLayout;
import org.girandole.plan.script.TimeExpr;
import org.girandole.plan.script.Waiver;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;

/**
 * An invented show of two igniters, put together by hand so that its numbers can be checked with a pocket calculator: a shell seen at
 * 19.565 s with 2.4 s rise and 5 ms latency on a 10 ms step fires at 17.160 s, which is 77.160 s into a line with 60 s pre-roll: at 25
 * frames a second label 10:01:17:04; and a chain of three.
 */
public final class SmallShow {
    public static final SourceRef HERE = new SourceRef("small.show", 41, 5, 12);

    private String effectLabel = "Red peony";
    private String note = "";
    private List<TableLayout> tables = List.of();
    private Optional<ReleaseSpec> release = Optional.empty();
    private List<Finding> findings = List.of();
    private String showLabel = "Small show";
    private String inputSha256 = "00".repeat(32);

    public SmallShow labelled(String label) {
        effectLabel = label;
        return this;
    }

    public SmallShow noted(String text) {
        note = text;
        return this;
    }

    public SmallShow named(String label) {
        showLabel = label;
        return this;
    }

    /** As if the script were another: with this hash. */
    public SmallShow input(String sha256) {
        inputSha256 = sha256;
        return this;
    }

    public SmallShow tables(TableLayout... layouts) {
        tables = List.of(layouts);
        return this;
    }

    public SmallShow release(ReleaseSpec spec) {
        release = Optional.of(spec);
        return this;
    }

    public SmallShow findings(Finding... all) {
        findings = List.of(all);
        return this;
    }

    /** A finding of the given weight. */
    public static Finding finding(Severity severity, String rule) {
        return new Finding(rule, severity, "Cue 'Hero' fires 3.000 s before the timecode begins.", "-63.000 s", "-60.000 s or later",
                "the pre-roll written in the script", "Lengthen the pre-roll.", HERE, Subject.of("Hero"), Map.of(), Optional.empty());
    }

    /** The same finding with somebody's agreement. */
    public static Finding waived(Finding f) {
        return new Finding(f.rule(), f.severity(), f.message(), f.found(), f.allowed(), f.basis(), f.remedy(), f.source(), f.subject(),
                f.data(), Optional.of(waiver()));
    }

    private static Waiver waiver() {
        return new Waiver("fires-before-timecode", Optional.of("Hero"), Optional.empty(), "fired by hand", "An Invented Person",
                Optional.of(LocalDate.of(2027, 6, 20)), new SourceRef("small.show", 90, 1, 5));
    }

    public static TableLayout layout(String name, String file, TableLayout.Column... columns) {
        return new TableLayout(name, file, ",", true, true, List.of(columns), HERE);
    }

    public static TableLayout.Column column(String title, String field, String format) {
        return new TableLayout.Column(title, field, format, HERE);
    }

    public CheckedPlan checked() {
        return new CheckedPlan(plan(), findings);
    }

    public Plan plan() {
        Soundtrack tides = new Soundtrack("Tides", "Tides", Optional.empty(), Optional.of(250_000_000L), Optional.of(FrameRate.FPS_25),
                Optional.of(Timecode.parse("10:00:00:00", FrameRate.FPS_25)), Optional.of(60_000_000L), List.of(), List.of(), HERE);
        Effect peony = effect("RedPeony75", effectLabel, EffectKind.SHELL);
        Chain run = new Chain("PeonyRun", "Run of three", "RedPeony75", 3, new Measured(250_000, 20_000), 100_000, HERE);
        ShowScript script = new ShowScript(new ShowHeader("SmallShow", showLabel, Optional.of(LocalDate.of(2027, 6, 19)),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(100_000L), Optional.empty(), HERE),
                List.of(tides), List.of(peony), List.of(), List.of(run), Optional.empty(), List.of(), List.of(), List.of(),
                List.of(new Module("M1", "01", "Field32", List.of("B"), HERE)), List.of(), Optional.empty(),
                List.of(new Score("Tides", 0, List.of(), List.of(), List.of(), HERE)), List.of(), List.of(waiver()), List.of(), tables, release,
                List.of(new InputFile("small.show", inputSha256)));
        PlannedSoundtrack soundtrack = new PlannedSoundtrack(tides, 0, Optional.empty(),
                Optional.of(new TimecodeLine(FrameRate.FPS_25, tides.start().orElseThrow(), 60_000_000)), tides.lengthUs(),
                Map.of("Swell", 19_565_000L), List.of(), List.of());
        ScoreItem.Cue line = new ScoreItem.Cue(Optional.of("Hero"), new TimeExpr(new TimeExpr.AtClock(19_565_000), List.of(), HERE), List.of("B"),
                ScoreItem.Distribution.TOGETHER, 1, "RedPeony75", Optional.empty(), Optional.empty(), Optional.empty(), false, List.of(),
                List.of(), note.isEmpty() ? Optional.empty() : Optional.of(note), HERE);
        PlannedCue hero = new PlannedCue("Hero/B/1", 1, "Tides", 0, "Opening", Optional.of("Hero"), 0, peony, Optional.empty(),
                Optional.of("L118"), "B", timing(19_565_000, 2_400_000, 0, 17_160_000),
                Optional.of(Timecode.parse("10:01:17:04", FrameRate.FPS_25)), new PlannedCue.Aim(-20, ScoreItem.Lean.SIDE, 270),
                Optional.of(new PlannedCue.Pin("M1", 7, false)), Optional.of(new PlannedCue.Tube("R1", 3, false)),
                Optional.of(new PlannedCue.Circuit(1, 20, 4.125, 3.9, 4.3, 4.51, 4.2)),
                Optional.of(new PlannedCue.Burst(new Point(-30, 0, 105), false)), List.of(), line, HERE);
        PlannedCue chain = new PlannedCue("Opening/PeonyRun/B/1", 2, "Tides", 0, "Opening", Optional.empty(), 0, peony,
                Optional.of(run), Optional.empty(), "B", timing(30_000_000, 2_500_000, 100_000, 27_500_000),
                Optional.of(Timecode.parse("10:01:27:12", FrameRate.FPS_25)), new PlannedCue.Aim(0, ScoreItem.Lean.SIDE, 0),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                List.of(new PlannedCue.Item(0, 27_600_000, 30_000_000, 150_000, 150_000),
                        new PlannedCue.Item(1, 27_850_000, 30_250_000, 170_000, 151_000),
                        new PlannedCue.Item(2, 28_100_000, 30_500_000, 190_000, 153_000)),
                line, HERE);
        return new Plan(script, ReleaseStamp.of(script.inputs()), List.of(soundtrack), List.of(hero, chain), List.of());
    }

    private static Timing timing(long seenUs, long riseUs, long leadUs, long fireUs) {
        long latencyUs = 5_000;
        return new Timing(Timing.SeenMode.SEEN, seenUs, riseUs, Timing.RiseSource.CATALOGUE, leadUs, latencyUs, 0, 0,
                fireUs - (seenUs - riseUs - latencyUs), fireUs, 150_000, 5_000, leadUs == 0 ? 0 : 40_000, 0);
    }

    private static Effect effect(String name, String label, EffectKind kind) {
        return new Effect(name, label, kind, Optional.of(0.075), Optional.of(new Measured(2_400_000, 150_000)), Optional.of(105.0),
                Optional.of(70.0), Optional.of(1_600_000L), Optional.of(0.062), Optional.of("1.3G"), Optional.of("UN0335"),
                Optional.of("red"), Optional.of("Standard"), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), false, Optional.empty(), HERE);
    }
}
