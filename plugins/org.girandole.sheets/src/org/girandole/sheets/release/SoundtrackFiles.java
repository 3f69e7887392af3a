package org.girandole.sheets.release;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;

/** How files that belong to a soundtrack are named. */
final class SoundtrackFiles {
    private SoundtrackFiles() {
    }

    /** The soundtrack's name; with its slot when the soundtrack is played in several. */
    static String name(Plan plan, PlannedSoundtrack soundtrack) {
        long slots = plan.soundtracks().stream().filter(each -> each.name().equals(soundtrack.name())).count();
        return slots == 1 ? soundtrack.name() : soundtrack.name() + "-slot" + soundtrack.slot();
    }
}
