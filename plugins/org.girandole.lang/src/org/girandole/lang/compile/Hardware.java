package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.AngleField;
import org.girandole.lang.show.FiringSystemDef;
import org.girandole.lang.show.HazardField;
import org.girandole.lang.show.IgniterDef;
import org.girandole.lang.show.LeadField;
import org.girandole.lang.show.Limit;
import org.girandole.lang.show.LimitField;
import org.girandole.lang.show.ModuleDef;
import org.girandole.lang.show.ModuleTypeDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.NumberField;
import org.girandole.lang.show.PointField;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.Quantity;
import org.girandole.lang.show.QuantityField;
import org.girandole.lang.show.RackDef;
import org.girandole.lang.show.RelockField;
import org.girandole.lang.show.TubeRun;
import org.girandole.lang.show.TubesField;
import org.girandole.lang.show.WireDef;
import org.girandole.lang.show.WordField;
import org.girandole.plan.script.Control;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.TiltRange;
import org.girandole.plan.script.Wire;

/** Igniters, wires, modules, racks and the firing system. */
final class Hardware {
    private static final int MOST_PINS = 10_000;
    private static final int MOST_TUBES = 1000;
    private static final int MOST_FRAMES = 1000;
    private static final double DEFAULT_MARGIN = 1.5;
    private static final int MOST_MARGIN = 10;

    private final Compilation compilation;
    private final SiteBlock places;

    Hardware(Compilation compilation, SiteBlock places) {
        this.compilation = compilation;
        this.places = places;
    }

    Optional<Igniter> igniter(IgniterDef def) {
        Block block = new Block(compilation, def, def.getFields(), "an igniter", compilation.grammar().getIgniterFieldRule(), Set.of());
        Optional<Quantity> resistance = block.field("resistance", QuantityField.class).map(QuantityField::getQuantity);
        Optional<BigDecimal> ohm = resistance.flatMap(q -> compilation.quantities().exact(q, Range.IGNITER_OHM, false));
        Optional<Double> plusMinus = ohm.isEmpty() || resistance.get().getTolerance() == null ? Optional.empty()
                : compilation.quantities().plusMinus(resistance.get(), Range.IGNITER_OHM, ohm.get()).map(BigDecimal::doubleValue);
        Optional<Hazard> hazard = block.field("hazard", HazardField.class).flatMap(field -> Hazard.of(compilation, field));
        return named(def).map(name -> new Igniter(name, ohm.map(BigDecimal::doubleValue), plusMinus,
                block.si("all-fire", Range.AMPERE), block.si("no-fire", Range.AMPERE), block.si("charge", Range.CHARGE),
                hazard.map(Hazard::division), hazard.flatMap(Hazard::unNumber), compilation.sources().of(def)));
    }

    Optional<Wire> wire(WireDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a wire", compilation.grammar().getWireFieldRule(), Set.of());
        if (!block.has("gauge") && !block.has("area")) {
            block.missing("gauge", "gauge 24 awg, or area 0.5 mm2");
        } else if (block.has("gauge") && block.has("area")) {
            compilation.problems().report(LanguageRules.REPEATED_FIELD, "A wire has a gauge or an area, not both")
                    .remedy("keep one of the two").at(compilation.sources().of(def));
        }
        Optional<Double> gauge = block.si("gauge", Range.GAUGE);
        if (gauge.isPresent() && gauge.get() != Math.rint(gauge.get())) {
            Quantity written = block.field("gauge", QuantityField.class).orElseThrow().getQuantity();
            compilation.quantities().outside(written, eINSTANCE.getQuantity_Number(), written.getNumber(), "a wire gauge", "a whole number");
            gauge = Optional.empty();
        }
        OptionalInt wireClass = block.count("class", "a conductor class", 1, 6);
        if (wireClass.isPresent() && !Set.of(1, 2, 5).contains(wireClass.getAsInt())) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, wireClass.getAsInt() + " is no conductor class that is known here")
                    .found(String.valueOf(wireClass.getAsInt()), "1 (solid), 2 (stranded) or 5 (flexible)").basis("IEC 60228")
                    .remedy("write class 1, 2 or 5").at(compilation.sources().of(def));
            wireClass = OptionalInt.empty();
        }
        Optional<Double> area = block.si("area", Range.AREA);
        if (gauge.isEmpty() && area.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new Wire(def.getName(), gauge.map(Double::intValue), area, wireClass.orElse(1), compilation.sources().of(def)));
    }

    Optional<ModuleType> moduleType(ModuleTypeDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a module type", compilation.grammar().getModuleTypeFieldRule(),
                Set.of("at most"));
        block.missing("pins", "pins 32");
        OptionalInt pins = block.count("pins", "a number of pins", 1, MOST_PINS);
        Optional<Integer> perPin = Optional.empty();
        Optional<Integer> atOnce = Optional.empty();
        for (LimitField field : block.all("at most", LimitField.class)) {
            for (Limit limit : field.getLimits()) {
                OptionalInt most = compilation.quantities().whole(limit, eINSTANCE.getLimit_Count(), limit.getCount(), "a limit", 1, MOST_PINS);
                Optional<Integer> value = most.isPresent() ? Optional.of(most.getAsInt()) : Optional.empty();
                if (limit.isPerPin() && perPin.isPresent() || limit.isAtOnce() && atOnce.isPresent()) {
                    compilation.problems().report(LanguageRules.REPEATED_FIELD, "This limit is said twice in a module type")
                            .found("twice", "once")
                            .remedy("keep one of the two").at(compilation.sources().whole(limit));
                }
                perPin = limit.isPerPin() ? value : perPin;
                atOnce = limit.isAtOnce() ? value : atOnce;
            }
        }
        OptionalInt spare = block.count("spare", "a number of spare pins", 0, MOST_PINS);
        if (pins.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new ModuleType(def.getName(), pins.getAsInt(), block.si("drive", Range.VOLT),
                block.si("source", Range.SOURCE_OHM), block.si("capacitor", Range.CAPACITANCE), perPin, atOnce,
                block.us("pin gap", Range.PIN_GAP), block.si("test", Range.TEST_AMPERE), block.si("lead at most", Range.LEAD_LENGTH),
                spare.orElse(0), compilation.sources().of(def)));
    }

    Optional<Module> module(ModuleDef def) {
        Optional<ModuleTypeDef> type = compilation.resolve(def, eINSTANCE.getModuleDef_Of(), ModuleTypeDef.class);
        Optional<List<PositionDef>> positions = places.expand(def.getPlaces(), Map.of());
        if (type.isEmpty() || positions.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new Module(def.getName(), def.getAddress() == null ? def.getName() : def.getAddress(), type.get().getName(),
                positions.get().stream().map(PositionDef::getName).toList(), compilation.sources().of(def)));
    }

    Optional<Rack> rack(RackDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a rack", compilation.grammar().getRackFieldRule(), Set.of(Block.TUBES));
        List<Rack.TubeRun> runs = new ArrayList<>();
        boolean whole = true;
        for (TubesField field : block.all(Block.TUBES, TubesField.class)) {
            for (TubeRun run : field.getRuns()) {
                Optional<Rack.TubeRun> tubes = tubes(run);
                whole &= tubes.isPresent();
                tubes.ifPresent(runs::add);
            }
        }
        block.missing(Block.TUBES, "10 tubes 75 mm");
        if (block.has("tilt") && block.has("fan")) {
            compilation.problems().report(LanguageRules.REPEATED_FIELD, "A rack has a tilt or a fan, not both")
                    .remedy("keep tilt for tubes that can be set, fan for tubes in a fixed fan").at(compilation.sources().of(def));
        }
        Optional<TiltRange> fan = block.field("fan", AngleField.class).flatMap(field -> fan(field));
        Optional<TiltRange> tilt = block.field("tilt", AngleField.class).flatMap(field -> Angles.range(compilation, field));
        Optional<Double> spaced = block.si("spaced", Range.SPACING);
        Optional<Point> stands = block.field("stands", PointField.class).flatMap(field -> places.point(field.getPoint(), Range.OFFSET));
        Optional<PositionDef> position = compilation.resolve(def, eINSTANCE.getRackDef_Position(), PositionDef.class);
        if (!whole || runs.isEmpty() || position.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new Rack(def.getName(), position.get().getName(), runs, spaced,
                fan.or(() -> tilt).orElse(new TiltRange(0, 0)), fan.isPresent(), stands, compilation.sources().of(def)));
    }

    /** A fixed fan may run either way: its first angle is that of tube 1. */
    private Optional<TiltRange> fan(AngleField field) {
        Optional<Double> from = compilation.quantities().si(field.getFrom(), Range.TILT);
        Optional<Double> to = compilation.quantities().si(field.getTo(), Range.TILT);
        return from.isEmpty() || to.isEmpty() ? Optional.empty() : Optional.of(new TiltRange(from.get(), to.get()));
    }

    private Optional<Rack.TubeRun> tubes(TubeRun run) {
        OptionalInt count = compilation.quantities().whole(run, eINSTANCE.getTubeRun_Count(), run.getCount(), "a number of tubes", 1, MOST_TUBES);
        Optional<Double> calibre = compilation.quantities().si(run.getCalibre(), Range.CALIBRE);
        Optional<Double> length = compilation.quantities().si(run.getLength(), Range.TUBE_LENGTH);
        return count.isEmpty() || calibre.isEmpty() ? Optional.empty()
                : Optional.of(new Rack.TubeRun(count.getAsInt(), calibre.get(), length, compilation.sources().whole(run)));
    }

    FiringSystem firingSystem(FiringSystemDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a firing system", compilation.grammar().getFiringSystemFieldRule(),
                Set.of());
        Optional<LeadField> lead = block.field("lead", LeadField.class);
        double slackM = 0;
        double slackFraction = 0;
        for (Quantity slack : lead.map(l -> l.getPart() == null ? l.getSlack() == null ? List.<Quantity>of() : List.of(l.getSlack())
                : List.of(l.getSlack(), l.getPart())).orElse(List.of())) {
            if (slack.getUnit() != null && Dimension.SHARE.has(slack.getUnit())) {
                slackFraction += compilation.quantities().si(slack, Range.SHARE).orElse(0.0);
            } else {
                slackM += compilation.quantities().si(slack, Range.LEAD_LENGTH).orElse(0.0);
            }
        }
        double margin = block.field("current margin", NumberField.class).flatMap(field -> compilation.quantities().number(field,
                eINSTANCE.getNumberField_Number(), field.getNumber(), "a current margin", 1, MOST_MARGIN)).map(Number::doubleValue)
                .orElse(DEFAULT_MARGIN);
        return new FiringSystem(def.getName(), block.us("step", Range.STEP), block.us("latency", Range.LATENCY),
                block.field("clock within", QuantityField.class).map(QuantityField::getQuantity)
                        .flatMap(q -> compilation.quantities().si(q, Range.DRIFT)),
                lead.flatMap(l -> compilation.resolvedName(l, eINSTANCE.getLeadField_Wire())), slackM, slackFraction,
                block.si("copper", Range.COPPER), join(block), margin, control(block),
                compilation.sources().of(def));
    }

    private Control control(Block block) {
        Control usual = Control.DEFAULT;
        return new Control(block.count("lock after", "a number of frames", 1, MOST_FRAMES).orElse(usual.lockFrames()),
                block.count("loss after", "a number of frames", 1, MOST_FRAMES).orElse(usual.lossFrames()),
                block.si("clock ageing", Range.AGEING).orElse(usual.ageingPpmPerDay()),
                block.us("clock jitter", Range.JITTER).orElse(usual.jitterUs()), smoothPpm(block).orElse(usual.smoothPpm()),
                block.us("late at most", Range.LATE).orElse(usual.lateToleranceUs()), block.us("link", Range.LATENCY).orElse(usual.linkUs()));
    }

    /** Empty for a jump, and when it is not said. */
    private Optional<Double> smoothPpm(Block block) {
        Optional<RelockField> field = block.field("relock", RelockField.class);
        Optional<String> word = field.flatMap(f -> Choices.word(compilation, f, eINSTANCE.getRelockField_Word(), 0, f.getWord(),
                List.of("jump", "smooth")));
        if (word.isEmpty()) {
            return Optional.empty();
        }
        boolean smooth = word.get().equals("smooth");
        if (smooth != (field.get().getQuantity() != null)) {
            compilation.problems().report(smooth ? LanguageRules.MISSING_FIELD : LanguageRules.SYNTAX, smooth
                    ? "A controller that smooths does so at some pace, and none is given" : "A controller that jumps does so at once, and has no pace")
                    .found(smooth ? "nothing" : Sources.text(field.get().getQuantity()), smooth ? "a pace in ppm" : "nothing more")
                    .remedy("write relock smooth 5000 ppm, or relock jump").at(compilation.sources().whole(field.get()));
            return Optional.empty();
        }
        return compilation.quantities().si(field.get().getQuantity(), Range.SMOOTHING);
    }

    private FiringSystem.Join join(Block block) {
        Optional<String> word = block.field("join", WordField.class)
                .flatMap(field -> Choices.word(compilation, field, List.of("series", "parallel")));
        return word.filter("parallel"::equals).isPresent() ? FiringSystem.Join.PARALLEL : FiringSystem.Join.SERIES;
    }

    private static Optional<String> named(Named named) {
        return Optional.ofNullable(named.getName());
    }
}
