package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.girandole.timecode.FrameRate;

/** Nights at random: code that comes and goes and jumps, controls let go, clocks far worse than any that is sold. */
final class Nights {
    private static final long SECOND = 1_000_000;

    private Nights() {
    }

    /** A night and the controllers that go through it. */
    record Case(Night night, ControllerModel model, ControllerModel backup) {
        RehearsalLog log() {
            return Rehearsing.of(night, model, backup);
        }
    }

    private record Piece(long gapUs, long lengthUs, long offsetUs) {
    }

    static Arbitrary<Case> cases() {
        return Combinators.combine(nights(), models(), clocks()).as((night, model, clock) -> new Case(night, model, model.withClock(clock)));
    }

    private static Arbitrary<Night> nights() {
        Arbitrary<List<Long>> dues = micros(-5 * SECOND, 70 * SECOND).list().ofMaxSize(12);
        Arbitrary<List<Window>> released = Combinators.combine(micros(0, 20 * SECOND), micros(1, 8 * SECOND)).as(Window0::new)
                .list().ofMaxSize(3).map(Nights::windows);
        Arbitrary<OptionalLong> takeover = micros(-SECOND, 60 * SECOND).optional(0.3)
                .map(at -> at.map(OptionalLong::of).orElse(OptionalLong.empty()));
        Arbitrary<Long> music = Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(4, Arbitraries.just(0L)),
                net.jqwik.api.Tuple.of(1, micros(-15 * SECOND, 15 * SECOND)));
        return Combinators.combine(dues, signals(), released, takeover, music).as((at, signal, windows, backup, late) -> new Night(
                cues(at), signal, new HoldToFire(windows), backup, late, 90 * SECOND));
    }

    private record Window0(long gapUs, long lengthUs) {
    }

    private static List<Window> windows(List<Window0> gaps) {
        List<Window> windows = new ArrayList<>();
        long us = 0;
        for (Window0 gap : gaps) {
            windows.add(new Window(us + gap.gapUs(), us + gap.gapUs() + gap.lengthUs()));
            us += gap.gapUs() + gap.lengthUs();
        }
        return windows;
    }

    private static List<Night.Due> cues(List<Long> dues) {
        List<Night.Due> cues = new ArrayList<>();
        for (int i = 0; i < dues.size(); i++) {
            cues.add(new Night.Due("cue" + i, dues.get(i)));
        }
        return cues;
    }

    static Arbitrary<Signal> signals() {
        Arbitrary<Long> offset = Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(3, Arbitraries.just(0L)),
                net.jqwik.api.Tuple.of(1, micros(-SECOND / 20, SECOND / 20)), net.jqwik.api.Tuple.of(1, micros(-30 * SECOND, 30 * SECOND)));
        Arbitrary<Long> gap = Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(1, Arbitraries.just(0L)),
                net.jqwik.api.Tuple.of(2, micros(1, SECOND)), net.jqwik.api.Tuple.of(1, micros(1, 20 * SECOND)));
        Arbitrary<Long> length = Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(1, micros(1, SECOND)),
                net.jqwik.api.Tuple.of(2, micros(SECOND, 30 * SECOND)));
        Arbitrary<List<Piece>> pieces = Combinators.combine(gap, length, offset).as(Piece::new).list().ofMaxSize(6);
        return Combinators.combine(Arbitraries.of(FrameRate.values()), pieces, micros(-5 * SECOND, 10 * SECOND))
                .as((rate, all, beginUs) -> signal(rate, all, beginUs));
    }

    private static Signal signal(FrameRate rate, List<Piece> pieces, long beginUs) {
        List<Signal.Run> runs = new ArrayList<>();
        long us = beginUs;
        for (Piece piece : pieces) {
            runs.add(new Signal.Run(us + piece.gapUs(), us + piece.gapUs() + piece.lengthUs(), piece.offsetUs()));
            us += piece.gapUs() + piece.lengthUs();
        }
        return new Signal(rate, -60 * SECOND, runs);
    }

    static Arbitrary<ControllerModel> models() {
        return Combinators.combine(Arbitraries.of(1L, 1000L, 10_000L, 33_333L), Arbitraries.integers().between(1, 12),
                Arbitraries.integers().between(1, 30), clocks(), Arbitraries.of(0L, 0L, 100L, 2000L), Arbitraries.of(0.0, 500.0, 20_000.0),
                Arbitraries.of(0L, 40_000L, 500_000L), Arbitraries.longs().greaterOrEqual(0)).as((step, lock, loss, clock, jitter, slew, late,
                        seed) -> new ControllerModel(step, lock, loss, clock, jitter, slew, late, seed % 3 * 1500, seed));
    }

    private static Arbitrary<OwnClock> clocks() {
        return Combinators.combine(Arbitraries.integers().between(-5000, 5000), Arbitraries.integers().between(-10, 10))
                .as((ppm, ageing) -> new OwnClock(ppm / 10.0, ageing));
    }

    private static Arbitrary<Long> micros(long from, long to) {
        return Arbitraries.longs().between(from, to);
    }
}
