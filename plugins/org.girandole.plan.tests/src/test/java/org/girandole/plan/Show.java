package org.girandole.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowHeader;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TempoEntry;
import org.girandole.plan.script.TiltRange;
import org.girandole.plan.script.TimeExpr;
import org.girandole.plan.script.Wire;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;

/**
 * A small invented show to change in tests: one soundtrack at 120 bpm 4/4 from 0:02.000, five positions A to E in a row 30 m apart with the
 * audience 200 m to the south, one shell of 75 mm.
 */
public final class Show {
    public final List<Effect> effects = new ArrayList<>();
    public final List<Lot> lots = new ArrayList<>();
    public final List<Chain> chains = new ArrayList<>();
    public final List<TempoEntry> tempo = new ArrayList<>();
    public final List<Mark> marks = new ArrayList<>();
    public final List<ScoreItem> items = new ArrayList<>();
    public final List<Score.Section> sections = new ArrayList<>();
    public final List<Score.Hold> holds = new ArrayList<>();
    public final List<Site.Position> positions = new ArrayList<>();
    public final List<Site.Area> audience = new ArrayList<>();
    public final List<Module> modules = new ArrayList<>();
    public final List<ModuleType> moduleTypes = new ArrayList<>();
    public final List<Rack> racks = new ArrayList<>();
    public final List<Igniter> igniters = new ArrayList<>();
    public final List<Wire> wires = new ArrayList<>();
    public Optional<FrameRate> rate = Optional.of(FrameRate.FPS_25);
    public Optional<Double> airC = Optional.of(20.0);
    public Optional<Point> listening = Optional.empty();
    public Optional<FiringSystem> system = Optional.of(system(10_000, 5_000));
    private int line = 100;

    public Show() {
        tempo.add(new TempoEntry(Optional.of(2_000_000L), Optional.empty(), Rational.of(120), Optional.of(Meter.COMMON),
                Optional.empty(), at(1)));
        Stream.of("A", "B", "C", "D", "E").forEach(name -> positions.add(new Site.Position(name,
                new Point(30.0 * positions.size() - 60, 0), at(2))));
        audience.add(new Site.Area("Promenade", List.of(new Point(-150, -200), new Point(150, -200)), at(3)));
        effects.add(shell("Peony", 2_400_000, 150_000));
    }

    public static SourceRef at(int line) {
        return new SourceRef("test.show", line, 1, 10);
    }

    public static FiringSystem system(long stepUs, long latencyUs) {
        return new FiringSystem("Field", Optional.of(stepUs), Optional.of(latencyUs), Optional.empty(), Optional.empty(), 0, 0,
                Optional.empty(), FiringSystem.Join.SERIES, 1.5, at(4));
    }

    /** A system that lays this wire with this slack. */
    public static FiringSystem system(String wire, double slackM, double slackFraction, FiringSystem.Join join) {
        return new FiringSystem("Field", Optional.of(10_000L), Optional.of(0L), Optional.empty(), Optional.of(wire), slackM,
                slackFraction, Optional.of(20.0), join, 1.5, at(4));
    }

    public static Effect shell(String name, long riseUs, long plusMinusUs) {
        return effect(name, EffectKind.SHELL, Optional.of(0.075), Optional.of(new Measured(riseUs, plusMinusUs)), Optional.of(105.0));
    }

    public static Effect effect(String name, EffectKind kind, Optional<Double> calibreM, Optional<Measured> rise,
            Optional<Double> apexM) {
        return new Effect(name, name, kind, calibreM, rise, apexM, Optional.empty(), Optional.empty(), Optional.of(0.062),
                Optional.of("1.3G"), Optional.of("UN0335"), Optional.empty(), Optional.of("Standard"), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), kind == EffectKind.SALUTE, Optional.empty(), at(5));
    }

    public static TimeExpr clock(long us) {
        return new TimeExpr(new TimeExpr.AtClock(us), List.of(), at(6));
    }

    public static TimeExpr bar(int bar, String beat) {
        return new TimeExpr(new TimeExpr.AtBar(bar, Rational.parse(beat)), List.of(), at(6));
    }

    public static TimeExpr mark(String mark, TimeExpr.Step... steps) {
        return new TimeExpr(new TimeExpr.AtMark(mark), List.of(steps), at(6));
    }

    public static TimeExpr origin(TimeExpr.Step... steps) {
        return new TimeExpr(new TimeExpr.Origin(), List.of(steps), at(6));
    }

    public static TimeExpr.Step beats(String amount) {
        return new TimeExpr.Step(Rational.parse(amount), TimeExpr.StepUnit.BEAT);
    }

    public static TimeExpr.Step bars(String amount) {
        return new TimeExpr.Step(Rational.parse(amount), TimeExpr.StepUnit.BAR);
    }

    public static TimeExpr.Step us(long amount) {
        return new TimeExpr.Step(Rational.of(amount), TimeExpr.StepUnit.MICROSECOND);
    }

    public static TimeExpr.Step frames(long amount) {
        return new TimeExpr.Step(Rational.of(amount), TimeExpr.StepUnit.FRAME);
    }

    public static Duration every(TimeExpr.Step... steps) {
        return new Duration(List.of(steps), at(7));
    }

    /** A cue to add to {@link #items} or a section, on a line of its own. */
    public CueLine cue(TimeExpr at, String effect, String... places) {
        return new CueLine(at, effect, List.of(places), line++);
    }

    public Show add(ScoreItem... added) {
        items.addAll(List.of(added));
        return this;
    }

    public Show mark(String name, TimeExpr at) {
        marks.add(new Mark(name, at, at(50 + marks.size())));
        return this;
    }

    public Show section(String name, ScoreItem... inside) {
        sections.add(new Score.Section(name, name, clock(0), clock(60_000_000), List.of(inside), at(8)));
        return this;
    }

    /** A rack of equal tubes that can be set to any angle up to 30 degrees. */
    public Show rack(String name, String position, int tubes, double calibreM) {
        racks.add(new Rack(name, position, List.of(new Rack.TubeRun(tubes, calibreM, Optional.empty(), at(9))), Optional.of(0.14),
                new TiltRange(-30, 30), false, Optional.empty(), at(9)));
        return this;
    }

    /** A module without limits on time, of a type of its own. */
    public Show module(String name, int pins, String... serves) {
        return module(name, pins, Optional.empty(), Optional.empty(), serves);
    }

    public Show module(String name, int pins, Optional<Integer> atOnce, Optional<Long> gapUs, String... serves) {
        moduleTypes.add(new ModuleType("Type" + name, pins, Optional.of(24.0), Optional.of(0.0), Optional.empty(), Optional.of(1),
                atOnce, gapUs, Optional.of(0.01), Optional.empty(), 0, at(10)));
        modules.add(new Module(name, name, "Type" + name, List.of(serves), at(11)));
        return this;
    }

    public Soundtrack soundtrack() {
        return new Soundtrack("Tides", "Tides", Optional.empty(), Optional.of(250_000_000L), rate,
                rate.map(r -> Timecode.parse("10:00:00:00", r)), Optional.of(60_000_000L), tempo, marks, at(12));
    }

    public ShowScript script() {
        Site site = new Site("Quay", "Quay", positions, List.of(), audience, Optional.empty(), List.of(), Optional.empty(), airC,
                Optional.empty(), listening, at(13));
        ShowHeader header = new ShowHeader("Test", "Test", Optional.of(LocalDate.of(2027, 6, 19)), Optional.empty(), Optional.empty(),
                Optional.of("Quay"), Optional.of("Field"), Optional.empty(), Optional.empty(), at(14));
        return new ShowScript(header, List.of(soundtrack()), effects, lots, chains, Optional.of(site), igniters, wires, moduleTypes,
                modules, racks, system, List.of(new Score("Tides", 0, sections, items, holds, at(15))), List.of(), List.of(), List.of(), List.of(),
                Optional.empty(), List.of());
    }

    public Plan plan() {
        return new org.girandole.plan.schedule.Planner().plan(script());
    }

    /** A cue being written. */
    public static final class CueLine {
        private final TimeExpr at;
        private final String effect;
        private final List<String> places;
        private final int line;
        private Optional<String> name = Optional.empty();
        private ScoreItem.Distribution distribution = ScoreItem.Distribution.TOGETHER;
        private int count = 1;
        private Optional<String> lot = Optional.empty();
        private Optional<ScoreItem.Tilt> tilt = Optional.empty();
        private Optional<TiltRange> fan = Optional.empty();
        private boolean heard;
        private List<ScoreItem.PinRef> pins = List.of();
        private List<ScoreItem.TubeRef> tubes = List.of();

        private CueLine(TimeExpr at, String effect, List<String> places, int line) {
            this.at = at;
            this.effect = effect;
            this.places = places;
            this.line = line;
        }

        public CueLine named(String cueName) {
            name = Optional.of(cueName);
            return this;
        }

        public CueLine times(int shots) {
            count = shots;
            return this;
        }

        public CueLine spread(ScoreItem.Order order, TimeExpr.Step step) {
            distribution = new ScoreItem.Distribution(order, Optional.of(every(step)));
            return this;
        }

        public CueLine from(String lotName) {
            lot = Optional.of(lotName);
            return this;
        }

        public CueLine tilt(double deg, ScoreItem.Lean lean) {
            tilt = Optional.of(new ScoreItem.Tilt(deg, lean, Optional.empty()));
            return this;
        }

        public CueLine fan(double from, double to) {
            fan = Optional.of(new TiltRange(from, to));
            return this;
        }

        public CueLine heard() {
            heard = true;
            return this;
        }

        public CueLine pins(ScoreItem.PinRef... written) {
            pins = List.of(written);
            return this;
        }

        public CueLine tubes(ScoreItem.TubeRef... written) {
            tubes = List.of(written);
            return this;
        }

        public ScoreItem.Cue done() {
            return new ScoreItem.Cue(name, at, places, distribution, count, effect, lot, tilt, fan, heard, pins, tubes,
                    Optional.empty(), Show.at(line));
        }
    }
}
