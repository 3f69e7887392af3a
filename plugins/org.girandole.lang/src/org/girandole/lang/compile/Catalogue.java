package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.AngleField;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.FlagField;
import org.girandole.lang.show.HazardField;
import org.girandole.lang.show.LotDef;
import org.girandole.lang.show.RefField;
import org.girandole.lang.show.ShotsField;
import org.girandole.lang.show.WordField;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.TiltRange;

/** Effects, lots and chains. */
final class Catalogue {
    static final int MOST_SHOTS = 1000;
    private static final int MOST_STOCK = 1_000_000;
    /** Division and compatibility group, Orange Book (UN Model Regulations) 2.1; fireworks are 1.1G, 1.2G, 1.3G, 1.4G or 1.4S. */

    private final Compilation compilation;
    private final Map<EffectDef, Parts> resolved = new IdentityHashMap<>();

    Catalogue(Compilation compilation) {
        this.compilation = compilation;
    }

    /** What was said of an effect, by itself or by the one it is like. */
    private record Parts(Optional<Double> calibreM, Optional<Measured> rise, Optional<Double> apexM, Optional<Double> spreadM,
            Optional<Long> lastsUs, Optional<Double> chargeKg, Optional<Hazard> hazard, Optional<String> colour,
            Optional<String> igniter, Optional<Double> massKg, Optional<Double> tubeLengthM, Optional<Shots> shots,
            Optional<TiltRange> tilt, boolean report, Set<String> refused) {
        Parts over(Parts base) {
            return new Parts(over("calibre", calibreM, base.calibreM), over("rise", rise, base.rise), over("apex", apexM, base.apexM),
                    over("spread", spreadM, base.spreadM), lastsUs.or(base::lastsUs), over("charge", chargeKg, base.chargeKg),
                    hazard.or(base::hazard), colour.or(base::colour), igniter.or(base::igniter), over("mass", massKg, base.massKg),
                    tubeLengthM.or(base::tubeLengthM), shots.or(base::shots), over("tilt", tilt, base.tilt), report || base.report, refusedOver(base));
        }

        /** What is written and cannot be meant is not handed down from another effect either. */
        private <T> Optional<T> over(String key, Optional<T> own, Optional<T> base) {
            return own.isPresent() || refused.contains(key) ? own : base;
        }

        private Set<String> refusedOver(Parts base) {
            Set<String> all = new TreeSet<>(base.refused);
            all.removeIf(key -> quantities().get(key).isPresent());
            all.addAll(refused);
            return all;
        }

        /** The same, knowing which lines of the block gave no value. */
        Parts refusing(Block block) {
            Set<String> without = new TreeSet<>(quantities().keySet());
            without.removeIf(key -> !block.has(key) || quantities().get(key).isPresent());
            return new Parts(calibreM, rise, apexM, spreadM, lastsUs, chargeKg, hazard, colour, igniter, massKg, tubeLengthM, shots, tilt, report,
                    without);
        }

        /** Lines that something is computed from, or estimated in place of. */
        private Map<String, Optional<?>> quantities() {
            return Map.of("calibre", calibreM, "rise", rise, "apex", apexM, "spread", spreadM, "charge", chargeKg, "mass", massKg, "tilt", tilt);
        }
    }

    private record Shots(int count, Optional<Long> gapUs) {
    }

    Effect effect(EffectDef def) {
        Parts parts = resolve(def);
        return new Effect(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), kind(def), parts.calibreM, parts.rise,
                parts.apexM, parts.spreadM, parts.lastsUs, parts.chargeKg, parts.hazard.map(Hazard::division),
                parts.hazard.flatMap(Hazard::unNumber), parts.colour, parts.igniter, parts.massKg, parts.tubeLengthM,
                parts.shots.map(Shots::count), parts.shots.flatMap(Shots::gapUs), parts.tilt, parts.report,
                like(def).map(EffectDef::getName), parts.refused, compilation.sources().of(def));
    }

    private Optional<EffectDef> like(EffectDef def) {
        return Optional.ofNullable((EffectDef) (def.getLike() instanceof EffectDef like && !like.eIsProxy() ? like : null));
    }

    private static EffectKind kind(EffectDef def) {
        for (EffectKind kind : EffectKind.values()) {
            if (kind.word().equals(def.getKind())) {
                return kind;
            }
        }
        throw new IllegalStateException("the grammar knows an effect that the plan does not: " + def.getKind());
    }

    /** Walks up what an effect is like until something known, then comes back down. */
    private Parts resolve(EffectDef def) {
        List<EffectDef> way = new ArrayList<>();
        Set<EffectDef> onTheWay = new HashSet<>();
        EffectDef next = def;
        while (next != null && !resolved.containsKey(next)) {
            way.add(next);
            onTheWay.add(next);
            Optional<EffectDef> base = next.getLike() == null ? Optional.empty()
                    : compilation.resolve(next, eINSTANCE.getEffectDef_Like(), EffectDef.class);
            if (base.isPresent() && onTheWay.contains(base.get())) {
                circle(next, way.subList(way.indexOf(base.get()), way.size()));
                base = Optional.empty();
            }
            next = base.orElse(null);
        }
        Parts parts = next == null ? null : resolved.get(next);
        for (int i = way.size() - 1; i >= 0; i--) {
            Parts own = own(way.get(i));
            parts = parts == null ? own : own.over(parts);
            resolved.put(way.get(i), parts);
        }
        return parts;
    }

    private void circle(EffectDef last, List<EffectDef> round) {
        List<String> names = new ArrayList<>(round.stream().map(EffectDef::getName).toList());
        names.add(names.get(0));
        compilation.problems().report(LanguageRules.LIKE_CYCLE, round.size() == 1 ? "'" + names.get(0) + "' is like itself"
                : "These effects are like each other in a circle: " + String.join(" -> ", names))
                .found(String.join(" -> ", names), "effects of which one stands by itself")
                .remedy("let one of them stand by itself").at(compilation.sources().of(last, eINSTANCE.getEffectDef_Like()));
    }

    private Parts own(EffectDef def) {
        String article = "aeiou".indexOf(def.getKind().charAt(0)) >= 0 ? "an " : "a ";
        Block block = new Block(compilation, def, def.getFields(), article + def.getKind(),
                compilation.grammar().getEffectFieldRule(), Set.of());
        return new Parts(block.si("calibre", Range.CALIBRE), block.measured("rise", Range.RISE), block.si("apex", Range.APEX),
                block.si("spread", Range.SPREAD), block.us("lasts", Range.LASTS), block.si("charge", Range.CHARGE),
                block.field("hazard", HazardField.class).flatMap(field -> Hazard.of(compilation, field)),
                block.field("colour", WordField.class).map(f -> f.getText() != null ? f.getText() : f.getWord()),
                block.field("igniter", RefField.class).flatMap(f -> compilation.resolvedName(f, eINSTANCE.getRefField_Target())),
                block.si("mass", Range.MASS), block.si("tube length", Range.TUBE_LENGTH),
                block.field("shots", ShotsField.class).flatMap(this::shots),
                block.field("tilt", AngleField.class).flatMap(f -> Angles.range(compilation, f)),
                block.field("report", FlagField.class).isPresent(), Set.of()).refusing(block);
    }

    private Optional<Shots> shots(ShotsField field) {
        OptionalInt count = compilation.quantities().whole(field, eINSTANCE.getShotsField_Count(), field.getCount(), "a number of shots", 1,
                MOST_SHOTS);
        if (count.isEmpty()) {
            return Optional.empty();
        }
        Optional<BigDecimal> span = compilation.quantities().exact(field.getQuantity(), Range.SHOT_SPAN, true);
        if (field.isOver()) {
            // N shots span N - 1 gaps.
            span = span.filter(s -> count.getAsInt() > 1)
                    .map(s -> s.divide(BigDecimal.valueOf(count.getAsInt() - 1L), 12, RoundingMode.HALF_UP));
        }
        return Optional.of(new Shots(count.getAsInt(), span.map(Quantities::micros)));
    }

    Optional<Lot> lot(LotDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a lot", compilation.grammar().getLotFieldRule(), Set.of());
        block.missing("count", "count 24");
        OptionalInt count = block.count("count", "a stock", 0, MOST_STOCK);
        Optional<Measured> rise = block.measured("rise", Range.RISE);
        Optional<EffectDef> of = compilation.resolve(def, eINSTANCE.getLotDef_Of(), EffectDef.class);
        if (of.isEmpty() || count.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new Lot(def.getName(), of.get().getName(), count.getAsInt(), rise, compilation.sources().of(def)));
    }

    Optional<Chain> chain(ChainDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a chain", compilation.grammar().getChainFieldRule(), Set.of());
        block.missing("gap", "gap 250 ms +- 8 %");
        Optional<Measured> gap = block.measured("gap", Range.GAP);
        Optional<Long> lead = block.us("lead", Range.LEAD);
        Optional<EffectDef> of = compilation.resolve(def, eINSTANCE.getChainDef_Of(), EffectDef.class);
        OptionalInt items = compilation.quantities().whole(def, eINSTANCE.getChainDef_Items(), def.getItems(), "a number of items", 1, MOST_SHOTS);
        if (of.isEmpty() || gap.isEmpty() || items.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new Chain(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), of.get().getName(),
                items.getAsInt(), gap.get(), lead.orElse(0L), compilation.sources().of(def)));
    }

    /** Effects in the order written. */
    List<Effect> effects(List<EffectDef> defs) {
        Map<String, Effect> effects = new LinkedHashMap<>();
        for (EffectDef def : defs) {
            if (def.getName() != null) {
                effects.putIfAbsent(def.getName(), effect(def));
            }
        }
        return List.copyOf(effects.values());
    }
}
