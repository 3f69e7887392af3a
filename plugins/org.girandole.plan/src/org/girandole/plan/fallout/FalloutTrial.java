package org.girandole.plan.fallout;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.fallout.Landings;
import org.girandole.physics.flight.Launch;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;

/** What would come down where if something about one of the areas of a plan were otherwise. Scatter is drawn as a check of the changed show would draw it. */
public final class FalloutTrial {
    private final Conditions conditions;
    private final FlightMemory memory;
    private final FalloutAreas.Area area;

    /** @param shells those of the plan */
    public FalloutTrial(Plan plan, LoadedShells shells, FalloutAreas.Area area) {
        conditions = Conditions.of(plan, List.of(), List.of());
        memory = shells.memory();
        this.area = area;
    }

    /**
     * The answer to a question about this area, found once as long as the shells' memory lasts.
     *
     * @param asked what the answer hangs on besides air, wind and the shell and how it is fired
     */
    public String answer(Object asked, Supplier<String> found) {
        PlannedCue cue = area.first();
        return memory.answer(List.of(conditions, area.result().spec(), cue.aim(), cue.effect().calibreM(), asked), found);
    }

    /** As planned. */
    public Landings asPlanned() {
        return memory.in(conditions).landings(area.result().spec());
    }

    /** With the tube leaning {@code tiltDeg} instead, to the same side; 0 for upright. */
    public Landings leaning(double tiltDeg) {
        FalloutSpec spec = area.result().spec();
        PlannedCue.Aim aim = area.first().aim();
        PlannedCue.Aim less = tiltDeg == 0 ? new PlannedCue.Aim(0, aim.lean(), 0)
                : new PlannedCue.Aim(Math.copySign(tiltDeg, aim.tiltDeg()), aim.lean(), aim.bearingDeg());
        Launch launch = new Launch(spec.launch().muzzle(), spec.launch().speedMps(), tiltDeg, less.bearingDeg());
        return memory.in(conditions).landings(new FalloutSpec(LoadedShells.key(area.first(), less), spec.body(), launch, spec.burst(), spec.debris(),
                spec.scatter()));
    }

    /** With a shell of another calibre of which nothing else is known; empty when none can be estimated. */
    public Optional<Landings> usualShell(double calibreMm) {
        try {
            return Optional.of(memory.in(conditions).landings(Shells.usual(calibreMm, conditions.air(), memory)
                    .spec(area.result().spec().key(), area.result().spec().launch())));
        } catch (PhysicsInputException e) {
            return Optional.empty();
        }
    }
}
