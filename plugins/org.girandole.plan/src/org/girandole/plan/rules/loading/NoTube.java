package org.girandole.plan.rules.loading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.SourceRef;

/**
 * Shots that need a tube and got none. Said once for each line and position, but not of an effect whose calibre is written and cannot be read:
 * that is an error of its own that no waiver reaches, and which tube would do is not known before it is mended.
 */
public final class NoTube implements Rule {
    private static final RuleInfo INFO = new RuleInfo("no-tube", RuleInfo.Family.LOADING, Severity.ERROR,
            "A cue that needs a tube has none.",
            "The crew has nowhere to load it.",
            "shells, mines and comets are fired out of a tube");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<Line, List<PlannedCue>> lines = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            if (cue.effect().kind().needsTube() && cue.tube().isEmpty() && !cue.effect().refused().contains("calibre")) {
                lines.computeIfAbsent(new Line(cue.source(), cue.position()), k -> new ArrayList<>()).add(cue);
            }
        }
        Map<Want, String> causes = new HashMap<>();
        lines.forEach((line, cues) -> {
            PlannedCue cue = cues.get(0);
            int tubes = cues.stream().mapToInt(PlannedCue::pieces).sum();
            String size = cue.effect().calibreM().map(m -> " of " + Quantity.millimetres(m)).orElse("");
            out.report(Cues.name(cue) + (cues.size() > 1 ? " and " + (cues.size() - 1) + " more of its line" : "")
                    + " got no tube at " + line.position())
                    .found(causes.computeIfAbsent(new Want(line.position(), cue.effect().calibreM(), cue.aim()), want -> cause(plan, want)),
                            Quantity.count(tubes, "tube", "tubes") + size)
                    .remedy("add a rack at " + line.position() + " with at least " + Quantity.count(tubes, "free tube", "free tubes") + size
                            + (cue.chain().isPresent() ? " in a row" : ""))
                    .about(Cues.subject(cue))
                    .data(Map.of("position", line.position(), "tubes", Integer.toString(tubes)))
                    .at(cue.source());
        });
    }

    /** Why: no rack, no tube of the calibre, none that can point there, or none left. */
    private static String cause(Plan plan, Want want) {
        List<Rack> racks = plan.script().racks().stream().filter(rack -> rack.position().equals(want.position())).toList();
        Optional<Double> calibreM = want.calibreM();
        if (racks.isEmpty()) {
            return "no rack";
        }
        if (calibreM.isEmpty()) {
            return "no calibre to choose a tube by";
        }
        List<Place> ofCalibre = racks.stream().flatMap(rack -> IntStream.rangeClosed(1, rack.tubes()).mapToObj(tube -> new Place(rack, tube)))
                .filter(place -> place.rack().runOf(place.tube()).filter(run -> Fit.calibre(calibreM.get(), run.calibreM())).isPresent())
                .toList();
        if (ofCalibre.isEmpty()) {
            return "only tubes of other calibres";
        }
        long ofTilt = ofCalibre.stream().filter(place -> Fit.tilt(place.rack(), place.tube(), want.aim())).count();
        if (ofTilt == 0) {
            return Quantity.count(ofCalibre.size(), "tube", "tubes") + " of this calibre, none that can be set to "
                    + Quantity.degrees(want.aim().tiltDeg());
        }
        return Quantity.count(ofTilt, "tube that fits, in use", "tubes that fit, not enough of them free");
    }

    private record Place(Rack rack, int tube) {
    }

    /** What a tube must be like. */
    private record Want(String position, Optional<Double> calibreM, PlannedCue.Aim aim) {
    }

    private record Line(SourceRef source, String position) {
    }
}
