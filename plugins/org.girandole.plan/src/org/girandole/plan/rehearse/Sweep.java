package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.timecode.FrameRate;

/**
 * One loss of timecode at every second of a soundtrack, of several lengths, with several clocks: where it hurts most, and whether formula
 * and simulation say the same.
 *
 * @param scenarios in order of length, clock and beginning
 * @param disagreements scenarios in which a cue fares otherwise by formula than by simulation
 * @param holdover how long each clock may go on alone, in the order of the clocks; empty when the show states no {@code sync within}
 * @param jitterUs by so much formula and simulation may differ, beside a microsecond of rounding
 */
public record Sweep(List<Scenario> scenarios, List<Scenario> disagreements, List<Holdover> holdover, long jitterUs) {
    /** Lengths that are tried: a blink, a plug pulled and put back, a cable looked for. Common practice, no source. */
    public static final List<Long> LENGTHS_US = List.of(5_000_000L, 25_000_000L, 60_000_000L);
    private static final long STEP_US = 1_000_000;
    private static final long ROUNDING_US = 1;

    public Sweep {
        scenarios = List.copyOf(scenarios);
        disagreements = List.copyOf(disagreements);
        holdover = List.copyOf(holdover);
    }

    /**
     * One loss.
     *
     * @param fromUs when the code goes, show time in microseconds
     * @param clock in words
     * @param notFired cues that are never fired
     * @param worstUs how far the worst of the others is from its moment, microseconds, later above nought
     * @param worstKey that cue; empty when none is fired
     */
    public record Scenario(long fromUs, long lengthUs, double ppm, String clock, int notFired, long worstUs, Optional<String> worstKey) {
    }

    /**
     * How long a clock may go on without code before a cue is farther from its moment than the show allows.
     *
     * @param formulaUs by the formula of the clock, microseconds; {@link Long#MAX_VALUE} for ever
     * @param simulatedUs the same, found by rehearsing
     * @param agree the errors at both differ by no more than rounding
     */
    public record Holdover(String clock, long limitUs, long formulaUs, long simulatedUs, boolean agree) {
    }

    /**
     * Sweeps a soundtrack.
     *
     * @throws ImpossibleNight if the show lacks something that every rehearsal needs
     */
    public static Sweep of(Plan plan, PlannedSoundtrack track) throws ImpossibleNight {
        SweepStage stage = SweepStage.of(plan, track);
        List<Scenario> tasks = new ArrayList<>();
        for (long lengthUs : LENGTHS_US) {
            for (double ppm : stage.deviations()) {
                for (long fromUs = -stage.line().prerollUs(); fromUs + lengthUs <= stage.lengthUs(); fromUs += STEP_US) {
                    tasks.add(new Scenario(fromUs, lengthUs, ppm, Controllers.words(ppm), 0, 0, Optional.empty()));
                }
            }
        }
        // Each scenario is its own affair, so all processors share them; the order stays.
        List<Tried> tried = tasks.parallelStream().map(task -> tried(stage, task)).toList();
        List<Holdover> holdover = stage.syncUs().map(limit -> stage.deviations().stream().map(ppm -> holdover(stage.model(ppm), ppm, limit))
                .toList()).orElse(List.of());
        return new Sweep(tried.stream().map(Tried::scenario).toList(), tried.stream().filter(each -> !each.agrees()).map(Tried::scenario).toList(),
                holdover, stage.model(0).jitterUs());
    }

    private record Tried(Scenario scenario, boolean agrees) {
    }

    private static Tried tried(SweepStage stage, Scenario task) {
        ControllerModel model = stage.model(task.ppm());
        Night night = stage.night(List.of(new Window(task.fromUs(), task.fromUs() + task.lengthUs())));
        RehearsalLog log = Rehearsing.of(night, model);
        LossOnPaper paper = new LossOnPaper(night.signal(), model);
        int notFired = 0;
        boolean agrees = true;
        for (CueOutcome cue : log.cues()) {
            OptionalLong command = paper.commandUs(cue.dueUs());
            agrees &= command.isPresent() == cue.commandUs().isPresent()
                    && (command.isEmpty() || Math.abs(command.getAsLong() - cue.commandUs().getAsLong()) <= model.jitterUs() + ROUNDING_US);
            notFired += cue.end() == End.FIRED ? 0 : 1;
        }
        Optional<CueOutcome> worst = log.worst();
        return new Tried(new Scenario(task.fromUs(), task.lengthUs(), task.ppm(), task.clock(), notFired,
                worst.map(cue -> cue.lateUs().getAsLong()).orElse(0L), worst.map(CueOutcome::key)), agrees);
    }

    private static Holdover holdover(ControllerModel model, double ppm, long syncUs) {
        // What a link and jitter take of the limit is not the clock's to lose.
        long limitUs = Math.max(0, syncUs - model.linkUs() - model.jitterUs());
        long formulaUs = model.clock().withinUs(limitUs);
        if (formulaUs == Long.MAX_VALUE) {
            return new Holdover(Controllers.words(ppm), limitUs, formulaUs, formulaUs, true);
        }
        ControllerModel plain = new ControllerModel(1, 1, model.lossFrames(), model.clock(), 0, 0, 0, 0, model.seed());
        long low = 0;
        long high = 2 * formulaUs + STEP_US;
        while (low < high) {
            long middle = low + (high - low + 1) / 2;
            if (Math.abs(probe(plain, middle).lateUs().getAsLong()) <= limitUs) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        long simulatedUs = probe(plain, low).firedUs().getAsLong() - STEP_US;
        boolean agree = Math.abs(Math.abs(model.clock().errorUs(simulatedUs)) - Math.abs(model.clock().errorUs(formulaUs))) <= ROUNDING_US;
        return new Holdover(Controllers.words(ppm), limitUs, formulaUs, simulatedUs, agree);
    }

    /** A cue that is due so long after the code went, rehearsed. */
    private static CueOutcome probe(ControllerModel model, long elapsedUs) {
        long codeUs = STEP_US;
        long dueUs = codeUs + elapsedUs;
        Signal signal = new Signal(FrameRate.FPS_25, 0, List.of(new Signal.Run(0, codeUs, 0)));
        Night night = new Night(List.of(new Night.Due("probe", dueUs)), signal, HoldToFire.ALWAYS_PRESSED, OptionalLong.empty(), 0,
                2 * dueUs + STEP_US);
        return Rehearsing.of(night, model).cues().get(0);
    }

    /** The worst: most cues not fired, then farthest from its moment, then earliest in the show; empty without scenarios. */
    public Optional<Scenario> worst() {
        return worst(scenarios);
    }

    /** The worst of one length. */
    public Optional<Scenario> worst(long lengthUs) {
        return worst(scenarios.stream().filter(each -> each.lengthUs() == lengthUs).toList());
    }

    private static Optional<Scenario> worst(List<Scenario> scenarios) {
        return scenarios.stream().min(Comparator.comparingInt(Scenario::notFired).reversed()
                .thenComparing(Comparator.comparingLong((Scenario each) -> Math.abs(each.worstUs())).reversed())
                .thenComparingLong(Scenario::fromUs));
    }
}
