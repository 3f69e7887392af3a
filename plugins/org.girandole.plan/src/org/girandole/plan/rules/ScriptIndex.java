package org.girandole.plan.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;

/** The hardware and soundtracks of a plan, by name. */
public final class ScriptIndex {
    private final Map<String, Module> modules;
    private final Map<String, ModuleType> types;
    private final Map<String, Rack> racks;
    private final Map<String, Igniter> igniters;
    private final Map<String, PlannedSoundtrack> soundtracks;

    private ScriptIndex(Plan plan) {
        modules = byName(plan.script().modules(), Module::name);
        types = byName(plan.script().moduleTypes(), ModuleType::name);
        racks = byName(plan.script().racks(), Rack::name);
        igniters = byName(plan.script().igniters(), Igniter::name);
        soundtracks = byName(plan.soundtracks(), PlannedSoundtrack::name);
    }

    public static ScriptIndex of(Plan plan) {
        return new ScriptIndex(plan);
    }

    public Optional<Module> module(String name) {
        return Optional.ofNullable(modules.get(name));
    }

    /** The module of the cue's pin, when it has one. */
    public Optional<Module> module(PlannedCue cue) {
        return cue.pin().flatMap(pin -> module(pin.module()));
    }

    public Optional<ModuleType> typeOf(Module module) {
        return Optional.ofNullable(types.get(module.type()));
    }

    /** The type of the module of the cue's pin. */
    public Optional<ModuleType> moduleType(PlannedCue cue) {
        return module(cue).flatMap(this::typeOf);
    }

    public Optional<Rack> rack(PlannedCue cue) {
        return cue.tube().flatMap(tube -> Optional.ofNullable(racks.get(tube.rack())));
    }

    /** Where a cue of this position is fired: the position, moved to where the cue's rack stands. */
    public Point firedFrom(PlannedCue cue, Point position) {
        return rack(cue).map(rack -> rack.from(position)).orElse(position);
    }

    /** The igniter type of the cue's effect. */
    public Optional<Igniter> igniter(PlannedCue cue) {
        return cue.effect().igniter().flatMap(name -> Optional.ofNullable(igniters.get(name)));
    }

    public Optional<PlannedSoundtrack> soundtrack(PlannedCue cue) {
        return Optional.ofNullable(soundtracks.get(cue.soundtrack()));
    }

    private static <T> Map<String, T> byName(List<T> all, Function<T, String> name) {
        Map<String, T> map = new LinkedHashMap<>();
        all.forEach(item -> map.putIfAbsent(name.apply(item), item));
        return map;
    }
}
