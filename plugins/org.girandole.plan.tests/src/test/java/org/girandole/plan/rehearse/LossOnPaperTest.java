package org.girandole.plan.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.girandole.timecode.FrameRate;
import org.junit.jupiter.api.Test;

/** The formula for one loss of code, against arithmetic by hand and against the simulation. */
class LossOnPaperTest {
    private static final long S = 1_000_000;

    record Case(Signal signal, ControllerModel model, List<Night.Due> dues) {
    }

    @Test
    void byHand() {
        // 25 fps: the last frame ends at 130 s; 27 s alone at 30 ppm are 0.81 ms; locked again after 50 frames, at 157 s.
        Signal signal = new Signal(FrameRate.FPS_25, -60 * S, List.of(new Signal.Run(-60 * S, 130 * S, 0), new Signal.Run(155 * S, 250 * S, 0)));
        LossOnPaper slow = new LossOnPaper(signal, new ControllerModel(1, 50, 12, new OwnClock(-30, 0), 0, 0, 100_000, 0, 1));

        assertThat(slow.commandUs(120 * S)).hasValue(120 * S);
        // 20 s / (1 - 30e-6) = 20.0006 s.
        assertThat(slow.commandUs(150 * S)).hasValue(150 * S + 600);
        // The clock reads 156.99919 s when the lock comes: what is due in between is commanded then.
        assertThat(slow.commandUs(157 * S - 500)).hasValue(157 * S);
        assertThat(slow.commandUs(158 * S)).hasValue(158 * S);
        assertThat(slow.commandUs(-59 * S)).isEqualTo(OptionalLong.empty());
    }

    @Provide
    Arbitrary<Case> losses() {
        Arbitrary<OwnClock> clocks = Combinators.combine(Arbitraries.integers().between(-1000, 1000), Arbitraries.integers().between(-10, 10))
                .as((ppm, ageing) -> new OwnClock(ppm / 10.0, ageing));
        Arbitrary<ControllerModel> models = Combinators.combine(Arbitraries.of(1L, 10_000L), Arbitraries.integers().between(1, 100),
                Arbitraries.integers().between(1, 60), clocks, Arbitraries.of(0.0, 500.0, 20_000.0), Arbitraries.of(0L, 40_000L, 500_000L))
                .as((step, lock, loss, clock, slew, late) -> new ControllerModel(step, lock, loss, clock, 0, slew, late, 0, 1));
        Arbitrary<List<Night.Due>> dues = Arbitraries.longs().between(-60 * S, 400 * S).list().ofMinSize(1).ofMaxSize(8).map(all -> {
            List<Night.Due> cues = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                cues.add(new Night.Due("cue" + i, all.get(i)));
            }
            return cues;
        });
        Arbitrary<Signal> signals = Combinators.combine(Arbitraries.of(FrameRate.values()), Arbitraries.longs().between(-50 * S, 200 * S),
                Arbitraries.longs().between(5 * S, 90 * S)).as((rate, from, length) -> new Signal(rate, -60 * S,
                        List.of(new Signal.Run(-60 * S, from, 0), new Signal.Run(from + length, 300 * S, 0))));
        return Combinators.combine(signals, models, dues).as(Case::new);
    }

    @Property(tries = 30_000, edgeCases = EdgeCasesMode.NONE, seed = "20270622")
    void agreesWithTheSimulation(@ForAll("losses") Case each) {
        Night night = new Night(each.dues(), each.signal(), HoldToFire.ALWAYS_PRESSED, OptionalLong.empty(), 0, 500 * S);
        LossOnPaper paper = new LossOnPaper(each.signal(), each.model());

        for (CueOutcome cue : Rehearsing.of(night, each.model()).cues()) {
            OptionalLong command = paper.commandUs(cue.dueUs());
            assertThat(command.isPresent()).as("%s is commanded", cue).isEqualTo(cue.commandUs().isPresent());
            if (command.isPresent()) {
                // Both round to a microsecond, the error and the moment.
                assertThat(Math.abs(command.getAsLong() - cue.commandUs().getAsLong())).as("%s by formula %s", cue, command).isLessThanOrEqualTo(2);
            }
        }
    }
}
