package org.girandole.sheets.diff;

import java.io.IOException;
import java.io.Writer;
import java.util.Comparator;
import java.util.Locale;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.timecode.Timecode;

/**
 * A plan as lines that compare well line by line: cues by key, with no numbers that shift when a cue is inserted, then findings without
 * places.
 */
public final class PlanListing {
    private PlanListing() {
    }

    /** Writes the lines; the writer stays open. */
    public static void write(CheckedPlan checked, Writer out) throws IOException {
        out.write("show " + checked.plan().script().show().name() + "\n");
        for (PlannedCue cue : checked.plan().cues().stream().sorted(Comparator.comparing(PlannedCue::key)).toList()) {
            out.write(line(cue) + "\n");
        }
        for (String finding : checked.findings().stream().map(PlanListing::line).sorted().toList()) {
            out.write(finding + "\n");
        }
    }

    private static String line(PlannedCue cue) {
        return "cue " + cue.key() + ": " + cue.what() + " at " + cue.position() + ", seen " + Times.clock(cue.timing().seenUs()) + ", fired "
                + cue.timecode().map(Timecode::toString).orElse("before the timecode")
                + String.format(Locale.ROOT, ", tilt %.1f deg", cue.aim().tiltDeg())
                + cue.lot().map(lot -> ", lot " + lot).orElse("")
                + cue.tube().map(tube -> ", tube " + tube.rack() + ":" + tube.tube()).orElse("")
                + cue.pin().map(pin -> ", pin " + pin.module() + ":" + pin.pin()).orElse("");
    }

    private static String line(Finding finding) {
        return (finding.waived() ? "waived " : "") + finding.severity().word() + " " + finding.rule() + ": " + finding.message();
    }
}
