package org.girandole.studio.views.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.RehearsalView.Choice;
import org.girandole.protocol.RehearsalView.Ending;
import org.girandole.protocol.RehearsalView.Said;
import org.girandole.protocol.RehearsalView.Stretch;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Sketch;
import org.girandole.studio.views.stage.Stage;
import org.junit.jupiter.api.Test;

/** A rehearsed night over the small show: its first cue held back, its second never due, its third two seconds late. */
class NightTest {
    private static final long S = 1_000_000;
    private static final List<Choice> CHOICES = List.of(new Choice("Lost", "Tune"), new Choice("Other", "Encore"));
    private static final RehearsalView NIGHT = new RehearsalView(null, CHOICES, "Lost", "Tune", "slow by 30 ppm", List.of(new Stretch(20 * S, 40 * S)),
            List.of(new Stretch(7 * S, 9 * S)), List.of(new Said(-60 * S, 21 * S, "locked"), new Said(21 * S, 40 * S, "holdover"),
            new Said(40 * S, 41 * S, "acquiring"), new Said(41 * S, 60 * S, "locked")), List.of(new Ending(1, "suppressed", null),
            new Ending(2, "skipped", null), new Ending(3, "fired", 2 * S), new Ending(4, "fired", 0L)));

    private final OpenTimeline timeline = OpenTimeline.small();
    private final Stage stage = timeline.stage();
    private final TimelineState state = timeline.state();

    private Sketch painted(RehearsalView night) {
        Sketch sketch = new Sketch(1);
        new NightPainter(sketch, Palette.LIGHT, night, state.score(), state.window(), state.frame()).paint();
        return sketch;
    }

    /** Strokes of a shape whose first point or end is at a moment, in a lane's height. */
    private long strokes(Sketch sketch, String shape, long us, int lane) {
        double x = state.frame().left() + state.window().x(us);
        double top = state.frame().laneTop(lane, state.window());
        return sketch.strokes().stream().filter(stroke -> stroke.startsWith(shape + " ")).filter(stroke -> {
            String[] numbers = stroke.substring(shape.length() + 1).split(" ");
            double y = Double.parseDouble(numbers[1]);
            boolean between = numbers.length == 4 ? Double.parseDouble(numbers[0]) < x && x < Double.parseDouble(numbers[2])
                    : Math.abs(Double.parseDouble(numbers[0]) - x) < 1;
            return between && y > top && y < top + state.frame().laneHeight();
        }).count();
    }

    @Test
    void whatIsNotFiredIsStruckOutAndWhatIsLateIsSeenLater() {
        Sketch sketch = painted(NIGHT);
        assertThat(strokes(sketch, "line SOLID", 10 * S, 0)).as("held back: a cross").isEqualTo(2);
        assertThat(strokes(sketch, "line SOLID", 10 * S, 1)).as("never due: one stroke").isEqualTo(1);
        assertThat(strokes(sketch, "ring DASHED", 32 * S, 0)).as("seen two seconds later").isEqualTo(1);
        assertThat(strokes(sketch, "ring DASHED", 45 * S, 2)).as("in time").isZero();
    }

    @Test
    void stretchesAndStatesSayWhatTheyAreInWords() {
        assertThat(painted(NIGHT).texts()).extracting(Sketch.Text::text).contains("NO TIMECODE", "RELEASED", "holdover");
    }

    @Test
    void aNightOfAnotherSoundtrackIsNotDrawn() {
        stage.nextTrack();
        assertThat(painted(NIGHT).strokes()).isEmpty();
        assertThat(painted(RehearsalView.nothing(CHOICES, "none")).strokes()).isEmpty();
    }

    @Test
    void theFootSaysHowItGoes() {
        assertThat(NightPainter.words(NIGHT, "", Optional.empty())).isEmpty();
        assertThat(NightPainter.words(NIGHT, "Lost", Optional.empty()))
                .contains("rehearsal 'Lost', clock slow by 30 ppm: 1 suppressed, 1 skipped, 0 not loaded, fired at most 2000.0 ms late");
        assertThat(NightPainter.words(NIGHT, "Lost", stage.cue(1))).contains("SUPPRESSED");
        assertThat(NightPainter.words(NIGHT, "Lost", stage.cue(3))).contains("fired 2000.0 ms late");
        assertThat(NightPainter.words(RehearsalView.nothing(CHOICES, "It cannot be."), "Lost", Optional.empty())).contains("It cannot be.");
    }

    @Test
    void rehearsalsAreChosenOneAfterTheOtherWithTheirSoundtrack() {
        stage.night(RehearsalView.nothing(CHOICES, ""));
        stage.nextRehearsal();
        assertThat(stage.rehearsed()).isEqualTo("Lost");
        stage.nextRehearsal();
        assertThat(stage.rehearsed()).isEqualTo("Other");
        assertThat(stage.track().orElseThrow().name()).isEqualTo("Encore");
        stage.nextRehearsal();
        assertThat(stage.rehearsed()).isEmpty();
        assertThat(stage.night().choices()).as("they can be chosen again").isEqualTo(CHOICES);
    }
}
