package org.girandole.plan.fallout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.Fallout;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.flight.PowerLawWind;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Shape;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;

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
    /** The seed of all scatter: a plan must give the same areas on every machine. */
    private static final long SEED = 20_270_619;
    /** Where a crew holds the wind meter: 2 m above the ground (1. SprengV, annex 6, no. 2.1.1.3); higher up it blows harder. */
    private static final double WIND_METER_M = 2;

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

    /** The areas of a plan, for drawing. */
    public static FalloutAreas of(Plan plan) {
        return of(plan, Fallout.USUAL_SHARES, List.of());
    }

    /**
     * What comes down where, counted and not drawn: the outlines are left out.
     *
     * @param watched shapes for which the share that comes down inside is counted
     */
    public static FalloutAreas counted(Plan plan, List<Shape> watched) {
        return of(plan, List.of(), watched);
    }

    private static FalloutAreas of(Plan plan, List<Double> shares, List<Shape> watched) {
        Prepared prepared = Prepared.of(plan);
        List<FalloutResult> results = new Fallout(SiteAir.of(plan).air(), wind(plan), SEED, SAMPLES, shares, watched)
                .run(prepared.specs(), Runtime.getRuntime().availableProcessors());
        List<Area> areas = new ArrayList<>();
        for (int i = 0; i < results.size(); i++) {
            areas.add(new Area(prepared.cues().get(i), results.get(i), prepared.shells().get(i).estimated()));
        }
        return new FalloutAreas(areas, prepared.unknown());
    }

    /** What could not be computed, without computing the rest. */
    public static List<Unknown> unknown(Plan plan) {
        return List.copyOf(Prepared.of(plan).unknown());
    }

    /**
     * One of the areas of a plan again, in other wind, counted and not drawn.
     *
     * @param watched shapes for which the share that comes down inside is counted
     */
    public static FalloutResult again(Plan plan, Area area, double fromDeg, double speedMps, List<Shape> watched) {
        return new Fallout(SiteAir.of(plan).air(), wind(fromDeg, speedMps), SEED, SAMPLES, List.of(), watched).run(List.of(area.result().spec()), 1).get(0);
    }

    /** Why rise and apex of a shell, both known, do not go together, so that nothing may be computed from either; empty when they do. */
    public static Optional<String> impossible(Plan plan, PlannedCue cue) {
        return concerns(cue) ? Shells.impossible(cue, SiteAir.of(plan)) : Optional.empty();
    }

    /** Everything ready to fly. Shells of one effect and lot are fitted once, however many places they are fired from. */
    private record Prepared(List<PlannedCue> cues, List<Shells.Shell> shells, List<FalloutSpec> specs, List<Unknown> unknown) {
        static Prepared of(Plan plan) {
            Prepared prepared = new Prepared(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
            Map<Key, PlannedCue> firsts = firsts(plan);
            Map<String, PlannedCue> kinds = new LinkedHashMap<>();
            firsts.forEach((key, cue) -> kinds.putIfAbsent(key.kind(), cue));
            SiteAir air = SiteAir.of(plan);
            Map<String, Fitted> fitted = kinds.entrySet().parallelStream()
                    .collect(Collectors.toMap(Map.Entry::getKey, entry -> Fitted.of(entry.getValue(), air)));
            kinds.forEach((kind, cue) -> fitted.get(kind).why().ifPresent(why -> prepared.unknown.add(new Unknown(cue, why))));
            firsts.forEach((key, cue) -> fitted.get(key.kind()).shell().ifPresent(shell -> prepared.add(key, cue, shell)));
            return prepared;
        }

        private void add(Key key, PlannedCue cue, Shells.Shell shell) {
            try {
                specs.add(shell.spec(key.text(), key.from(), cue));
                shells.add(shell);
                cues.add(cue);
            } catch (PhysicsInputException e) {
                unknown.add(new Unknown(cue, e.getMessage()));
            }
        }
    }

    /** A shell that can fly, or why it cannot be known how it flies. */
    private record Fitted(Optional<Shells.Shell> shell, Optional<String> why) {
        static Fitted of(PlannedCue cue, SiteAir air) {
            try {
                return new Fitted(Optional.of(Shells.of(cue, air)), Optional.empty());
            } catch (PhysicsInputException e) {
                return new Fitted(Optional.empty(), Optional.of(e.getMessage()));
            }
        }
    }

    /** Whether a cue leaves a shell that could come down unburst. */
    public static boolean concerns(PlannedCue cue) {
        return cue.effect().kind() == EffectKind.SHELL || cue.effect().kind() == EffectKind.SALUTE;
    }

    private static Map<Key, PlannedCue> firsts(Plan plan) {
        ScriptIndex index = ScriptIndex.of(plan);
        Map<String, Point> positions = new LinkedHashMap<>();
        plan.script().site().map(Site::positions)
                .ifPresent(all -> all.forEach(position -> positions.putIfAbsent(position.name(), position.at())));
        Map<Key, PlannedCue> firsts = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Point at = positions.get(cue.position());
            if (concerns(cue) && at != null) {
                Point from = index.firedFrom(cue, at);
                firsts.putIfAbsent(new Key(cue.effect().name(), cue.lot().orElse(""), from, cue.aim()), cue);
            }
        }
        return firsts;
    }

    /** The mean wind: a gust is over in seconds, while a shell flies for ten and debris sinks for a minute. Scatter takes gusts in. */
    private static Wind wind(Plan plan) {
        return plan.script().site().flatMap(Site::wind)
                .map(wind -> wind(wind.fromDeg(), wind.speedMps())).orElse(Wind.CALM);
    }

    private static Wind wind(double fromDeg, double speedMps) {
        return new PowerLawWind(fromDeg, speedMps, WIND_METER_M, PowerLawWind.OPEN_GROUND);
    }

    /** Cues that come down alike. */
    private record Key(String effect, String lot, Point from, PlannedCue.Aim aim) {
        /** What is fitted once. */
        String kind() {
            return effect + "/" + lot;
        }

        /** Names the scatter: the same effect and tilt draw the same from every place, whatever else is in the show. */
        String text() {
            return kind() + "/" + aim.tiltDeg() + "/" + aim.bearingDeg();
        }
    }
}
