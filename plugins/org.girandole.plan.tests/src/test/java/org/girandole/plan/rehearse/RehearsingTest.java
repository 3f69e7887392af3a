package org.girandole.plan.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.Signal.Run;
import org.girandole.timecode.FrameRate;
import org.junit.jupiter.api.Test;

/** Nights whose outcome can be worked out by hand. All at 25 frames a second: a frame is 40 ms. */
class RehearsingTest {
    private static final long S = 1_000_000;
    private static final OwnClock PERFECT = new OwnClock(0, 0);
    private static final ControllerModel MODEL = model(PERFECT, 0, 100_000);

    private static ControllerModel model(OwnClock clock, double slewPpm, long lateUs) {
        return new ControllerModel(1, 5, 10, clock, 0, slewPpm, lateUs, 0, 1);
    }

    private static Night night(List<Run> runs, HoldToFire hold, long... dues) {
        List<Night.Due> cues = new ArrayList<>();
        LongStream.of(dues).forEach(due -> cues.add(new Night.Due("due " + due, due)));
        return new Night(cues, new Signal(FrameRate.FPS_25, -60 * S, runs), hold, OptionalLong.empty(), 0, 4000 * S);
    }

    private static Run run(long fromS, long toS) {
        return new Run(fromS * S, toS * S, 0);
    }

    private static List<End> ends(RehearsalLog log) {
        return log.cues().stream().map(CueOutcome::end).toList();
    }

    @Test
    void thirtyPpmForThreeHundredSecondsAreNineMilliseconds() {
        // Arithmetic: 300 s x 30e-6 = 9 ms.
        assertThat(new OwnClock(30, 0).errorUs(300 * S)).isEqualTo(9000);

        Night night = night(List.of(run(-60, 10)), HoldToFire.ALWAYS_PRESSED, 310 * S + 9000);
        CueOutcome fast = Rehearsing.of(night, model(new OwnClock(30, 0), 0, 0)).cues().get(0);
        assertThat(fast.firedUs()).hasValue(310 * S);
        assertThat(fast.lateUs()).hasValue(-9000);
        assertThat(fast.boundUs()).isEqualTo(9000);

        Night slowNight = night(List.of(run(-60, 10)), HoldToFire.ALWAYS_PRESSED, 310 * S - 9000);
        assertThat(Rehearsing.of(slowNight, model(new OwnClock(-30, 0), 0, 0)).cues().get(0).lateUs()).hasValue(9000);
    }

    @Test
    void ageingBendsTheError() {
        // D t^2 / 2 with D = 0.1 ppm a day and t = one day: 0.05e-6 x 86 400 s = 4.32 ms. Form of ITU-T G.810, from memory.
        assertThat(new OwnClock(0, 0.1).errorUs(86_400 * S)).isEqualTo(4320);
        assertThat(new OwnClock(-2, 0.1).errorUs(86_400 * S)).isEqualTo(4320 - 172_800);
    }

    @Test
    void closedFormAndSimulationAgreeToTheMicrosecond() {
        for (double ppm : new double[] {-100, -30, -0.5, 0, 0.5, 25, 100}) {
            for (double ageing : new double[] {-5, 0, 5}) {
                OwnClock clock = new OwnClock(ppm, ageing);
                for (long elapsed = S; elapsed < 3600 * S; elapsed += 97 * S) {
                    // The code ends at 10 s; the due time is what the clock reads after this long.
                    long due = 10 * S + elapsed + clock.errorUs(elapsed);
                    CueOutcome cue = Rehearsing.of(night(List.of(run(-60, 10)), HoldToFire.ALWAYS_PRESSED, due), model(clock, 0, 0)).cues().get(0);
                    assertThat(cue.lateUs().getAsLong()).isCloseTo(-clock.errorUs(elapsed), within(1L));
                }
            }
        }
    }

    @Test
    void tellsHowLongTheClockMayGoOn() {
        // 100 ms / 25 ppm = 4000 s.
        assertThat(new OwnClock(25, 0).withinUs(100_000)).isEqualTo(4000 * S);
        assertThat(new OwnClock(-25, 0).withinUs(100_000)).isEqualTo(4000 * S);
        assertThat(new OwnClock(0, 0).withinUs(100_000)).isEqualTo(Long.MAX_VALUE);
        // sqrt(2 x 4.32 ms / 0.1 ppm a day) = one day.
        assertThat(new OwnClock(0, 0.1).withinUs(4320)).isCloseTo(86_400 * S, within(1L));
        OwnClock turning = new OwnClock(10, -50);
        assertThat(turning.errorUs(turning.withinUs(8000))).isCloseTo(8000, within(1L));
        assertThat(turning.errorUs(turning.withinUs(80_000))).isCloseTo(80_000, within(1L));
        assertThat(turning.errorUs(turning.withinUs(100_000))).isCloseTo(-100_000, within(1L));
    }

    @Test
    void saysItsStatesWhenTheyAreDue() {
        RehearsalLog log = Rehearsing.of(night(List.of(run(-60, 10), run(35, 250)), HoldToFire.ALWAYS_PRESSED), MODEL);

        // First frame read after 40 ms, the fifth after 200 ms, silence noticed after ten frames, 400 ms.
        assertThat(log.states()).containsExactly(new StateChange(-61 * S, ControllerState.NO_SIGNAL),
                new StateChange(-60 * S + 40_000, ControllerState.ACQUIRING), new StateChange(-60 * S + 200_000, ControllerState.LOCKED),
                new StateChange(10 * S + 400_000, ControllerState.HOLDOVER), new StateChange(35 * S + 40_000, ControllerState.ACQUIRING),
                new StateChange(35 * S + 200_000, ControllerState.LOCKED), new StateChange(250 * S + 400_000, ControllerState.HOLDOVER));
    }

    @Test
    void staysLockedThroughAShortGapThatCountsOn() {
        Signal.Run after = new Run(10 * S + 200_000, 20 * S, 0);
        assertThat(Rehearsing.of(night(List.of(run(-60, 10), after), HoldToFire.ALWAYS_PRESSED), MODEL).states()).hasSize(4);
        Signal.Run jumped = new Run(10 * S, 20 * S, 5 * S);
        assertThat(Rehearsing.of(night(List.of(run(-60, 10), jumped), HoldToFire.ALWAYS_PRESSED), MODEL).states())
                .contains(new StateChange(10 * S + 40_000, ControllerState.ACQUIRING));
    }

    @Test
    void cutFramesAreNotRead() {
        RehearsalLog log = Rehearsing.of(night(List.of(new Run(10_000, 20 * S + 10_000, 0)), HoldToFire.ALWAYS_PRESSED), MODEL);
        assertThat(log.states().get(1)).isEqualTo(new StateChange(80_000, ControllerState.ACQUIRING));
        assertThat(log.states().get(3)).isEqualTo(new StateChange(20 * S + 400_000, ControllerState.HOLDOVER));
    }

    @Test
    void withoutLockNothingIsFired() {
        Run fourFrames = new Run(0, 160_000, 0);
        assertThat(ends(Rehearsing.of(night(List.of(fourFrames), HoldToFire.ALWAYS_PRESSED, 0, S, 100 * S), MODEL)))
                .containsOnly(End.SKIPPED);
        assertThat(ends(Rehearsing.of(night(List.of(), HoldToFire.ALWAYS_PRESSED, 0, S), MODEL))).containsOnly(End.SKIPPED);
    }

    @Test
    void lateLockSkipsWhatIsOlderThanTheTolerance() {
        // Locked at 12.2 s; 100 ms late are allowed.
        Night night = night(List.of(run(12, 30)), HoldToFire.ALWAYS_PRESSED, 11 * S, 12 * S + 99_999, 12 * S + 100_000, 12 * S + 200_000, 13 * S);
        RehearsalLog log = Rehearsing.of(night, MODEL);
        assertThat(ends(log)).containsExactly(End.SKIPPED, End.SKIPPED, End.FIRED, End.FIRED, End.FIRED);
        assertThat(log.cues().get(2).lateUs()).hasValue(100_000);
        assertThat(log.cues().get(3).lateUs()).hasValue(0);
    }

    @Test
    void releasedCuesAreHeldBackAndNotFiredLater() {
        HoldToFire hold = new HoldToFire(List.of(new Window(182 * S, 185 * S)));
        RehearsalLog log = Rehearsing.of(night(List.of(run(-60, 250)), hold, 182 * S - 1, 182 * S, 185 * S - 1, 185 * S), MODEL);
        assertThat(ends(log)).containsExactly(End.FIRED, End.SUPPRESSED, End.SUPPRESSED, End.FIRED);
    }

    @Test
    void aJumpBackFiresNothingTwice() {
        // At 60 s the code goes back to 30 s.
        Night night = night(List.of(run(-60, 60), new Run(60 * S, 120 * S, -30 * S)), HoldToFire.ALWAYS_PRESSED, 40 * S, 50 * S, 70 * S);
        RehearsalLog log = Rehearsing.of(night, MODEL);
        assertThat(log.cues()).extracting(cue -> cue.firedUs().getAsLong()).containsExactly(40 * S, 50 * S, 100 * S);
        assertThat(log.cues().get(2).lateUs()).hasValue(30 * S);
    }

    @Test
    void aJumpForwardSkipsUnlessTheCodeComesBack() {
        // At 60 s it reads 90 s; lock on it at 60.2 s, reading 90.2 s.
        Run forward = new Run(60 * S, 70 * S, 30 * S);
        Night gone = night(List.of(run(-60, 60), forward), HoldToFire.ALWAYS_PRESSED, 59 * S, 75 * S, 95 * S);
        assertThat(ends(Rehearsing.of(gone, MODEL))).containsExactly(End.FIRED, End.SKIPPED, End.FIRED);
        assertThat(Rehearsing.of(gone, MODEL).cues().get(2).lateUs()).hasValue(-30 * S);
        Night back = night(List.of(run(-60, 60), forward, run(70, 100)), HoldToFire.ALWAYS_PRESSED, 59 * S, 75 * S, 95 * S);
        assertThat(ends(Rehearsing.of(back, MODEL))).containsExactly(End.FIRED, End.FIRED, End.FIRED);
    }

    @Test
    void smoothingMakesGoodAtItsPace() {
        // 1000 ppm slow from 10 s to lock at 110.2 s: 100.2 ms behind. Made good at 10 000 ppm in 10.02 s.
        Night night = night(List.of(run(-60, 10), run(110, 200)), HoldToFire.ALWAYS_PRESSED, 115 * S, 120 * S, 121 * S);
        RehearsalLog log = Rehearsing.of(night, model(new OwnClock(-1000, 0), 10_000, 0));
        assertThat(log.cues().get(0).lateUs().getAsLong()).isCloseTo((long) (100_200 - 4_800_000 / 100.0 - 522), within(200L));
        assertThat(log.cues().get(2).lateUs()).hasValue(0);
        assertThat(ends(log)).containsOnly(End.FIRED);
    }

    @Test
    void linkAndMusicAreCounted() {
        ControllerModel linked = new ControllerModel(10_000, 5, 10, PERFECT, 0, 0, 0, 3000, 1);
        Night plain = night(List.of(run(-60, 100)), HoldToFire.ALWAYS_PRESSED, 5 * S, 6 * S + 1);
        Night late = new Night(plain.cues(), plain.signal(), plain.hold(), OptionalLong.empty(), 12 * S, plain.endUs());
        assertThat(Rehearsing.of(plain, linked).cues()).extracting(cue -> cue.lateUs().getAsLong()).containsExactly(3000L, 3000L + 9999);
        assertThat(Rehearsing.of(late, linked).cues().get(0).lateUs()).hasValue(3000 - 12 * S);
    }

    @Test
    void theBackupGoesOnFromItsOwnClock() {
        // Code ends at 10 s. The first controller is 500 ppm fast, the backup 500 ppm slow: 45 ms each at 100 s.
        Night night = new Night(List.of(new Night.Due("before", 99 * S), new Night.Due("just before", 100 * S + 20_000), new Night.Due("after", 101 * S)),
                new Signal(FrameRate.FPS_25, -60 * S, List.of(run(-60, 10))), HoldToFire.ALWAYS_PRESSED, OptionalLong.of(100 * S), 0, 200 * S);
        RehearsalLog log = Rehearsing.of(night, model(new OwnClock(500, 0), 0, 0), model(new OwnClock(-500, 0), 0, 0));
        assertThat(ends(log)).containsOnly(End.FIRED);
        assertThat(log.cues()).extracting(cue -> cue.lateUs().getAsLong() > 0).containsExactly(false, false, true);
    }

    @Test
    void nonsenseIsRefusedInWords() {
        assertThatThrownBy(() -> new Window(5, 5)).isInstanceOf(RehearsalException.class).hasMessageContaining("end after its beginning");
        assertThatThrownBy(() -> new OwnClock(Double.NaN, 0)).isInstanceOf(RehearsalException.class);
        assertThatThrownBy(() -> new HoldToFire(List.of(new Window(0, 10), new Window(5, 20)))).isInstanceOf(RehearsalException.class);
        assertThatThrownBy(() -> new Signal(FrameRate.FPS_25, 0, List.of(run(0, 10), run(5, 20)))).isInstanceOf(RehearsalException.class);
    }
}
