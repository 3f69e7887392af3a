package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.allocate.Fit;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Rack;

/** What the last plan has left over: tubes and pins that no cue uses. */
public final class Free {
    private final Plan plan;
    private final Map<String, Set<Integer>> usedTubes = new HashMap<>();
    private final Map<String, Set<Integer>> usedPins = new HashMap<>();

    public Free(Plan plan) {
        this.plan = plan;
        for (PlannedCue cue : plan.cues()) {
            cue.tube().ifPresent(tube -> {
                for (int i = 0; i < cue.pieces(); i++) {
                    usedTubes.computeIfAbsent(tube.rack(), rack -> new HashSet<>()).add(tube.tube() + i);
                }
            });
            cue.pin().ifPresent(pin -> usedPins.computeIfAbsent(pin.module(), module -> new HashSet<>()).add(pin.pin()));
        }
    }

    /**
     * Free tubes at a position that the pieces of a cue fit, and that can point where it is aimed, by rack.
     *
     * @param longEnough what is asked of the length of a tube
     */
    public Map<String, List<Integer>> tubes(String position, PlannedCue cue, BiPredicate<Effect, Rack.TubeRun> longEnough) {
        return cue.effect().calibreM().map(calibreM -> tubes(position, (rack, tube) -> Fit.tilt(rack, tube, cue.aim())
                && rack.runOf(tube).filter(run -> Fit.calibre(calibreM, run.calibreM()) && longEnough.test(cue.effect(), run)).isPresent()))
                .orElse(Map.of());
    }

    private Map<String, List<Integer>> tubes(String position, BiPredicate<Rack, Integer> fits) {
        Map<String, List<Integer>> free = new LinkedHashMap<>();
        for (Rack rack : plan.script().racks()) {
            if (!rack.position().equals(position)) {
                continue;
            }
            for (int tube = 1; tube <= rack.tubes(); tube++) {
                if (!used(usedTubes, rack.name(), tube) && fits.test(rack, tube)) {
                    free.computeIfAbsent(rack.name(), name -> new ArrayList<>()).add(tube);
                }
            }
        }
        return free;
    }

    /** Free tubes of a rack. */
    public List<Integer> tubes(Rack rack) {
        return free(usedTubes, rack.name(), rack.tubes());
    }

    /** Free pins of a module. */
    public List<Integer> pins(Module module) {
        int pins = plan.script().moduleTypes().stream().filter(type -> type.name().equals(module.type())).mapToInt(ModuleType::pins).findFirst()
                .orElse(0);
        return free(usedPins, module.name(), pins);
    }

    public Plan plan() {
        return plan;
    }

    /** How many more of an effect or chain could be loaded at a position; empty when it needs no tube, or its calibre is unknown. */
    Optional<Integer> room(String what, String position) {
        Optional<Chain> chain = plan.script().chains().stream().filter(c -> c.name().equals(what)).findFirst();
        String name = chain.map(Chain::effect).orElse(what);
        Optional<Effect> effect = plan.script().effects().stream().filter(e -> e.name().equals(name)).findFirst();
        if (effect.isEmpty() || !effect.get().kind().needsTube() || effect.get().calibreM().isEmpty()) {
            return Optional.empty();
        }
        double calibreM = effect.get().calibreM().get();
        int free = tubes(position, (rack, tube) -> rack.runOf(tube).filter(run -> Fit.calibre(calibreM, run.calibreM())).isPresent())
                .values().stream().mapToInt(List::size).sum();
        return Optional.of(free / chain.map(Chain::items).orElse(1));
    }

    private static List<Integer> free(Map<String, Set<Integer>> used, String owner, int count) {
        List<Integer> free = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            if (!used(used, owner, i)) {
                free.add(i);
            }
        }
        return free;
    }

    private static boolean used(Map<String, Set<Integer>> used, String owner, int number) {
        return used.getOrDefault(owner, Set.of()).contains(number);
    }
}
