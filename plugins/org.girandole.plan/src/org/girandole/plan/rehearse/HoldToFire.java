package org.girandole.plan.rehearse;

import java.util.List;

/** The hold-to-fire control through the night: pressed, but for these stretches. They are in order and do not overlap. */
public record HoldToFire(List<Window> released) {
    public static final HoldToFire ALWAYS_PRESSED = new HoldToFire(List.of());

    public HoldToFire {
        released = List.copyOf(released);
        for (int i = 1; i < released.size(); i++) {
            if (released.get(i).fromUs() < released.get(i - 1).toUs()) {
                throw new RehearsalException("The hold-to-fire control is released again at " + released.get(i).fromUs()
                        + " us while it is released; expected the stretches in order");
            }
        }
    }

    public boolean pressed(long us) {
        return released.stream().noneMatch(window -> window.holds(us));
    }
}
