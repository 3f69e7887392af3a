package org.girandole.plan.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.girandole.physics.Derivation;
import org.girandole.physics.Estimate;
import org.girandole.physics.Figures;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.sound.Sound;
import org.girandole.plan.Explanation;
import org.girandole.plan.Explanation.Step;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.Timing;
import org.girandole.plan.allocate.Field;
import org.girandole.plan.circuit.Circuits;
import org.girandole.plan.circuit.Load;
import org.girandole.plan.schedule.Bursts;
import org.girandole.plan.schedule.Calibres;
import org.girandole.plan.schedule.Delays;
import org.girandole.plan.schedule.MomentSteps;
import org.girandole.plan.schedule.SitePlan;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.TimecodeLine;

/**
 * Explains the cues of one plan. Everything is worked out from the plan and its script by the same code that made the plan; an instance
 * expands the script once and may serve many cues.
 */
public final class Explanations {
    private final Plan plan;
    private final MomentSteps moments;
    private final SitePlan site;
    private final Field field;
    private final Map<String, Derivation> circuits;

    public Explanations(Plan plan) {
        this.plan = plan;
        this.moments = MomentSteps.of(plan.script());
        this.site = new SitePlan(plan.script().site());
        this.field = new Field(plan.script());
        this.circuits = new Circuits(plan.script(), field)
                .derivations(plan.cues().stream().flatMap(cue -> Load.of(cue).stream()).toList());
    }

    /** One cue of a plan. For several cues of it make one instance. */
    public static Explanation of(Plan plan, PlannedCue cue) {
        return new Explanations(plan).of(cue);
    }

    /** The cues that a person may mean by these words: a key, else a number, else the name of a cue, else what is fired. */
    public static List<PlannedCue> find(Plan plan, String words) {
        for (Match match : Match.values()) {
            List<PlannedCue> found = plan.cues().stream().filter(cue -> match.means(words, cue)).toList();
            if (!found.isEmpty()) {
                return found;
            }
        }
        return List.of();
    }

    /** In which ways a cue can be named. */
    private enum Match {
        KEY, NUMBER, NAME, WHAT;

        boolean means(String words, PlannedCue cue) {
            return switch (this) {
                case KEY -> cue.key().equals(words);
                case NUMBER -> Integer.toString(cue.number()).equals(words);
                case NAME -> cue.cueName().filter(words::equals).isPresent();
                case WHAT -> cue.what().equals(words);
            };
        }
    }

    /** How the cue's times, its place in the sky and its circuit come about. */
    public Explanation of(PlannedCue cue) {
        List<Step> steps = new ArrayList<>(moments.of(cue.key()));
        rise(cue, steps);
        burst(cue, steps);
        sound(cue, steps);
        fire(cue, steps);
        timecode(cue, steps);
        tolerance(cue, steps);
        items(cue, steps);
        hardware(cue, steps);
        return new Explanation("Cue " + cue.number() + ", " + cue.label() + " at " + cue.position() + ", " + cue.soundtrack() + " in slot "
                + cue.slot() + " (" + cue.key() + ")", steps);
    }

    private void rise(PlannedCue cue, List<Step> steps) {
        Timing timing = cue.timing();
        Effect effect = cue.effect();
        String value = Times.seconds(timing.riseUs() - timing.leadUs()) + " +- " + Times.seconds(timing.riseToleranceUs());
        switch (timing.riseSource()) {
            case LOT -> steps.add(new Step("rise", "measured on lot " + cue.lot().orElse(""), "", value, lotSource(cue)));
            case CATALOGUE -> steps.add(new Step("rise", "catalogue, " + effect.name(), "", value, effect.source().toString()));
            case ESTIMATED -> {
                Estimate estimate = Estimates.riseUs(Calibres.millimetres(effect.calibreM().orElseThrow()));
                steps.add(new Step("rise", "ESTIMATED from the calibre of " + millimetres(effect.calibreM().get()) + " ("
                        + Times.seconds(Math.round(estimate.least())) + " to " + Times.seconds(Math.round(estimate.most())) + ")", "", value,
                        estimate.source()));
            }
            case NONE -> steps.add(new Step("rise", "seen as it is fired", "", value, effect.source().toString()));
        }
        cue.chain().ifPresent(chain -> steps.add(new Step("lead", "chain " + chain.name() + ", firing to first item", "",
                Times.seconds(chain.leadUs()), chain.source().toString())));
    }

    private String lotSource(PlannedCue cue) {
        return plan.script().lots().stream()
                .filter(lot -> lot.effect().equals(cue.effect().name()) && cue.lot().filter(lot.name()::equals).isPresent())
                .findFirst().map(Lot::source).map(Object::toString).orElse("");
    }

    private void burst(PlannedCue cue, List<Step> steps) {
        Optional<Point> from = site.position(cue.position());
        if (cue.burst().isEmpty() || from.isEmpty()) {
            return;
        }
        Effect effect = cue.effect();
        if (effect.apexM().isPresent()) {
            steps.add(new Step("apex", "catalogue, " + effect.name(), "", metres(effect.apexM().get()), effect.source().toString()));
        } else {
            Bursts.estimatedApex(effect).ifPresent(estimate -> steps.add(new Step("apex", "ESTIMATED from the calibre of "
                    + millimetres(effect.calibreM().orElseThrow()), "", metres(estimate.value()), estimate.source())));
        }
        Point at = cue.burst().get().at();
        double tilt = cue.aim().tiltDeg();
        if (tilt != 0) {
            double t = (cue.timing().riseUs() - cue.timing().leadUs()) / 1e6;
            double apex = Bursts.apexM(effect).orElseThrow();
            double v0 = apex / t + Bursts.G * t / 2;
            double angle = Math.abs(tilt);
            steps.add(new Step("v0", "apex / rise + g rise / 2",
                    Figures.of(apex) + " / " + Figures.of(t) + " + 9.80665 * " + Figures.of(t) + " / 2", Figures.of(v0) + " m/s",
                    "point mass without drag"));
            steps.add(new Step("aside", "v0 sin(tilt) rise", Figures.of(v0) + " * sin(" + Figures.of(angle) + " deg) * " + Figures.of(t),
                    metres(Math.hypot(at.xM() - from.get().xM(), at.yM() - from.get().yM())),
                    "towards " + Figures.of(cue.aim().bearingDeg()) + " deg"));
            steps.add(new Step("height", "v0 cos(tilt) rise - g rise^2 / 2", Figures.of(v0) + " * cos(" + Figures.of(angle) + " deg) * "
                    + Figures.of(t) + " - 9.80665 * " + Figures.of(t) + "^2 / 2", metres(at.zM() - from.get().zM()), "point mass without drag"));
        }
        steps.add(new Step("burst", "place of " + cue.position() + ", moved aside, raised", "", point(at),
                cue.burst().get().estimated() ? "ESTIMATED" : ""));
    }

    private void sound(PlannedCue cue, List<Step> steps) {
        Timing timing = cue.timing();
        Optional<Point> from = site.position(cue.position());
        if (timing.mode() != Timing.SeenMode.HEARD || from.isEmpty()) {
            return;
        }
        Point source = cue.burst().map(PlannedCue.Burst::at).orElse(from.get());
        site.listening(from.get()).ifPresent(ear -> {
            steps.add(new Step("listening point", "", "", point(ear), plan.script().site().filter(s -> s.listening().isPresent())
                    .map(s -> s.source().toString()).orElse("middle of the nearest audience line")));
            steps.add(new Step("d", "distance from burst to listening point", "sqrt((" + Figures.of(source.xM()) + " - "
                    + Figures.of(ear.xM()) + ")^2 + (" + Figures.of(source.yM()) + " - " + Figures.of(ear.yM()) + ")^2 + ("
                    + Figures.of(source.zM()) + " - " + Figures.of(ear.zM()) + ")^2)", metres(timing.soundDistanceM()), ""));
        });
        double airC = site.airC().orElse(Delays.STANDARD_AIR_C);
        double speed = Sound.speedMps(airC);
        steps.add(new Step("c", "sqrt(1.4 * 287.05287 * (air + 273.15))", "sqrt(1.4 * 287.05287 * " + Figures.of(airC + 273.15) + ")",
                Figures.of(speed) + " m/s", site.airC().isPresent() ? "ideal gas, constants of ISO 2533"
                        : "ideal gas, constants of ISO 2533; ASSUMED air of 15 degC"));
        steps.add(new Step("sound", "d / c", Figures.of(timing.soundDistanceM()) + " / " + Figures.of(speed),
                Times.seconds(timing.soundUs()), ""));
    }

    private void fire(PlannedCue cue, List<Step> steps) {
        Timing timing = cue.timing();
        Optional<FiringSystem> system = plan.script().firingSystem();
        String systemSource = system.map(s -> s.source().toString()).orElse("no firing system: counts as nought");
        steps.add(new Step("latency", "firing system", "", Times.seconds(timing.latencyUs()), systemSource));
        boolean heard = timing.mode() == Timing.SeenMode.HEARD;
        String formula = (heard ? "heard" : "seen") + " - rise" + (cue.chain().isPresent() ? " - lead" : "") + " - latency"
                + (heard ? " - sound" : "");
        String numbers = Times.seconds(timing.seenUs()) + " - " + Times.seconds(timing.riseUs() - timing.leadUs())
                + (cue.chain().isPresent() ? " - " + Times.seconds(timing.leadUs()) : "") + " - " + Times.seconds(timing.latencyUs())
                + (heard ? " - " + Times.seconds(timing.soundUs()) : "");
        steps.add(new Step("due", formula, numbers, Times.seconds(timing.fireUs() - timing.roundingUs()), ""));
        steps.add(new Step("fire", "due, to the nearest step of " + Times.millis(system.flatMap(FiringSystem::stepUs).orElse(0L))
                + ", half up", "", Times.seconds(timing.fireUs()) + " (" + Times.exactClock(timing.fireUs()) + "; rounding "
                        + Times.millis(timing.roundingUs()) + ")",
                systemSource));
    }

    private void timecode(PlannedCue cue, List<Step> steps) {
        Optional<TimecodeLine> line = plan.soundtracks().stream().filter(track -> track.slot() == cue.slot()).findFirst()
                .flatMap(PlannedSoundtrack::line);
        if (line.isEmpty()) {
            return;
        }
        FrameRate rate = line.get().rate();
        line.get().momentAt(cue.timing().fireUs()).ifPresentOrElse(moment -> {
            steps.add(new Step("frame", "whole part of (pre-roll + fire) * rate",
                    "(" + Times.seconds(line.get().prerollUs()) + " + " + Times.seconds(cue.timing().fireUs()) + ") * "
                            + rate.numerator() + (rate.denominator() == 1 ? "" : " / " + rate.denominator()),
                    Long.toString(moment.frame()), rate.toString()));
            steps.add(new Step("timecode", "start + frame", line.get().start() + " + " + moment.frame() + " frames",
                    moment.label().toString(), "SMPTE ST 12-1" + (rate.dropFrame()
                            ? ": labels ;00 and ;01 are left out each minute but every tenth" : "")));
        }, () -> steps.add(new Step("timecode", "none: fired before the timecode begins", "", "-", "")));
    }

    private void tolerance(PlannedCue cue, List<Step> steps) {
        Timing timing = cue.timing();
        boolean chain = cue.chain().isPresent();
        steps.add(new Step("tolerance", "rise tolerance + step / 2" + (chain ? " + links * gap tolerance" : ""),
                Times.millis(timing.riseToleranceUs()) + " + " + Times.millis(timing.stepToleranceUs())
                        + (chain ? " + " + Times.millis(timing.chainToleranceUs()) : ""),
                Times.millis(timing.toleranceUs()), "worst case"));
    }

    private void items(PlannedCue cue, List<Step> steps) {
        if (cue.chain().isEmpty()) {
            return;
        }
        Chain chain = cue.chain().get();
        String gap = Times.seconds(chain.gap().valueUs());
        String first = Times.seconds(cue.timing().fireUs()) + " + " + Times.seconds(cue.timing().latencyUs()) + " + "
                + Times.seconds(chain.leadUs());
        String rise = Times.seconds(cue.timing().riseUs() - cue.timing().leadUs());
        steps.add(new Step("gap", "chain " + chain.name(), "", gap + " +- " + Times.seconds(chain.gap().plusMinusUs()),
                chain.source().toString()));
        for (PlannedCue.Item item : cue.items()) {
            String name = "item " + (item.index() + 1);
            steps.add(new Step(name + " lit", "fire + latency + lead + " + item.index() + " gaps", first + " + " + item.index() + " * " + gap,
                    Times.seconds(item.lightUs()), ""));
            steps.add(new Step(name + " seen", "lit + rise", Times.seconds(item.lightUs()) + " + " + rise,
                    Times.seconds(item.seenUs()) + " +- " + Times.millis(item.toleranceUs()) + " (worst case; root-sum-square "
                            + Times.millis(item.toleranceRssUs()) + ")",
                    Times.millis(cue.timing().riseToleranceUs()) + " + " + item.index() + " * " + Times.millis(chain.gap().plusMinusUs())));
        }
    }

    private void hardware(PlannedCue cue, List<Step> steps) {
        cue.tube().ifPresent(tube -> steps.add(new Step("tube", "rack " + tube.rack() + (cue.pieces() > 1 ? ", from tube" : ", tube"), "",
                tube.tube() + (cue.pieces() > 1 ? " to " + (tube.tube() + cue.pieces() - 1) : ""), tube.byHand() ? "written by hand" : "allocated")));
        cue.pin().ifPresent(pin -> steps.add(new Step("pin", "module " + pin.module() + ", pin", "", Integer.toString(pin.pin()),
                pin.byHand() ? "written by hand" : "allocated")));
        Optional<Field.Stand> stand = cue.pin().flatMap(pin -> field.module(pin.module()));
        Optional<Derivation> circuit = Optional.ofNullable(circuits.get(cue.key()));
        if (stand.isEmpty() || circuit.isEmpty()) {
            return;
        }
        Optional<Rack> rack = cue.tube().flatMap(tube -> field.rack(tube.rack()));
        FiringSystem system = plan.script().firingSystem().orElseThrow();
        steps.add(new Step("lead wire", "straight line * (1 + slack) + slack",
                Figures.of(field.straightM(stand.get(), cue.position(), rack)) + " * " + Figures.of(1 + system.slackFraction()) + " + "
                        + Figures.of(system.slackM()),
                metres(field.leadM(stand.get(), cue.position(), rack)), system.source().toString()));
        circuit.get().steps().forEach(step -> steps.add(new Step(step.symbol(), step.formula(), step.substituted(),
                Figures.of(step.value()) + (step.unit().isEmpty() ? "" : " " + step.unit()), step.source())));
        cue.circuit().ifPresent(c -> steps.add(new Step("meter", "R_lead + R_igniters, with the tolerances of both", "",
                String.format(Locale.ROOT, "%.2f ohm (%.2f to %.2f ohm)", c.loopOhm(), c.loopMinOhm(), c.loopMaxOhm()),
                "lead +- " + Figures.of(100 * Circuits.LEAD_TOLERANCE) + " %, common practice, no source")));
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%.2f m", metres);
    }

    private static String millimetres(double metres) {
        return Figures.of(Calibres.millimetres(metres)) + " mm";
    }

    private static String point(Point point) {
        return String.format(Locale.ROOT, "(%.2f m, %.2f m, %.2f m)", point.xM(), point.yM(), point.zM());
    }
}
