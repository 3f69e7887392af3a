package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.girandole.plan.script.LabelGrid;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.TimeExpr;
import org.junit.jupiter.api.Test;

/** The tour of the language loads without a problem, and says what it says. */
class TourTest {
    private static final LoadedShow TOUR = new ShowLoader().load(Path.of("src/test/resources/tour/tour.show"));

    @Test
    void hasNoProblems() {
        assertThat(TOUR.problems()).isEmpty();
        assertThat(TOUR.script()).isPresent();
    }

    @Test
    void listsUsedFilesBeforeTheScript() {
        assertThat(TOUR.inputs()).extracting(input -> input.path()).containsExactly("catalogue/house.show", "quay.show", "tour.show");
    }

    @Test
    void givesQuantitiesInSi() {
        ShowScript script = TOUR.script().orElseThrow();
        var kamuro = script.effects().stream().filter(e -> e.name().equals("Kamuro150")).findFirst().orElseThrow();
        // 1 in = 25.4 mm exactly, international yard and pound agreement of 1959.
        assertThat(kamuro.calibreM()).contains(0.1524);
        assertThat(kamuro.rise().orElseThrow().valueUs()).isEqualTo(4_100_000);
        assertThat(kamuro.rise().orElseThrow().plusMinusUs()).isEqualTo(205_000);
        assertThat(script.moduleTypes().get(0).capacitanceF()).contains(0.001);
        assertThat(script.firingSystem().orElseThrow().slackFraction()).isEqualTo(0.1);
    }

    @Test
    void laysLabelsInTheMiddleOfThePaper() {
        // A4 (ISO 216) is 210 mm by 297 mm: 3 labels of 62 mm and two gaps leave 18 mm, 7 labels of 37 mm leave 38 mm.
        LabelGrid grid = TOUR.script().orElseThrow().release().orElseThrow().labels().orElseThrow();
        assertThat(grid.across()).isEqualTo(3);
        assertThat(grid.down()).isEqualTo(7);
        assertThat(grid.leftM()).isCloseTo(0.009, within(1e-9));
        assertThat(grid.topM()).isCloseTo(0.019, within(1e-9));
        assertThat(grid.gapAcrossM()).isEqualTo(0.003);
        assertThat(grid.gapDownM()).isZero();
    }

    @Test
    void putsWhatAFigureIsGivenIntoItsLines() {
        ScoreItem.Play play = TOUR.script().orElseThrow().scores().get(0).sections().get(0).items().stream()
                .filter(ScoreItem.Play.class::isInstance).map(ScoreItem.Play.class::cast).findFirst().orElseThrow();
        ScoreItem.Cue second = (ScoreItem.Cue) play.items().get(1);
        assertThat(second.effect()).isEqualTo("GoldComet");
        assertThat(second.positions()).containsExactly("E");
        assertThat(second.at().anchor()).isEqualTo(new TimeExpr.Origin());
        assertThat(second.at().steps()).containsExactly(new TimeExpr.Step(org.girandole.music.Rational.of(1, 2), TimeExpr.StepUnit.BEAT));
    }

    @Test
    void walksPositionsInTheOrderOfTheSite() {
        ScoreItem.Cue mines = (ScoreItem.Cue) TOUR.script().orElseThrow().scores().get(0).sections().get(0).items().get(2);
        assertThat(mines.positions()).containsExactly("A", "B", "C", "D", "E");
        assertThat(mines.distribution().order()).isEqualTo(ScoreItem.Order.IN_TURN);
    }
}
