package org.girandole.plan.fallout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.fallout.Debris;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.fallout.Scatter;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;

class FlightMemoryTest {
    private static final SiteAir AIR = new SiteAir(0, Optional.of(15.0));
    private static final Body SHELL = Body.sphere(0.25, 0.07);

    @Test
    void whatWasFlownIsNotFlownAgain() {
        FlightMemory memory = new FlightMemory();
        List<FalloutResult> first = memory.landed(wind(3), List.of(spec("a", 0), spec("b", 0)), 2);
        List<FalloutResult> again = memory.landed(wind(3), List.of(spec("b", 0), spec("c", 0), spec("a", 0)), 1);
        assertThat(again.get(0)).isSameAs(first.get(1));
        assertThat(again.get(2)).isSameAs(first.get(0));
        assertThat(again.get(1).spec().key()).isEqualTo("c");
        assertThat(again).isEqualTo(new FlightMemory().landed(wind(3), List.of(spec("b", 0), spec("c", 0), spec("a", 0)), 1));
    }

    @Test
    void anotherWindAnotherPlaceAndAnotherWatchedShapeAreFlownAnew() {
        FlightMemory memory = new FlightMemory();
        FalloutResult first = one(memory, wind(3), spec("a", 0));
        assertThat(one(memory, wind(4), spec("a", 0)).unburst()).isNotEqualTo(first.unburst());
        assertThat(one(memory, wind(3), spec("a", 10)).unburst()).isNotEqualTo(first.unburst());
        Conditions elsewhere = new Conditions(AIR, wind(3).wind(), List.of(), List.of(new Disc(new Point2(900, 900), 1)));
        assertThat(one(memory, elsewhere, spec("a", 0)).unburst().inWatched()).containsExactly(0.0);
        assertThat(first.unburst().inWatched().get(0)).isPositive();
    }

    @Test
    void whatWasNotAskedForLongestIsForgotten() {
        FlightMemory memory = new FlightMemory(1, 2);
        FalloutResult a = one(memory, wind(3), spec("a", 0));
        FalloutResult b = one(memory, wind(3), spec("b", 0));
        assertThat(one(memory, wind(3), spec("a", 0))).isSameAs(a);
        one(memory, wind(3), spec("c", 0));
        assertThat(one(memory, wind(3), spec("a", 0))).isSameAs(a);
        assertThat(one(memory, wind(3), spec("b", 0))).isNotSameAs(b).isEqualTo(b);
    }

    @Test
    void aShellThatCannotFlyIsRefusedEachTime() {
        FlightMemory memory = new FlightMemory();
        for (int i = 0; i < 2; i++) {
            assertThatThrownBy(() -> memory.speedFromRiseAndApex(SHELL, 60_000_000, 100, AIR)).isInstanceOf(PhysicsInputException.class)
                    .hasMessageContaining("a rise of 60 s to 100 m");
        }
        assertThat(memory.speedFromApex(SHELL, 100, AIR)).isEqualTo(new FlightMemory().speedFromApex(SHELL, 100, AIR))
                .isNotEqualTo(memory.speedFromApex(SHELL, 101, AIR));
    }

    @Test
    void theAirOfAWindIsBuiltOnce() {
        FlightMemory memory = new FlightMemory();
        assertThat(memory.in(wind(3))).isSameAs(memory.in(wind(3))).isNotSameAs(memory.in(wind(4)));
    }

    private static FalloutResult one(FlightMemory memory, Conditions conditions, FalloutSpec spec) {
        return memory.landed(conditions, List.of(spec), 1).get(0);
    }

    private static Conditions wind(double speedMps) {
        return new Conditions(AIR, Optional.of(new Conditions.Blowing(180, speedMps)), List.of(), List.of(new Disc(new Point2(0, 0), 40)));
    }

    private static FalloutSpec spec(String key, double eastM) {
        return new FalloutSpec(key, SHELL, new Launch(new Point3(eastM, 0, 0), 60, 0, 0), Optional.of(new Burst.After(2_400_000)),
                Optional.of(Debris.usual(60)), Scatter.USUAL);
    }
}
