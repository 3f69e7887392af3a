package org.girandole.plan.script;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.ShippedTables;

/**
 * A whole show as the language hands it to the plan: every name resolved, every quantity in SI, nothing computed. All lists are in
 * the order of the script, used files first.
 */
public record ShowScript(ShowHeader show, List<Soundtrack> soundtracks, List<Effect> effects, List<Lot> lots, List<Chain> chains,
        Optional<Site> site, List<Igniter> igniters, List<Wire> wires, List<ModuleType> moduleTypes, List<Module> modules,
        List<Rack> racks, Optional<FiringSystem> firingSystem, List<Score> scores, List<DistanceRules> distances, List<Waiver> waivers, List<RuleSetting> rules,
        List<TableLayout> tables, Optional<ReleaseSpec> release, List<Rehearsal> rehearsals, List<InputFile> inputs) {
    public ShowScript {
        soundtracks = List.copyOf(soundtracks);
        effects = List.copyOf(effects);
        lots = List.copyOf(lots);
        chains = List.copyOf(chains);
        igniters = List.copyOf(igniters);
        wires = List.copyOf(wires);
        moduleTypes = List.copyOf(moduleTypes);
        modules = List.copyOf(modules);
        racks = List.copyOf(racks);
        scores = List.copyOf(scores);
        distances = List.copyOf(distances);
        waivers = List.copyOf(waivers);
        rules = List.copyOf(rules);
        tables = List.copyOf(tables);
        rehearsals = List.copyOf(rehearsals);
        inputs = List.copyOf(inputs);
    }

    /** A script without rehearsals. */
    public ShowScript(ShowHeader show, List<Soundtrack> soundtracks, List<Effect> effects, List<Lot> lots, List<Chain> chains,
            Optional<Site> site, List<Igniter> igniters, List<Wire> wires, List<ModuleType> moduleTypes, List<Module> modules,
            List<Rack> racks, Optional<FiringSystem> firingSystem, List<Score> scores, List<DistanceRules> distances, List<Waiver> waivers, List<RuleSetting> rules,
            List<TableLayout> tables, Optional<ReleaseSpec> release, List<InputFile> inputs) {
        this(show, soundtracks, effects, lots, chains, site, igniters, wires, moduleTypes, modules, racks, firingSystem, scores, distances, waivers,
                rules, tables, release, List.of(), inputs);
    }

    /** The same script, read from one more file. */
    public ShowScript withInput(InputFile file) {
        List<InputFile> all = new ArrayList<>(inputs);
        all.add(file);
        return new ShowScript(show, soundtracks, effects, lots, chains, site, igniters, wires, moduleTypes, modules, racks, firingSystem,
                scores, distances, waivers, rules, tables, release, rehearsals, all);
    }

    /** The same script with another wind on its site; a script without a site stays as it is. */
    public ShowScript withWind(Optional<Site.Wind> wind) {
        Optional<Site> blown = site.map(s -> s.withWind(wind));
        return new ShowScript(show, soundtracks, effects, lots, chains, blown, igniters, wires, moduleTypes, modules, racks, firingSystem,
                scores, distances, waivers, rules, tables, release, rehearsals, inputs);
    }

    /** The distance table that the show names: one of its own, or one that comes with the program; empty when neither has the name. */
    public Optional<DistanceTable> separationTable() {
        return show.separation().flatMap(name -> distanceTables().stream().filter(table -> table.name().equals(name)).findFirst());
    }

    /** All distance tables that the show may name, its own first. */
    public List<DistanceTable> distanceTables() {
        List<DistanceTable> all = new ArrayList<>();
        distances.forEach(own -> all.add(own.table()));
        all.addAll(ShippedTables.all());
        return all;
    }
}
