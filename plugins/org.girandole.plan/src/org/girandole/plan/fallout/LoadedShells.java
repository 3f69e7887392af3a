package org.girandole.plan.fallout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;

/**
 * The shells and salutes of a plan, ready to fly: one for each effect, lot, place and tilt. Those of one effect and lot are fitted once,
 * however many places they are fired from. None of it hangs on the wind.
 */
public final class LoadedShells {
    private final FlightMemory memory;
    private final List<Ready> ready = new ArrayList<>();
    private final List<FalloutAreas.Unknown> unknown = new ArrayList<>();
    private final Map<Kind, Fitted> fitted;

    /** One of them; {@code first} is the first cue that fires it. */
    record Ready(PlannedCue first, Shells.Shell shell, FalloutSpec spec) {
    }

    /**
     * The shells of a plan.
     *
     * @param index that of the plan
     * @param nonsense of the plan
     */
    public static LoadedShells of(Plan plan, ScriptIndex index, Nonsense nonsense, FlightMemory memory) {
        return new LoadedShells(plan, index, nonsense, memory);
    }

    private LoadedShells(Plan plan, ScriptIndex index, Nonsense nonsense, FlightMemory memory) {
        this.memory = memory;
        Map<Key, PlannedCue> firsts = firsts(plan, index, nonsense);
        Map<Kind, PlannedCue> kinds = new LinkedHashMap<>();
        firsts.forEach((key, cue) -> kinds.putIfAbsent(key.kind(), cue));
        SiteAir air = SiteAir.of(plan);
        fitted = kinds.entrySet().parallelStream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> Fitted.of(entry.getValue(), air, memory)));
        kinds.forEach((kind, cue) -> fitted.get(kind).why().ifPresent(why -> unknown.add(new FalloutAreas.Unknown(cue, why))));
        firsts.forEach((key, cue) -> fitted.get(key.kind()).shell().ifPresent(shell -> add(key, cue, shell)));
    }

    private void add(Key key, PlannedCue cue, Shells.Shell shell) {
        try {
            ready.add(new Ready(cue, shell, shell.spec(key(cue, cue.aim()), key.from(), cue)));
        } catch (PhysicsInputException e) {
            unknown.add(new FalloutAreas.Unknown(cue, e.getMessage()));
        }
    }

    /** Whether a cue leaves a shell that could come down unburst. */
    public static boolean concerns(PlannedCue cue) {
        return cue.effect().kind() == EffectKind.SHELL || cue.effect().kind() == EffectKind.SALUTE;
    }

    /** Those of which it cannot be known how they fly, and why. */
    public List<FalloutAreas.Unknown> unknown() {
        return List.copyOf(unknown);
    }

    /** Why rise and apex of a cue's shell, both written or measured, do not go together, so that nothing may be computed from either. */
    public Optional<String> impossible(PlannedCue cue) {
        return Optional.ofNullable(fitted.get(Kind.of(cue))).filter(fit -> Shells.pairKnown(cue)).flatMap(Fitted::why);
    }

    List<Ready> ready() {
        return ready;
    }

    FlightMemory memory() {
        return memory;
    }

    /** A shell that can fly, or why it cannot be known how it flies. */
    private record Fitted(Optional<Shells.Shell> shell, Optional<String> why) {
        static Fitted of(PlannedCue cue, SiteAir air, FlightMemory memory) {
            try {
                return new Fitted(Optional.of(Shells.of(cue, air, memory)), Optional.empty());
            } catch (PhysicsInputException e) {
                return new Fitted(Optional.empty(), Optional.of(e.getMessage()));
            }
        }
    }

    /** Of those from which nothing may be computed it is noted that they are not known. */
    private Map<Key, PlannedCue> firsts(Plan plan, ScriptIndex index, Nonsense nonsense) {
        Map<String, FalloutAreas.Unknown> refused = new LinkedHashMap<>();
        Map<String, Point> positions = new HashMap<>();
        plan.script().site().map(Site::positions)
                .ifPresent(all -> all.forEach(position -> positions.putIfAbsent(position.name(), position.at())));
        Map<Key, PlannedCue> firsts = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            Point at = positions.get(cue.position());
            if (!concerns(cue) || at == null) {
                continue;
            }
            Optional<Nonsense.Why> why = nonsense.flight(cue);
            if (why.isPresent()) {
                refused.putIfAbsent(cue.effect().name() + "/" + cue.position() + "/" + why.get().clause(), new FalloutAreas.Unknown(cue, why.get().clause()));
            } else {
                firsts.putIfAbsent(new Key(Kind.of(cue), index.firedFrom(cue, at), cue.aim()), cue);
            }
        }
        unknown.addAll(refused.values());
        return firsts;
    }

    /** What is fitted once. */
    private record Kind(String effect, String lot) {
        static Kind of(PlannedCue cue) {
            return new Kind(cue.effect().name(), cue.lot().orElse(""));
        }
    }

    /** Cues that come down alike. */
    private record Key(Kind kind, Point from, PlannedCue.Aim aim) {
    }

    /** Names the scatter: the same effect and tilt draw the same from every place, whatever else is in the show. */
    static String key(PlannedCue cue, PlannedCue.Aim aim) {
        return cue.effect().name() + "/" + cue.lot().orElse("") + "/" + aim.tiltDeg() + "/" + aim.bearingDeg();
    }
}
