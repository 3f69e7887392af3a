package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.rehearse.CueOutcome.End;

/** What must hold of every night, said without a look at how the model works. */
final class Promises {
    private Promises() {
    }

    /**
     * What a log breaks.
     *
     * @param commands every command and every one held back, as they came
     */
    static List<String> broken(Nights.Case each, List<CueOutcome> commands, RehearsalLog log) {
        List<String> broken = new ArrayList<>();
        Map<String, End> ends = new HashMap<>();
        for (CueOutcome command : commands) {
            End before = ends.put(command.key(), command.end());
            if (before == End.FIRED) {
                broken.add(command.key() + " is commanded after it was fired");
            } else if (before == End.SUPPRESSED) {
                broken.add(command.key() + " comes back after it was held back");
            }
        }
        Set<String> keys = new HashSet<>();
        for (CueOutcome cue : log.cues()) {
            if (!keys.add(cue.key())) {
                broken.add(cue.key() + " ends twice");
            }
            if (cue.end() != End.SKIPPED && cue.end() != ends.get(cue.key())) {
                broken.add(cue.key() + " ended otherwise than logged");
            }
            if (cue.end() == End.SKIPPED && ends.containsKey(cue.key())) {
                broken.add(cue.key() + " was commanded and logged as skipped");
            }
            if (cue.end() == End.FIRED) {
                fired(each, cue, broken);
            }
        }
        each.night().cues().stream().filter(due -> !keys.contains(due.key())).forEach(due -> broken.add(due.key() + " has no end"));
        if (log.cues().size() != each.night().cues().size()) {
            broken.add("not as many ends as cues");
        }
        return broken;
    }

    private static void fired(Nights.Case each, CueOutcome cue, List<String> broken) {
        long commandUs = cue.commandUs().getAsLong();
        for (Window released : each.night().hold().released()) {
            if (commandUs >= released.fromUs() && commandUs < released.toUs()) {
                broken.add(cue.key() + " is fired while released");
            }
        }
        long linkUs = Math.max(each.model().linkUs(), each.backup().linkUs());
        if (cue.firedUs().getAsLong() < commandUs || cue.firedUs().getAsLong() > commandUs + linkUs) {
            broken.add(cue.key() + " is not fired a link delay after its command");
        }
        // Not before its moment by the code last heard, whatever that was, but for the stated bound.
        long dueUs = each.night().cues().stream().filter(due -> due.key().equals(cue.key())).findFirst().orElseThrow().dueUs();
        boolean reached = each.night().signal().runs().stream().filter(run -> run.fromUs() < commandUs)
                .anyMatch(run -> commandUs + run.offsetUs() >= dueUs - cue.boundUs());
        if (!reached) {
            broken.add(cue.key() + " is fired before it was due");
        }
        // The bound itself is no more than what the clock can lose in the whole night, and what a smoothed difference can be.
        if (cue.boundUs() > mostUs(each, each.model()) && cue.boundUs() > mostUs(each, each.backup())) {
            broken.add(cue.key() + " states a bound of " + cue.boundUs() + " us");
        }
    }

    private static double mostUs(Nights.Case each, ControllerModel model) {
        double nightUs = each.night().endUs() + 6e6;
        double driftUs = nightUs * (Math.abs(model.clock().ppm()) + Math.abs(model.clock().ageingPpmPerDay()) * nightUs / 86_400e6) / 1e6;
        return driftUs + model.jitterUs() + (model.slewPpm() > 0 ? ControllerModel.SMOOTHED_UP_TO_US : 0);
    }
}
