package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;

/** The hardware of a show and where it stands. */
public final class Field {
    private final Map<String, Stand> modules = new LinkedHashMap<>();
    private final Map<String, Rack> racks = new LinkedHashMap<>();
    private final Map<String, List<Rack>> racksAt = new LinkedHashMap<>();
    private final Map<String, List<Stand>> modulesAt = new LinkedHashMap<>();
    private final Map<String, Point> positions = new LinkedHashMap<>();
    private final Optional<FiringSystem> system;

    /** A module with its type. */
    public record Stand(Module module, ModuleType type) {
        public String name() {
            return module.name();
        }

        /** Pins that may be used: all but the spare ones. */
        public int usablePins() {
            return Math.max(0, type.pins() - Math.max(0, type.sparePins()));
        }
    }

    public Field(ShowScript script) {
        this.system = script.firingSystem();
        script.site().map(Site::positions).ifPresent(all -> all.forEach(p -> positions.putIfAbsent(p.name(), p.at())));
        Map<String, ModuleType> types = new LinkedHashMap<>();
        script.moduleTypes().forEach(type -> types.putIfAbsent(type.name(), type));
        for (Module module : script.modules()) {
            ModuleType type = types.get(module.type());
            if (type != null && !modules.containsKey(module.name())) {
                Stand stand = new Stand(module, type);
                modules.put(module.name(), stand);
                module.positions().stream().distinct()
                        .forEach(position -> modulesAt.computeIfAbsent(position, p -> new ArrayList<>()).add(stand));
            }
        }
        for (Rack rack : script.racks()) {
            if (racks.putIfAbsent(rack.name(), rack) == null) {
                racksAt.computeIfAbsent(rack.position(), p -> new ArrayList<>()).add(rack);
            }
        }
    }

    /** Modules of a known type, in the order of the script. */
    public List<Stand> modules() {
        return List.copyOf(modules.values());
    }

    public Optional<Stand> module(String name) {
        return Optional.ofNullable(modules.get(name));
    }

    /** Racks in the order of the script. */
    public List<Rack> racks() {
        return List.copyOf(racks.values());
    }

    public Optional<Rack> rack(String name) {
        return Optional.ofNullable(racks.get(name));
    }

    /** Racks at a position, in the order of the script. */
    public List<Rack> racksAt(String position) {
        return Collections.unmodifiableList(racksAt.getOrDefault(position, List.of()));
    }

    /** Modules that serve a position, in the order of the script. */
    public List<Stand> modulesAt(String position) {
        return Collections.unmodifiableList(modulesAt.getOrDefault(position, List.of()));
    }

    /** Length of a lead, one way, metres: the straight line and the firing system's slack. */
    public double leadM(Stand stand, String position, Optional<Rack> rack) {
        return straightM(stand, position, rack) * (1 + system.map(FiringSystem::slackFraction).orElse(0.0))
                + system.map(FiringSystem::slackM).orElse(0.0);
    }

    /**
     * The straight line in metres from where the module stands, at the first of its positions, to the rack; to the position, for what has
     * no rack or a rack whose place the script does not say.
     */
    public double straightM(Stand stand, String position, Optional<Rack> rack) {
        Point from = stand.module().positions().stream().findFirst().flatMap(this::position).orElse(new Point(0, 0));
        Point centre = position(position).orElse(from);
        Point to = rack.flatMap(Rack::at)
                .map(at -> new Point(centre.xM() + at.xM(), centre.yM() + at.yM(), centre.zM() + at.zM()))
                .orElse(centre);
        return Math.sqrt(Math.pow(to.xM() - from.xM(), 2) + Math.pow(to.yM() - from.yM(), 2) + Math.pow(to.zM() - from.zM(), 2));
    }

    private Optional<Point> position(String name) {
        return Optional.ofNullable(positions.get(name));
    }
}
