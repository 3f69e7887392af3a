package org.girandole.plan.rehearse;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.FiringSystem;
import org.girandole.timecode.TimecodeLine;

/**
 * What all scenarios of a sweep share.
 *
 * @param deviations clocks that are tried, parts per million
 */
record SweepStage(TimecodeLine line, long lengthUs, List<Night.Due> dues, FiringSystem system, List<Double> deviations, Optional<Long> syncUs) {
    private static final long AFTER_US = 60_000_000;

    static SweepStage of(Plan plan, PlannedSoundtrack track) throws ImpossibleNight {
        Rehearsals.Needs needs = Rehearsals.needs(plan, track);
        double most = needs.deviations().stream().mapToDouble(Math::abs).max().orElse(0);
        // A clock may be anywhere within its limit: at the limit, half way there, and exact.
        TreeSet<Double> deviations = new TreeSet<>(List.of(-most, -most / 2, most / 2, most));
        deviations.removeIf(ppm -> ppm == 0);
        deviations.add(0.0);
        List<Night.Due> dues = plan.cues().stream().filter(cue -> cue.slot() == track.slot())
                .map(cue -> new Night.Due(cue.key(), cue.timing().fireUs())).toList();
        return new SweepStage(needs.line(), needs.lengthUs(), dues, needs.system(), List.copyOf(deviations), plan.script().show().syncWithinUs());
    }

    ControllerModel model(double ppm) {
        return Controllers.of(system, ppm);
    }

    /** The night with the code lost so. */
    Night night(List<Window> lost) {
        Signal signal = new Signal(line.rate(), -line.prerollUs(), CodeOnTheLine.runs(-line.prerollUs(), lengthUs, List.of(), lost));
        long endUs = Math.max(lengthUs, dues.stream().mapToLong(Night.Due::dueUs).max().orElse(0)) + AFTER_US;
        return new Night(dues, signal, HoldToFire.ALWAYS_PRESSED, OptionalLong.empty(), 0, endUs);
    }
}
