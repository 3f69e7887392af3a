package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Subject;
import org.girandole.plan.allocate.LockFile;
import org.girandole.plan.allocate.LockFile.Change;

/** Says where a plan and the lock file differ. */
final class LockTroubles {
    /** More keys than these are counted, not listed. */
    private static final int MOST_LISTED = 5;

    private LockTroubles() {
    }

    /** The plan with what differs from the lock file among its troubles. */
    static Plan added(Plan plan, LockFile lock) {
        TroubleLog log = new TroubleLog();
        Map<String, PlannedCue> cues = new HashMap<>();
        plan.cues().forEach(cue -> cues.put(cue.key(), cue));
        List<String> unknown = new ArrayList<>();
        List<String> gone = new ArrayList<>();
        List<String> rewritten = new ArrayList<>();
        for (Change change : lock.changesTo(LockFile.of(plan))) {
            if (change.before().isEmpty()) {
                unknown.add(change.key());
            } else if (change.after().isEmpty()) {
                gone.add(change.key());
            } else if (byHand(cues.get(change.key()))) {
                rewritten.add(change.key());
            } else {
                reportBroken(log, change, cues.get(change.key()));
            }
        }
        reportStale(log, plan, lock, unknown, "have no line", "without a line");
        reportStale(log, plan, lock, gone, "are no longer in the script", "gone");
        reportStale(log, plan, lock, rewritten, "have another tube or pin in the script", "written by hand");
        List<Finding> troubles = new ArrayList<>(plan.troubles());
        troubles.addAll(log.all());
        return new Plan(plan.script(), plan.stamp(), plan.soundtracks(), plan.cues(), troubles);
    }

    private static boolean byHand(PlannedCue cue) {
        return cue.pin().filter(PlannedCue.Pin::byHand).isPresent() || cue.tube().filter(PlannedCue.Tube::byHand).isPresent();
    }

    private static void reportBroken(TroubleLog log, Change change, PlannedCue cue) {
        String before = change.before().map(LockFile.Line::text).orElse("");
        String after = change.after().map(LockFile.Line::text).orElse("");
        log.report(Troubles.LOCK_BROKEN, change.key() + " cannot stay where the lock file has it: tube and pin " + before + " become " + after)
                .found(after, before)
                .remedy("see that its tube still fits, its pin is still free, and its module still serves the position; "
                        + "or run 'girandole allocate' and rewire")
                .about(new Subject(List.of(cue.what()), List.of(cue.position())))
                .at(cue.source());
    }

    private static void reportStale(TroubleLog log, Plan plan, LockFile lock, List<String> keys, String what, String found) {
        if (keys.isEmpty()) {
            return;
        }
        String listed = String.join(", ", keys.subList(0, Math.min(MOST_LISTED, keys.size())))
                + (keys.size() > MOST_LISTED ? " and " + (keys.size() - MOST_LISTED) + " more" : "");
        String cues = keys.size() + (keys.size() == 1 ? " cue " : " cues ");
        log.report(Troubles.LOCK_STALE, "In the lock file of " + lock.show() + ", " + cues
                + (keys.size() == 1 ? singular(what) : what) + ": " + listed)
                .found(cues + found, "none")
                .remedy("run 'girandole allocate' and commit the lock file")
                .at(plan.script().show().source());
    }

    private static String singular(String what) {
        return what.replaceFirst("^have ", "has ").replaceFirst("^are ", "is ");
    }
}
