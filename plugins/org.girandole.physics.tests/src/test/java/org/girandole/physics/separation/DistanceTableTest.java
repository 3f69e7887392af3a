package org.girandole.physics.separation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;

/** A table of one's own, as a user would write it. */
class DistanceTableTest {
    private static final Citation OWN = new Citation("House rule", "1", Verification.OWN);
    private static final BaseRule BY_HEIGHT = new BaseRule("shells", "shells: 20 m and 60 % of the height",
            List.of(Condition.isA(ArticleKind.SHELL)),
            Formula.sum(Formula.fixed(20), Formula.times(0.6, Quantity.HEIGHT, "60 % of the height")), OWN);

    private static DistanceTable table(List<BaseRule> rules, List<Modifier> modifiers) {
        return new DistanceTable("House", "the house rule", OWN, 45, rules, modifiers, List.of());
    }

    private static Modifier times(double factor, Condition when) {
        return new Modifier("times " + factor, List.of(), List.of(when), Where.EVERYWHERE, new Change.MultiplyBy(factor), OWN);
    }

    @Test
    void sumOfAFixedAndAVariablePart() {
        var requirement = table(List.of(BY_HEIGHT), List.of())
                .evaluate(FiringCase.of(ArticleKind.SHELL).with(Quantity.HEIGHT, 100));
        assertThat(requirement.metres().orElseThrow()).isCloseTo(80, within(1e-12));
        assertThat(requirement.verification()).isEqualTo(Verification.OWN);
    }

    @Test
    void theFirstRuleThatHoldsCounts() {
        var small = new BaseRule("small", "small", List.of(Condition.atMost(Quantity.CALIBRE, 0.05)), Formula.fixed(10), OWN);
        var rest = new BaseRule("rest", "rest", List.of(), Formula.fixed(99), OWN);
        var table = table(List.of(small, rest), List.of());
        assertThat(table.evaluate(FiringCase.of(ArticleKind.MINE).with(Quantity.CALIBRE, 0.05)).metres()).hasValue(10);
        assertThat(table.evaluate(FiringCase.of(ArticleKind.MINE).with(Quantity.CALIBRE, 0.051)).metres()).hasValue(99);
    }

    @Test
    void modifiersMultiplyInOrder() {
        var table = table(List.of(BY_HEIGHT), List.of(times(1.5, Condition.above(Quantity.WIND, 5)),
                times(2, Condition.above(Quantity.WIND, 10))));
        var firing = FiringCase.of(ArticleKind.SHELL).with(Quantity.HEIGHT, 100);
        assertThat(table.evaluate(firing.inWind(0, 5)).metres()).hasValue(80);
        assertThat(table.evaluate(firing.inWind(0, 6)).metres()).hasValue(120);
        assertThat(table.evaluate(firing.inWind(0, 11)).metres()).hasValue(240);
    }

    @Test
    void withoutARuleThatFitsTheTableItselfIsQuoted() {
        var nothing = table(List.of(BY_HEIGHT), List.of()).evaluate(FiringCase.of(ArticleKind.WHEEL));
        assertThat(nothing.assessmentNeeded()).isTrue();
        assertThat(nothing.basis()).isEqualTo("the house rule: House rule, 1 (your own table)");
    }

    @Test
    void endsOfRangesSurviveUnitConversion() {
        // 12 in in metres, arrived at in two ways
        double byInch = 12 * 0.0254;
        double byMillimetre = 304.8 / 1000;
        var limit = Condition.atMost(Quantity.CALIBRE, byInch);
        assertThat(((Condition.In) limit).holds(byMillimetre)).isTrue();
        assertThat(((Condition.In) Condition.above(Quantity.CALIBRE, byMillimetre)).holds(byInch)).isFalse();
        assertThat(((Condition.In) Condition.below(Quantity.CALIBRE, 0.05)).holds(50 * 0.001)).isFalse();
    }

    @Test
    void sectors() {
        var leaning = FiringCase.of(ArticleKind.SHELL).tilted(10, 350);
        assertThat(leaning.towards(30).faces(Where.TOWARDS_TILT, 45)).isTrue();
        assertThat(leaning.towards(36).faces(Where.TOWARDS_TILT, 45)).isFalse();
        assertThat(leaning.towards(170).faces(Where.AGAINST_TILT, 45)).isTrue();
        assertThat(leaning.towards(90).faces(Where.AGAINST_TILT, 45)).isFalse();
        var upright = FiringCase.of(ArticleKind.SHELL).tilted(0, 350);
        assertThat(upright.towards(170).faces(Where.TOWARDS_TILT, 45)).as("upright leans everywhere").isTrue();
        assertThat(upright.towards(170).faces(Where.AGAINST_TILT, 45)).as("and away from nowhere").isFalse();
        var blown = FiringCase.of(ArticleKind.SHELL).inWind(240, 5);
        assertThat(blown.towards(60).faces(Where.DOWNWIND, 45)).isTrue();
        assertThat(blown.towards(240).faces(Where.UPWIND, 45)).isTrue();
        assertThat(blown.towards(150).faces(Where.DOWNWIND, 45)).isFalse();
    }

    @Test
    void faultyTablesAreNamed() {
        assertThatThrownBy(() -> table(List.of(), List.of())).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("House has no rule");
        assertThatThrownBy(() -> table(List.of(BY_HEIGHT, BY_HEIGHT), List.of())).hasMessageContaining("two rules shells");
        var stray = new Modifier("m", List.of("comets"), List.of(), Where.EVERYWHERE, new Change.MultiplyBy(2), OWN);
        assertThatThrownBy(() -> table(List.of(BY_HEIGHT), List.of(stray)))
                .hasMessageContaining("modifier of the rule comets").hasMessageContaining("one of shells");
    }

    @Test
    void negativeValuesAreNamed() {
        assertThatThrownBy(() -> FiringCase.of(ArticleKind.SHELL).with(Quantity.CALIBRE, -0.1))
                .isInstanceOf(PhysicsInputException.class).hasMessageContaining("calibre is -0.1");
        assertThatThrownBy(() -> FiringCase.of(ArticleKind.SHELL).inWind(Double.NaN, 3))
                .hasMessageContaining("direction of the wind");
    }
}
