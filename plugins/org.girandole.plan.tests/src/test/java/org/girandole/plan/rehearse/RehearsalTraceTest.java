package org.girandole.plan.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalLong;
import org.girandole.plan.rehearse.RehearsalTrace.Sample;
import org.girandole.timecode.FrameRate;
import org.junit.jupiter.api.Test;

/** The course of a night as it is drawn, worked out by hand. 25 frames a second: a frame is 40 ms. */
class RehearsalTraceTest {
    private static final long S = 1_000_000;

    private static RehearsalTrace trace(OwnClock clock, double slewPpm, long untilUs) {
        Signal signal = new Signal(FrameRate.FPS_25, -60 * S, List.of(new Signal.Run(-60 * S, 100 * S, 0), new Signal.Run(199 * S, 300 * S, 0)));
        Night night = new Night(List.of(), signal, HoldToFire.ALWAYS_PRESSED, OptionalLong.empty(), 0, 400 * S);
        return RehearsalTrace.of(Rehearsing.of(night, new ControllerModel(1, 25, 10, clock, 0, slewPpm, 0, 0, 1)), untilUs);
    }

    @Test
    void growsInHoldoverAndJumpsAtTheLock() {
        // Alone from 100 s to the lock at 200 s: 100 s x 30 ppm = 3 ms.
        List<Sample> samples = trace(new OwnClock(30, 0), 0, 250 * S).samples();

        assertThat(samples).contains(new Sample(100 * S, ControllerState.LOCKED, OptionalLong.of(0)),
                new Sample(100 * S + 400_000, ControllerState.HOLDOVER, OptionalLong.of(12)),
                new Sample(200 * S, ControllerState.LOCKED, OptionalLong.of(3000)), new Sample(200 * S, ControllerState.LOCKED, OptionalLong.of(0)));
        assertThat(samples.get(0)).isEqualTo(new Sample(-61 * S, ControllerState.NO_SIGNAL, OptionalLong.empty()));
        assertThat(samples.get(samples.size() - 1)).isEqualTo(new Sample(250 * S, ControllerState.LOCKED, OptionalLong.of(0)));
        assertThat(trace(new OwnClock(30, 0), 0, 250 * S).worst().clockErrorUs()).hasValue(3000);
    }

    @Test
    void bendsWhereTheDifferenceIsMadeGood() {
        // 3 ms at 1000 ppm: 3 s.
        assertThat(trace(new OwnClock(-30, 0), 1000, 250 * S).samples()).contains(new Sample(200 * S, ControllerState.LOCKED, OptionalLong.of(-3000)),
                new Sample(203 * S, ControllerState.LOCKED, OptionalLong.of(0)));
    }

    @Test
    void endsInsideOfAStretch() {
        List<Sample> samples = trace(new OwnClock(30, 0), 0, 150 * S).samples();
        assertThat(samples.get(samples.size() - 1)).isEqualTo(new Sample(150 * S, ControllerState.HOLDOVER, OptionalLong.of(1500)));
    }
}
