package org.girandole.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;

import org.junit.jupiter.api.Test;

class DerivationTest {

    @Test
    void aStepReadsAsOneLine() {
        var step = new Derivation.Step("R", "rho L / A", "17.241 * 0.1 / 2.5", 0.68964, "ohm", "IEC 60028");
        assertThat(step.text()).isEqualTo("R = rho L / A = 17.241 * 0.1 / 2.5 = 0.68964 ohm [IEC 60028]");
    }

    @Test
    void aGivenValueHasNoEmptyPlaces() {
        assertThat(Derivation.builder().given("L", 50, "m", "lead").build().text()).isEqualTo("L = given = 50 m [lead]");
    }

    @Test
    void laterChangesOfTheListDoNotReachIt() {
        var steps = new java.util.ArrayList<>(List.of(new Derivation.Step("a", "given", "", 1, "", "")));
        var derivation = new Derivation(steps);
        steps.clear();
        assertThat(derivation.steps()).hasSize(1);
        assertThatThrownBy(() -> derivation.steps().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void figuresHaveADecimalPointInEveryLocaleAndNoExponent() {
        assertThat(Figures.of(0.1 + 0.2)).isEqualTo("0.3");
        assertThat(Figures.of(1234567.8)).isEqualTo("1234570");
        assertThat(Figures.of(0.000012345678)).isEqualTo("0.0000123457");
        assertThat(Figures.of(-0.0)).isEqualTo("0");
    }

    @Test
    void anErrorSaysFoundExpectedAndCure() {
        assertThatThrownBy(() -> Require.positive(-3, "calibre", "mm"))
                .isInstanceOf(PhysicsInputException.class)
                .hasMessage("the calibre is -3 mm; expected a number above 0 mm; correct the calibre");
    }
}
