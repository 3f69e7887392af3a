package org.girandole.sheets.release;

import java.util.ArrayList;
import java.util.List;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.script.ReleaseSpec;

/** What a script may ask for and this version does not write: it is said, so that nobody looks for the file on the night. */
final class LaterPart implements ReleasePart {
    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) {
        List<String> leftOut = new ArrayList<>();
        checked.plan().script().release().ifPresent(spec -> name(spec, leftOut));
        return leftOut;
    }

    private static void name(ReleaseSpec spec, List<String> leftOut) {
        spec.timecodeWavHz().forEach(hz -> leftOut.add("timecode recording at " + hz + " Hz"));
        spec.marks().forEach(form -> leftOut.add("marks as " + form));
    }
}
