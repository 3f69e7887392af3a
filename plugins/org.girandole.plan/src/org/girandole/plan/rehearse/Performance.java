package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.RehearsalLog.ErrorPoint;

/** What becomes of each cue along a course. Used once. Its decisions can be overridden, so that a test can make them wrong. */
class Performance {
    private final Night night;
    private final List<Night.Due> dues;
    private final CueOutcome[] outcomes;

    Performance(Night night) {
        this.night = night;
        this.dues = new ArrayList<>(night.cues());
        dues.sort(Comparator.comparingLong(Night.Due::dueUs).thenComparing(Night.Due::key));
        this.outcomes = new CueOutcome[dues.size()];
    }

    RehearsalLog log(Course course) {
        course.stretches().stream().filter(Stretch::reckons).forEach(stretch -> pass(stretch, course));
        return new RehearsalLog(ended(), course.changes(), errors(course));
    }

    private List<CueOutcome> ended() {
        List<CueOutcome> ended = new ArrayList<>(outcomes.length);
        for (int i = 0; i < outcomes.length; i++) {
            Night.Due due = dues.get(i);
            ended.add(outcomes[i] != null ? outcomes[i] : new CueOutcome(due.key(), due.dueUs(), End.SKIPPED, OptionalLong.empty(),
                    OptionalLong.empty(), OptionalLong.empty(), 0, 0, ControllerState.NO_SIGNAL));
        }
        return ended;
    }

    private static List<ErrorPoint> errors(Course course) {
        List<ErrorPoint> errors = new ArrayList<>();
        for (Stretch stretch : course.stretches()) {
            if (stretch.reckons()) {
                errors.add(new ErrorPoint(stretch.fromUs(), stretch.errorUs(stretch.fromUs())));
                stretch.bendsUs().forEach(us -> errors.add(new ErrorPoint(us, stretch.errorUs(us))));
                errors.add(new ErrorPoint(stretch.toUs(), stretch.errorUs(stretch.toUs())));
            }
        }
        return errors;
    }

    private void pass(Stretch stretch, Course course) {
        ControllerModel by = stretch.by();
        long beginUs = stretch.reckonedUs(stretch.fromUs());
        long endUs = stretch.reckonedUs(stretch.toUs());
        for (int i = firstFrom(beginUs - by.lateToleranceUs() - by.stepUs()); i < dues.size(); i++) {
            long momentUs = momentUs(dues.get(i).dueUs(), by);
            if (momentUs >= endUs) {
                return;
            }
            if (momentUs >= beginUs - by.lateToleranceUs() && !over(outcomes[i])) {
                long commandUs = momentUs <= beginUs ? stretch.fromUs() : reached(momentUs, stretch);
                command(i, Math.max(stretch.fromUs(), commandUs + jitterUs(dues.get(i), by)), stretch, course);
            }
        }
    }

    private void command(int i, long commandUs, Stretch stretch, Course course) {
        Night.Due due = dues.get(i);
        OptionalLong firedUs = pressed(night.hold(), commandUs) ? OptionalLong.of(commandUs + stretch.by().linkUs()) : OptionalLong.empty();
        OptionalLong lateUs = firedUs.isPresent() ? OptionalLong.of(firedUs.getAsLong() - due.dueUs() - night.musicLateUs())
                : OptionalLong.empty();
        outcomes[i] = new CueOutcome(due.key(), due.dueUs(), firedUs.isPresent() ? End.FIRED : End.SUPPRESSED, OptionalLong.of(commandUs),
                firedUs, lateUs, stretch.errorUs(commandUs), stretch.boundUs(commandUs) + stretch.by().jitterUs(),
                course.stateAt(commandUs));
        commanded(outcomes[i]);
    }

    /** Told of every command and of every one held back. */
    void commanded(CueOutcome outcome) {
    }

    /** Whether nothing more may become of a cue. */
    boolean over(CueOutcome outcome) {
        return outcome != null;
    }

    /** Whether the control lets a command through. */
    boolean pressed(HoldToFire hold, long us) {
        return hold.pressed(us);
    }

    /** The multiple of the step at which a cue is commanded: the first that is not before it. */
    long momentUs(long dueUs, ControllerModel by) {
        return -Math.floorDiv(-dueUs, by.stepUs()) * by.stepUs();
    }

    /** The same for the same seed and cue, and spread evenly from one end to the other. */
    long jitterUs(Night.Due due, ControllerModel by) {
        if (by.jitterUs() == 0) {
            return 0;
        }
        long mixed = by.seed() ^ due.key().hashCode() * 0x9E3779B97F4A7C15L ^ due.dueUs();
        mixed = (mixed ^ mixed >>> 30) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
        return Math.floorMod(mixed ^ mixed >>> 31, 2 * by.jitterUs() + 1) - by.jitterUs();
    }

    private static long reached(long momentUs, Stretch stretch) {
        long low = stretch.fromUs();
        long high = stretch.toUs();
        while (low < high) {
            long middle = low + (high - low) / 2;
            if (stretch.reckonedUs(middle) >= momentUs) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private int firstFrom(long us) {
        int low = 0;
        int high = dues.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (dues.get(middle).dueUs() < us) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
