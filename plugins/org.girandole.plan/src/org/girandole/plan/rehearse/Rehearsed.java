package org.girandole.plan.rehearse;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rehearse.CueOutcome.End;

/**
 * A night gone through.
 *
 * @param name of the rehearsal
 * @param soundtrack what is played
 * @param slot the slot that the controller is in
 * @param cues the cues of that slot by their keys
 * @param notLoaded cues of the soundtrack that are not in the slot: none of them can be fired
 * @param passes the night with each clock that must be reckoned with, at least one
 * @param lost when no timecode arrived
 * @param released when the hold-to-fire control was let go
 * @param night what happened to signal, music and control
 */
public record Rehearsed(String name, PlannedSoundtrack soundtrack, int slot, Map<String, PlannedCue> cues, List<PlannedCue> notLoaded,
        List<Pass> passes, List<Window> lost, List<Window> released, Night night) {
    public Rehearsed {
        cues = Map.copyOf(cues);
        notLoaded = List.copyOf(notLoaded);
        passes = List.copyOf(passes);
        lost = List.copyOf(lost);
        released = List.copyOf(released);
    }

    /**
     * The night with one clock.
     *
     * @param clock in words: {@code slow by 30 ppm}
     */
    public record Pass(String clock, ControllerModel model, RehearsalLog log) {
    }

    /** Whether the controller is in another slot than the soundtrack's. */
    public boolean wrongSlot() {
        return slot != soundtrack.slot();
    }

    /** The pass in which a cue is fired farthest from its moment; the first of equals. */
    public Pass worst() {
        return passes.stream().reduce((a, b) -> worstUs(b) > worstUs(a) ? b : a).orElseThrow();
    }

    private static long worstUs(Pass pass) {
        return pass.log().worst().map(cue -> Math.abs(cue.lateUs().getAsLong())).orElse(-1L);
    }

    /** Until when it is worth looking: the end of the music, or the last cue of the slot if that is later; night time, microseconds. */
    public long untilUs() {
        return Math.max(soundtrack.lengthUs().orElse(0L), night.cues().stream().mapToLong(Night.Due::dueUs).filter(us -> us < night.endUs()).max().orElse(0));
    }

    /** What the controller said and how far off it was. */
    public RehearsalTrace trace(Pass pass) {
        return RehearsalTrace.of(pass.log(), untilUs());
    }

    /** The planned cue of an outcome. */
    public PlannedCue cue(CueOutcome outcome) {
        return cues.get(outcome.key());
    }

    /** What is left in the tubes or on the pins in the worst pass, in the order of the show. */
    public List<PlannedCue> left() {
        return Stream.concat(worst().log().cues().stream().filter(outcome -> outcome.end() != End.FIRED).map(this::cue),
                notLoaded.stream()).sorted(Comparator.comparingInt(PlannedCue::number)).toList();
    }

    /** How many cues are fired farther from their moment than the show's sync limit, in the worst pass; none without a limit. */
    public long beyond(Optional<Long> syncUs) {
        return syncUs.map(limit -> worst().log().ended(End.FIRED).filter(cue -> Math.abs(cue.lateUs().getAsLong()) > limit).count()).orElse(0L);
    }
}
