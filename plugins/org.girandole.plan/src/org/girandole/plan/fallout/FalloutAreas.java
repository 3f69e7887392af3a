package org.girandole.plan.fallout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.physics.fallout.Fallout;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.geometry.Shape;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;

/**
 * Where the shells and salutes of a plan come down, in the wind that the site is planned for. One computation for each effect, place and
 * tilt; the same plan gives the same areas. What leaves no shell behind (mines, comets, candles, ground pieces) and what flies by its own
 * motor is not part of it.
 *
 * @param areas in firing order of the first cue that each stands for
 * @param unknown what could not be computed, and why
 */
public record FalloutAreas(List<Area> areas, List<Unknown> unknown) {
    /** Flights of each kind: enough to see one in a hundred, few enough to do it at every check. */
    public static final int SAMPLES = 500;

    public FalloutAreas {
        areas = List.copyOf(areas);
        unknown = List.copyOf(unknown);
    }

    /**
     * Where one effect with one tilt comes down when fired from one place.
     *
     * @param first the first cue that does so
     * @param estimated whether mass, height or rise are estimates
     */
    public record Area(PlannedCue first, FalloutResult result, boolean estimated) {
    }

    /** A cue whose fallout is not known. */
    public record Unknown(PlannedCue first, String why) {
    }

    /**
     * The areas of a plan, for drawing.
     *
     * @param shells those of the plan
     */
    public static FalloutAreas of(Plan plan, LoadedShells shells) {
        return of(plan, shells, Fallout.USUAL_SHARES, List.of());
    }

    /**
     * What comes down where, counted and not drawn: the outlines are left out.
     *
     * @param shells those of the plan
     * @param watched shapes for which the share that comes down inside is counted
     */
    public static FalloutAreas counted(Plan plan, LoadedShells shells, List<Shape> watched) {
        return of(plan, shells, List.of(), watched);
    }

    private static FalloutAreas of(Plan plan, LoadedShells shells, List<Double> shares, List<Shape> watched) {
        List<LoadedShells.Ready> ready = shells.ready();
        Optional<Nonsense.Why> wind = Nonsense.wind(plan);
        if (wind.isPresent()) {
            return new FalloutAreas(List.of(), Stream.concat(shells.unknown().stream(),
                    ready.stream().map(shell -> new Unknown(shell.first(), wind.get().clause()))).toList());
        }
        List<FalloutResult> results = shells.memory().landed(Conditions.of(plan, shares, watched), ready.stream().map(LoadedShells.Ready::spec).toList(),
                Runtime.getRuntime().availableProcessors());
        List<Area> areas = new ArrayList<>();
        for (int i = 0; i < results.size(); i++) {
            areas.add(new Area(ready.get(i).first(), results.get(i), ready.get(i).shell().estimated()));
        }
        return new FalloutAreas(areas, shells.unknown());
    }

    /**
     * One of the areas of a plan again, in other wind, counted and not drawn.
     *
     * @param shells those of the plan
     * @param watched shapes for which the share that comes down inside is counted
     */
    public static FalloutResult again(Plan plan, LoadedShells shells, Area area, double fromDeg, double speedMps, List<Shape> watched) {
        Conditions other = new Conditions(SiteAir.of(plan), Optional.of(new Conditions.Blowing(fromDeg, speedMps)), List.of(), watched);
        return shells.memory().landed(other, List.of(area.result().spec()), 1).get(0);
    }
}
