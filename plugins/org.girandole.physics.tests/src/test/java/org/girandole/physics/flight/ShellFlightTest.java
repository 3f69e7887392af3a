package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.OptionalLong;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Point3;
import org.junit.jupiter.api.Test;

class ShellFlightTest {
    private static final Air AIR = new StandardAir(0, 15);
    private static final FlightModel CALM = new FlightModel(AIR, Wind.CALM);
    private static final Point3 ORIGIN = new Point3(0, 0, 0);

    @Test
    void everythingGiven() {
        var shell = ShellFlight.of(75, OptionalDouble.of(0.15), OptionalLong.of(2_400_000), OptionalDouble.of(105), AIR);
        assertThat(shell.estimated()).isEmpty();
        assertThat(shell.body().massKg()).isEqualTo(0.15);
        assertThat(CALM.at(shell.body(), shell.from(ORIGIN, 0, 0), shell.riseUs()).place().z()).isCloseTo(105, within(1e-6));
        assertThat(shell.derivation().result().value()).isEqualTo(shell.muzzleMps());
    }

    @Test
    void withoutARiseItBurstsAtTheTop() {
        var shell = ShellFlight.of(100, OptionalDouble.of(0.4), OptionalLong.empty(), OptionalDouble.of(120), AIR);
        assertThat(shell.estimated()).containsExactly("rise");
        var burst = CALM.at(shell.body(), shell.from(ORIGIN, 0, 0), shell.riseUs());
        assertThat(burst.place().z()).isCloseTo(120, within(1e-6));
        assertThat(burst.upMps()).isCloseTo(0, within(1e-4));
    }

    @Test
    void withNothingButACalibreAllIsNamed() {
        var shell = ShellFlight.of(125, OptionalDouble.empty(), OptionalLong.empty(), OptionalDouble.empty(), AIR);
        assertThat(shell.estimated()).containsExactly("mass", "burst height", "rise");
        assertThat(shell.burstM()).isEqualTo(Estimates.apexM(125).value());
        assertThat(shell.derivation().text()).contains("estimated (").contains("hanabi.co.jp");
    }

    @Test
    void aRiseThatDoesNotGoWithTheEstimatedHeightAsksForTheHeight() {
        assertThatThrownBy(() -> ShellFlight.of(75, OptionalDouble.empty(), OptionalLong.of(9_000_000), OptionalDouble.empty(), AIR))
                .isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("the height is estimated from the calibre, and a rise of 9 s")
                .hasMessageEndingWith("give the apex of the effect");
    }

    @Test
    void anImpossiblePairIsNamedAsItIs() {
        assertThatThrownBy(() -> ShellFlight.of(75, OptionalDouble.empty(), OptionalLong.of(9_000_000), OptionalDouble.of(60), AIR))
                .hasMessageStartingWith("a rise of 9 s to 60 m");
    }
}
