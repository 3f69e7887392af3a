package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.girandole.plan.rehearse.Stretch.Way;

/** A controller listening: turns runs of frames into states and ways of reckoning time. Used for one night, once. */
final class Receiver {
    private final Signal signal;
    private final ControllerModel model;
    private final List<Stretch> stretches = new ArrayList<>();
    private final List<StateChange> changes = new ArrayList<>();
    private Stretch open;
    private ControllerState state = ControllerState.NO_SIGNAL;
    /** When it will say that the code is lost unless a frame comes. */
    private OptionalLong lossUs = OptionalLong.empty();

    private Receiver(Signal signal, ControllerModel model, long beginUs) {
        this.signal = signal;
        this.model = model;
        this.open = new Stretch(beginUs, Long.MAX_VALUE, Way.NONE, beginUs, 0, 0, model);
        changes.add(new StateChange(beginUs, state));
    }

    /** The course of a controller from a moment before any code to the night's end. */
    static Course listen(Signal signal, ControllerModel model, long beginUs, long endUs) {
        Receiver receiver = new Receiver(signal, model, beginUs);
        signal.runs().stream().filter(run -> run.fromUs() < endUs).forEach(receiver::follow);
        receiver.loseBefore(endUs);
        return receiver.course(endUs);
    }

    private Course course(long endUs) {
        stretches.add(open);
        return new Course(stretches.stream().filter(s -> s.fromUs() < endUs).map(s -> s.until(Math.min(s.toUs(), endUs))).toList(),
                changes.stream().filter(c -> c.atUs() < endUs).toList());
    }

    private void follow(Signal.Run run) {
        long whole = signal.wholeFrames(run);
        if (whole < 1) {
            return;
        }
        long firstUs = signal.frameEndUs(run, 1);
        long lastUs = signal.frameEndUs(run, whole);
        loseBefore(firstUs);
        if (state == ControllerState.LOCKED && fits(run, firstUs)) {
            lock(run, firstUs, lastUs);
        } else {
            say(firstUs, ControllerState.ACQUIRING);
            if (whole >= model.lockFrames()) {
                lock(run, signal.frameEndUs(run, model.lockFrames()), lastUs);
            }
        }
        lossUs = OptionalLong.of(lastUs + signal.framesUs(model.lossFrames()));
    }

    /** Whether a frame is the one that was expected: no more than half a frame off. */
    private boolean fits(Signal.Run run, long frameEndUs) {
        return 2 * Math.abs(open.reckonedUs(frameEndUs) - frameEndUs - run.offsetUs()) <= signal.framesUs(1);
    }

    private void loseBefore(long us) {
        if (lossUs.isPresent() && lossUs.getAsLong() < us) {
            say(lossUs.getAsLong(), open.reckons() ? ControllerState.HOLDOVER : ControllerState.NO_SIGNAL);
            lossUs = OptionalLong.empty();
        }
    }

    private void lock(Signal.Run run, long atUs, long lastUs) {
        long differenceUs = open.reckons() ? open.reckonedUs(atUs) - atUs - run.offsetUs() : 0;
        boolean smooth = model.slewPpm() > 0 && Math.abs(differenceUs) <= ControllerModel.SMOOTHED_UP_TO_US;
        Stretch byCode = new Stretch(atUs, lastUs, Way.CODE, atUs, run.offsetUs(), smooth ? differenceUs : 0, model);
        close(atUs);
        if (lastUs > atUs) {
            stretches.add(byCode);
        }
        open = new Stretch(lastUs, Long.MAX_VALUE, Way.OWN_CLOCK, lastUs, run.offsetUs(), byCode.errorUs(lastUs), model);
        say(atUs, ControllerState.LOCKED);
    }

    private void close(long atUs) {
        if (atUs > open.fromUs()) {
            stretches.add(open.until(atUs));
        }
    }

    private void say(long atUs, ControllerState next) {
        if (next != state) {
            state = next;
            changes.add(new StateChange(atUs, next));
        }
    }
}
