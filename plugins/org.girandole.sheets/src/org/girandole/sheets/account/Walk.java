package org.girandole.sheets.account;

import java.util.Comparator;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.account.Account;

/** How a searcher walks: position by position, along the racks. */
final class Walk {
    static final Comparator<Account.Line> ORDER = Comparator.comparing((Account.Line line) -> line.cue().position())
            .thenComparing(line -> line.cue().tube().map(PlannedCue.Tube::rack).orElse("\uFFFF"))
            .thenComparing(line -> line.cue().tube().map(PlannedCue.Tube::tube).orElse(0)).thenComparing(line -> line.cue().number());

    private Walk() {
    }

    /** Rack and tubes, or what to look for instead. */
    static String tube(PlannedCue cue) {
        if (!cue.effect().kind().needsTube()) {
            return "on the ground";
        }
        return cue.tube().map(tube -> "rack " + tube.rack() + (cue.pieces() > 1 ? " tubes " + tube.tube() + " to " + (tube.tube()
                + cue.pieces() - 1) : " tube " + tube.tube())).orElse("NO TUBE in the plan");
    }

    static String pin(PlannedCue cue) {
        return cue.pin().map(pin -> "module " + pin.module() + " pin " + pin.pin()).orElse("NO PIN in the plan");
    }
}
