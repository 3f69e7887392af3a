package org.girandole.studio.views.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.girandole.protocol.CueView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.WaveView;
import org.girandole.studio.views.Shows;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Sketch;
import org.girandole.studio.views.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimelineTest {
    private static final long S = 1_000_000;

    private final OpenTimeline timeline = OpenTimeline.small();
    private final Stage stage = timeline.stage();
    private final TimelineState state = timeline.state();

    @Test
    void theWholeIsInView() {
        assertThat(state.window().x(0)).isPositive();
        assertThat(state.window().x(60 * S)).isLessThan(state.frame().timeWidth());
        assertThat(state.score().lanes()).extracting(Lane::position).containsExactly("A", "B", "C");
    }

    @Test
    void zoomingKeepsThePlaceUnderThePointer() {
        long before = state.window().us(300);
        state.zoom(0.25, 300);
        assertThat(state.window().us(300)).isCloseTo(before, within(2L));
        assertThat(state.window().usPerPx()).isLessThan(Window.whole(state.score(), state.frame().timeWidth()).usPerPx());
    }

    @Test
    void nobodyScrollsOutOfTheShow() {
        state.zoom(0.1, 0);
        for (int i = 0; i < 50; i++) {
            state.page(1);
        }
        assertThat(state.window().x(60 * S)).isBetween(0.0, state.frame().timeWidth());
        for (int i = 0; i < 50; i++) {
            state.page(-1);
        }
        assertThat(state.window().x(0)).isBetween(0.0, state.frame().timeWidth());
    }

    @Test
    void onlyWhatIsInViewIsLookedAtAndNothingOfItIsMissed() {
        SplittableRandom random = new SplittableRandom(7);
        List<Glyph> glyphs = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            CueView cue = Shows.cue(i + 1, "A", "shell", random.nextLong(600 * S), random.nextLong(5 * S), 1);
            glyphs.add(new Glyph(cue, List.of(cue.number()), cue.burstUs() + random.nextLong(9 * S), ""));
        }
        Lane lane = Lane.of("A", true, glyphs);
        for (int i = 0; i < 200; i++) {
            long from = random.nextLong(600 * S);
            long to = from + random.nextLong(30 * S);
            List<Glyph> needed = glyphs.stream().filter(glyph -> glyph.fireUs() <= to && glyph.endUs() >= from).toList();
            List<Glyph> found = lane.between(from, to);
            assertThat(found).containsAll(needed);
            assertThat(found).allSatisfy(glyph -> assertThat(glyph.fireUs()).isLessThanOrEqualTo(to));
        }
    }

    @Test
    void shotsOfOneLineAtOneMomentAreOneSign() {
        CueView one = Shows.cue(1, "A", "comet", 5 * S, 0, 40);
        PlanView plan = Shows.of(List.of(one, Shows.cue(2, "A", "comet", 5 * S, 0, 40), Shows.cue(3, "A", "comet", 5 * S, 0, 41)), List.of());
        Score score = Score.of(plan, Optional.of(plan.tracks().get(0)));
        assertThat(score.lanes().get(0).glyphs()).extracting(Glyph::numbers).containsExactlyInAnyOrder(List.of(1, 2), List.of(3));
        assertThat(score.lanes().get(0).cues()).isEqualTo(3);
    }

    @Test
    void theGravestOpenFindingIsShown() {
        assertThat(state.score().lanes().get(0).glyphs()).extracting(Glyph::severity).containsExactly(Glyph.WAIVED, "error");
    }

    @Test
    void aClickFindsTheSignItsFootAndItsLine() {
        Frame frame = state.frame();
        Window window = state.window();
        double foot = frame.left() + window.x(8 * S);
        double top = frame.left() + window.x(10 * S);
        assertThat(state.at(top, frame.sky(0, window))).map(glyph -> glyph.cue().number()).contains(1);
        assertThat(state.at(foot, frame.floor(0, window))).map(glyph -> glyph.cue().number()).contains(1);
        assertThat(state.at((foot + top) / 2, (frame.sky(0, window) + frame.floor(0, window)) / 2)).map(glyph -> glyph.cue().number()).contains(1);
        assertThat(state.at(top, frame.low(1, window))).map(glyph -> glyph.cue().number()).contains(2);
        assertThat(state.at(frame.left() + window.x(20 * S), frame.sky(0, window))).isEmpty();
        assertThat(state.at(2, frame.sky(0, window))).isEmpty();
        assertThat(state.at(top, frame.bottom() + 5)).isEmpty();
    }

    @Test
    void arrowsWalkThroughCuesAndLanes() {
        state.step(1);
        assertThat(stage.selected()).map(CueView::number).contains(1);
        state.step(1);
        assertThat(stage.selected()).map(CueView::number).contains(3);
        state.step(1);
        assertThat(stage.selected()).map(CueView::number).contains(3);
        state.stepLane(1);
        assertThat(stage.selected()).map(CueView::number).contains(2);
        state.stepLane(1);
        assertThat(stage.selected()).map(CueView::number).contains(4);
        state.stepLane(1);
        assertThat(stage.selected()).map(CueView::number).contains(4);
        state.step(-1);
        assertThat(stage.selected()).map(CueView::number).contains(4);
    }

    @Test
    void findingsThatNobodyAgreedToAreNextInTurn() {
        state.nextFinding();
        assertThat(stage.selected()).map(CueView::number).contains(3);
        state.nextFinding();
        assertThat(stage.selected()).map(CueView::number).contains(3);
    }

    @Test
    void whatIsSelectedComesIntoView() {
        state.zoom(0.05, 0);
        stage.select(4);
        assertThat(state.window().x(45 * S)).isBetween(0.0, state.frame().timeWidth());
    }

    @Test
    void aSelectedLaneBelowTheEdgeComesIntoView() {
        state.arrange(Frame.of(new Sketch(1), 1200, 260, 3));
        stage.select(4);
        assertThat(state.frame().laneTop(2, state.window()) + state.frame().laneHeight()).isLessThanOrEqualTo(state.frame().bottom() + 1);
    }

    @Test
    void theRulerAndTheOverviewTellMoments() {
        double x = state.frame().left() + state.window().x(30 * S);
        assertThat(state.momentAt(x, state.frame().rulerTop() + 2).orElseThrow()).isCloseTo(30 * S, within(100_000L));
        state.zoom(0.1, 0);
        Window whole = Window.whole(state.score(), state.frame().timeWidth());
        assertThat(state.momentAt(state.frame().left() + whole.x(50 * S), state.frame().overviewTop() + 3).orElseThrow()).isCloseTo(50 * S, within(100_000L));
        assertThat(state.momentAt(x, state.frame().top() + 5)).isEmpty();
    }

    @Test
    void whilePlayingThePlayheadStaysInView() {
        state.zoom(0.1, 0);
        stage.playing(true);
        stage.playhead(50 * S);
        assertThat(state.window().x(50 * S)).isBetween(0.0, state.frame().timeWidth());
    }

    /** At twice the size of letters nothing is drawn over anything else, and the names of the lanes are whole. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2})
    void textsDoNotOverlap(double scale) {
        Sketch sketch = new Sketch(scale);
        state.arrange(Frame.of(sketch, 1400, 900, 3));
        new TimelinePainter(sketch, Palette.LIGHT, stage.plan(), state.score(), state.window(), state.frame()).paint(new Wave(WaveView.nothing("")), Optional.empty(),
                TimelinePainter.status(stage.plan(), Optional.empty()));
        assertThat(sketch.texts()).extracting(Sketch.Text::text).contains("A", "B", "C", "off the site", "Start", "Hit");
        apart(sketch.texts());
    }

    /** The timeline of a window of 1280 by 800 pixels is about 200 high: lanes shrink to one line of words before any is out of view. */
    @Test
    void inALowViewLanesShrinkBeforeTheyAreOutOfView() {
        Sketch sketch = new Sketch(1);
        assertThat(Frame.of(sketch, 1000, 300, 7).laneHeight() * 7).isLessThanOrEqualTo(Frame.of(sketch, 1000, 300, 7).room());
        Frame low = Frame.of(sketch, 1000, 200, 3);
        assertThat(low.narrowLanes()).isTrue();
        assertThat(low.laneHeight()).isGreaterThanOrEqualTo(sketch.height(Letters.BOLD) * 1.4);
        assertThat(low.laneHeight() * 3).isLessThanOrEqualTo(low.room());
        state.arrange(low);
        for (int lane = 0; lane < 3; lane++) {
            double top = low.laneTop(lane, state.window());
            assertThat(low.sky(lane, state.window()) - low.sign()).as("a sign stays in its lane").isGreaterThanOrEqualTo(top);
            assertThat(low.sky(lane, state.window())).isLessThan(low.low(lane, state.window()));
            assertThat(low.low(lane, state.window())).isLessThan(low.floor(lane, state.window()));
            assertThat(low.floor(lane, state.window())).isLessThan(top + low.laneHeight());
        }
        new TimelinePainter(sketch, Palette.LIGHT, stage.plan(), state.score(), state.window(), low).paint(new Wave(WaveView.nothing("")), Optional.empty(), "");
        assertThat(sketch.texts()).extracting(Sketch.Text::text).contains("A", "B", "C", "2 cues", "off the site");
        apart(sketch.texts());
    }

    @Test
    void lanesThatDoNotFitAreScrolledToAlsoWhileTheWholeSoundtrackIsInView() {
        Frame tiny = Frame.of(new Sketch(1), 1000, 150, 3);
        state.arrange(tiny);
        assertThat(state.lanesHeight()).isGreaterThan(tiny.room());
        state.scrollLanes(1000);
        double top = state.window().top();
        assertThat(top).isEqualTo(state.lanesHeight() - tiny.room());
        state.arrange(tiny);
        state.fit();
        assertThat(state.window().top()).as("after the next drawing").isEqualTo(top);
        assertThat(state.window().usPerPx()).isEqualTo(Window.whole(state.score(), tiny.timeWidth()).usPerPx());
    }

    @Test
    void whereAPieceIsThereForAMissingRecordingItIsOffered() {
        PlanView plan = Shows.missing("file:///shows/my%20tune.mid");
        stage.show(plan);
        Sketch sketch = new Sketch(1);
        TimelinePainter painter = new TimelinePainter(sketch, Palette.LIGHT, plan, state.score(), state.window(), state.frame());
        painter.paint(new Wave(WaveView.nothing("")), Optional.empty(), "");
        Sketch.Text offer = sketch.texts().stream().filter(text -> text.text().equals("Play my tune.mid into a recording (M)")).findFirst().orElseThrow();
        assertThat(painter.offers((offer.left() + offer.right()) / 2, (offer.top() + offer.bottom()) / 2)).isTrue();
        assertThat(painter.offers(offer.right() + 30, offer.top() + 3)).isFalse();
        assertThat(painter.offers(offer.left() + 3, state.frame().bottom() - 3)).isFalse();
        apart(sketch.texts());
        Sketch without = new Sketch(1);
        TimelinePainter silent = new TimelinePainter(without, Palette.LIGHT, Shows.small(), Score.of(Shows.small(), Optional.of(Shows.small().tracks().get(0))),
                state.window(), state.frame());
        silent.paint(new Wave(WaveView.nothing("")), Optional.empty(), "");
        assertThat(without.texts()).noneMatch(text -> text.text().contains("into a recording"));
        assertThat(silent.offers((offer.left() + offer.right()) / 2, (offer.top() + offer.bottom()) / 2)).isFalse();
    }

    private static void apart(List<Sketch.Text> texts) {
        for (int i = 0; i < texts.size(); i++) {
            for (int j = i + 1; j < texts.size(); j++) {
                assertThat(texts.get(i).overlaps(texts.get(j))).as("'%s' over '%s'", texts.get(i), texts.get(j)).isFalse();
            }
        }
    }

    @Test
    void aShowWithoutAScoreSaysSo() {
        Stage empty = new Stage();
        Sketch sketch = new Sketch(1);
        TimelineState nothing = new TimelineState(empty);
        nothing.arrange(Frame.of(sketch, 800, 300, 0));
        new TimelinePainter(sketch, Palette.LIGHT, empty.plan(), nothing.score(), nothing.window(), nothing.frame()).paint(nothing.wave(), Optional.empty(), "");
        assertThat(sketch.texts()).singleElement().satisfies(text -> assertThat(text.text()).contains("Open the script"));
        nothing.step(1);
        nothing.stepLane(1);
        nothing.nextFinding();
        nothing.zoomIn();
        assertThat(empty.selected()).isEmpty();
    }
}
