package org.girandole.plan.rehearse;

/**
 * Lets a controller go through a night. Nothing in it depends on anything but night, model and seed.
 *
 * <p>A cue is commanded when the reckoning reaches its moment. Where the reckoning jumps forward, cues it jumped over by no more than the
 * late tolerance are commanded at once; the others wait, should the code come back, and are skipped at the night's end. A cue that was
 * fired, or that came due while the control was released, is over: no jump back brings it again. A cue commanded just before the control
 * is released still goes off when its command arrives, a link delay later.
 */
public final class Rehearsing {
    private static final long BEFORE_US = 1_000_000;

    private Rehearsing() {
    }

    /** The night with one controller; the backup, if it takes over, is of the same make. */
    public static RehearsalLog of(Night night, ControllerModel model) {
        return of(night, model, model);
    }

    /** The night with a controller and a backup that listens all the time and fires from when it takes over. */
    public static RehearsalLog of(Night night, ControllerModel model, ControllerModel backup) {
        return new Performance(night).log(course(night, model, backup));
    }

    static Course course(Night night, ControllerModel model, ControllerModel backup) {
        Course first = course(night, model);
        return night.takeoverUs().isEmpty() ? first : first.then(course(night, backup), night.takeoverUs().getAsLong());
    }

    private static Course course(Night night, ControllerModel model) {
        long firstUs = night.signal().runs().stream().mapToLong(Signal.Run::fromUs).findFirst().orElse(0);
        return Receiver.listen(night.signal(), model, Math.min(firstUs, 0) - BEFORE_US, night.endUs());
    }
}
