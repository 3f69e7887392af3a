package org.girandole.plan.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Show;
import org.girandole.plan.Timing;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ScoreItem.Lean;
import org.junit.jupiter.api.Test;

/** fire = seen - rise - latency - sound + rounding. */
class DelaysTest {
    private final Show show = new Show();

    @Test
    void aShellIsFiredItsRiseAndTheLatencyEarlier() {
        show.add(show.cue(Show.clock(30_000_000), "Peony", "C").done());

        Timing timing = only(show.plan()).timing();

        // 30 - 2.4 - 0.005 = 27.595 s, rounded half up to 10 ms: 27.6 s
        assertThat(timing.fireUs()).isEqualTo(27_600_000);
        assertThat(timing.roundingUs()).isEqualTo(5_000);
        assertThat(timing.riseSource()).isEqualTo(Timing.RiseSource.CATALOGUE);
        assertThat(timing.toleranceUs()).isEqualTo(150_000 + 5_000);
        // pre-roll of one minute: 1:27.600 after 10:00:00:00 at 25 fps
        assertThat(only(show.plan()).timecode().orElseThrow()).hasToString("10:01:27:15");
    }

    @Test
    void roundingIsHalfUpOnBothSidesOfTheFirstNote() {
        assertThat(Delays.roundedToStep(14_999, 10_000)).isEqualTo(10_000);
        assertThat(Delays.roundedToStep(15_000, 10_000)).isEqualTo(20_000);
        assertThat(Delays.roundedToStep(-15_000, 10_000)).isEqualTo(-10_000);
        assertThat(Delays.roundedToStep(-15_001, 10_000)).isEqualTo(-20_000);
        assertThat(Delays.roundedToStep(7, 1)).isEqualTo(7);
    }

    @Test
    void theRiseMeasuredOnTheLotGoesBeforeTheCatalogue() {
        show.lots.add(new Lot("L1", "Peony", 2, Optional.of(new Measured(2_520_000, 100_000)), Show.at(60)));
        show.lots.add(new Lot("L2", "Peony", 1, Optional.empty(), Show.at(61)));
        show.lots.add(new Lot("L3", "Peony", 5, Optional.of(new Measured(2_000_000, 0)), Show.at(62)));
        for (int second = 10; second < 50; second += 10) {
            show.add(show.cue(Show.clock(second * 1_000_000L), "Peony", "C").done());
        }
        show.add(show.cue(Show.clock(1_000_000), "Peony", "A").from("L1").done());

        Plan plan = show.plan();

        // L1 has two: one is named by the cue at A, the other goes to the earliest of the rest; then L2, then L3
        assertThat(plan.cues()).extracting(cue -> cue.lot().orElseThrow()).containsExactly("L1", "L1", "L2", "L3", "L3");
        assertThat(plan.cues()).extracting(cue -> cue.timing().riseUs()).containsExactly(2_520_000L, 2_520_000L, 2_400_000L, 2_000_000L,
                2_000_000L);
        assertThat(plan.cues()).extracting(cue -> cue.timing().riseSource()).containsExactly(Timing.RiseSource.LOT,
                Timing.RiseSource.LOT, Timing.RiseSource.CATALOGUE, Timing.RiseSource.LOT, Timing.RiseSource.LOT);
    }

    @Test
    void aChainIsDrawnFromOneLot() {
        show.lots.add(new Lot("Small", "Peony", 3, Optional.empty(), Show.at(60)));
        show.lots.add(new Lot("Large", "Peony", 9, Optional.empty(), Show.at(61)));
        show.chains.add(new Chain("Run", "Run", "Peony", 8, new Measured(250_000, 20_000), 100_000, Show.at(62)));
        show.add(show.cue(Show.clock(10_000_000), "Run", "C").done(), show.cue(Show.clock(20_000_000), "Peony", "C").done());

        assertThat(show.plan().cues()).extracting(cue -> cue.lot().orElseThrow()).containsExactly("Large", "Small");
    }

    @Test
    void aMissingRiseIsEstimatedForShellsAndMarked() {
        // 4 in = 101.6 mm: 3.5 s, common practice without a published source
        show.effects.add(Show.effect("Bare", EffectKind.SHELL, Optional.of(0.1016), Optional.empty(), Optional.empty()));
        show.effects.add(Show.effect("Unknown", EffectKind.SHELL, Optional.empty(), Optional.empty(), Optional.empty()));
        show.effects.add(Show.effect("Spray", EffectKind.FOUNTAIN, Optional.empty(), Optional.empty(), Optional.empty()));
        show.add(show.cue(Show.clock(10_000_000), "Bare", "C").done(), show.cue(Show.clock(20_000_000), "Unknown", "C").done(),
                show.cue(Show.clock(30_000_000), "Spray", "C").done());

        Plan plan = show.plan();

        assertThat(plan.cues()).extracting(PlannedCue::what).containsExactly("Bare", "Spray");
        assertThat(plan.cues().get(0).timing().riseUs()).isEqualTo(3_500_000);
        assertThat(plan.cues().get(0).timing().riseSource()).isEqualTo(Timing.RiseSource.ESTIMATED);
        assertThat(plan.cues().get(0).burst().orElseThrow().estimated()).isTrue();
        assertThat(plan.cues().get(1).timing().riseUs()).isZero();
        assertThat(plan.cues().get(1).timing().riseSource()).isEqualTo(Timing.RiseSource.NONE);
        assertThat(plan.troubles()).anySatisfy(f -> assertThat(f.rule()).isEqualTo("rise-missing"));
    }

    @Test
    void whatIsHeardIsFiredEarlierByTheWayOfTheSound() {
        // Burst 120 m above a place 150 m from the listener: 192.094 m; at 20 degC sound runs 343.234 m/s (ideal gas, ISO 2533
        // constants): 0.5597 s.
        show.listening = Optional.of(new Point(0, -150));
        show.effects.add(Show.effect("Bang", EffectKind.SALUTE, Optional.of(0.075), Optional.of(new Measured(2_000_000, 0)),
                Optional.of(120.0)));
        show.add(show.cue(Show.clock(10_000_000), "Bang", "C").heard().done());

        Timing timing = only(show.plan()).timing();

        assertThat(timing.mode()).isEqualTo(Timing.SeenMode.HEARD);
        assertThat(timing.soundDistanceM()).isCloseTo(192.094, within(0.0005));
        assertThat(timing.soundUs()).isCloseTo(559_700, within(50L));
        assertThat(timing.fireUs())
                .isEqualTo(timing.seenUs() - timing.riseUs() - timing.latencyUs() - timing.soundUs() + timing.roundingUs());
    }

    @Test
    void withoutAListeningPointItIsTheMiddleOfTheNearestAudienceLine() {
        show.effects.add(Show.effect("Crack", EffectKind.MINE, Optional.of(0.075), Optional.empty(), Optional.empty()));
        show.add(show.cue(Show.clock(10_000_000), "Crack", "A").heard().done());

        // From A at (-60, 0) to the middle of the promenade at (0, -200); a mine bangs on the ground.
        assertThat(only(show.plan()).timing().soundDistanceM()).isCloseTo(Math.hypot(60, 200), within(1e-9));
    }

    @Test
    void whatIsHeardByNobodyKnowsWhomIsATrouble() {
        show.audience.clear();
        show.add(show.cue(Show.clock(10_000_000), "Peony", "C").heard().done());

        Plan plan = show.plan();

        assertThat(plan.cues()).isEmpty();
        assertThat(plan.troubles()).anySatisfy(f -> assertThat(f.rule()).isEqualTo("listening-missing"));
    }

    @Test
    void anUnknownAirTemperatureIsSaid() {
        show.airC = Optional.empty();
        show.add(show.cue(Show.clock(10_000_000), "Peony", "C").heard().done());

        assertThat(show.plan().troubles()).anySatisfy(f -> assertThat(f.rule()).isEqualTo("air-assumed"));
    }

    @Test
    void aChainGrowsInTimeAndTolerance() {
        show.chains.add(new Chain("Run", "Run", "Peony", 5, new Measured(250_000, 20_000), 100_000, Show.at(62)));
        show.add(show.cue(Show.clock(10_000_000), "Run", "C").done());

        PlannedCue cue = only(show.plan());

        // 10 - 2.4 - 0.1 - 0.005 = 7.495 s -> 7.5 s; the first item is then seen 5 ms late
        assertThat(cue.timing().fireUs()).isEqualTo(7_500_000);
        assertThat(cue.timing().riseUs()).isEqualTo(2_500_000);
        assertThat(cue.timing().leadUs()).isEqualTo(100_000);
        assertThat(cue.items()).extracting(PlannedCue.Item::lightUs).containsExactly(7_605_000L, 7_855_000L, 8_105_000L, 8_355_000L, 8_605_000L);
        assertThat(cue.items()).extracting(PlannedCue.Item::seenUs).containsExactly(10_005_000L, 10_255_000L, 10_505_000L, 10_755_000L,
                11_005_000L);
        assertThat(cue.items()).extracting(PlannedCue.Item::toleranceUs).containsExactly(150_000L, 170_000L, 190_000L, 210_000L, 230_000L);
        // sqrt(150^2 + 4 * 20^2) = sqrt(24100) = 155.242 ms
        assertThat(cue.items().get(4).toleranceRssUs()).isCloseTo(155_242, within(1L));
        assertThat(cue.timing().chainToleranceUs()).isEqualTo(80_000);
        // sqrt(4) * 20
        assertThat(cue.timing().chainToleranceRssUs()).isEqualTo(40_000);
        assertThat(cue.pieces()).isEqualTo(5);
    }

    @Test
    void withoutAFiringSystemNothingIsRounded() {
        show.system = Optional.empty();
        show.add(show.cue(Show.clock(10_000_001), "Peony", "C").done());

        Plan plan = show.plan();

        assertThat(only(plan).timing().fireUs()).isEqualTo(7_600_001);
    }

    @Test
    void aTubeLeansToTheRightAsTheAudienceSeesIt() {
        // The audience stands in the south and looks north: its right is the east.
        show.add(show.cue(Show.clock(10_000_000), "Peony", "C").tilt(10, Lean.SIDE).done(),
                show.cue(Show.clock(11_000_000), "Peony", "C").tilt(-10, Lean.SIDE).done(),
                show.cue(Show.clock(12_000_000), "Peony", "C").tilt(10, Lean.TOWARD_AUDIENCE).done(),
                show.cue(Show.clock(13_000_000), "Peony", "C").tilt(10, Lean.AWAY_FROM_AUDIENCE).done());

        Plan plan = show.plan();

        assertThat(plan.cues()).extracting(cue -> cue.aim().bearingDeg()).containsExactly(90.0, 270.0, 180.0, 0.0);
        assertThat(plan.cues().get(0).burst().orElseThrow().at().xM()).isPositive();
        assertThat(plan.cues().get(1).burst().orElseThrow().at().xM()).isNegative();
        assertThat(plan.cues().get(2).burst().orElseThrow().at().yM()).isNegative();
    }

    @Test
    void aFanIsSpreadEvenly() {
        show.effects.add(Show.effect("Comet", EffectKind.COMET, Optional.of(0.03), Optional.empty(), Optional.empty()));
        show.add(show.cue(Show.clock(10_000_000), "Comet", "C").times(5).fan(-20, 20).done(),
                show.cue(Show.clock(20_000_000), "Comet", "C").fan(-10, 30).done());

        assertThat(show.plan().cues()).extracting(cue -> cue.aim().tiltDeg()).containsExactly(-20.0, -10.0, 0.0, 10.0, 20.0, 10.0);
    }

    @Test
    void anAbsurdRiseIsATrouble() {
        show.effects.add(Show.shell("Slow", Long.MAX_VALUE, 0));
        show.add(show.cue(Show.clock(10_000_000), "Slow", "C").done());

        assertThat(show.plan().troubles()).anySatisfy(f -> assertThat(f.rule()).isEqualTo("moment-impossible"));
        assertThat(show.plan().cues()).isEqualTo(List.of());
    }

    private static PlannedCue only(Plan plan) {
        assertThat(plan.cues()).hasSize(1);
        return plan.cues().get(0);
    }
}
