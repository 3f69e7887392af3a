package org.girandole.studio.views.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.Shows;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Sketch;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SiteTest {
    private final List<Optional<WindView>> asked = new ArrayList<>();
    private final TriedWind tried = new TriedWind(() -> asked.add(this.tried.wind()));
    private final SiteState state = new SiteState(tried);

    @BeforeEach
    void show() {
        state.show(site(new WindView(240, 4, 7.0)));
        state.arrange(900, 700, new Sketch(1));
    }

    private static SiteView site(WindView wind) {
        return site(wind, "NOT", List.of());
    }

    private static SiteView site(WindView wind, String state, List<String> unknown) {
        List<SiteView.Position> positions = List.of(new SiteView.Position("A", new Spot(-50, 0, 0), 3, "clean", Shows.line(5)),
                new SiteView.Position("B", new Spot(50, 0, 0), 2, state, Shows.line(6)));
        return new SiteView(Shows.URI, null, "Field", positions,
                List.of(new SiteView.Outline("Meadow", List.of(new Spot(-100, -150, 0), new Spot(100, -150, 0)), null, Shows.line(7))), null,
                List.of(new SiteView.Outline("Dock", List.of(new Spot(150, 50, 0)), 20.0, Shows.line(8))), new WindView(240, 4, 7.0), wind, 0, "Some table",
                List.of(new SiteView.Distance("A", "Meadow", true, 150, 64.0, null, true, false, "basis", 1),
                        new SiteView.Distance("B", "Meadow", true, 150, null, "no number for it", false, false, "basis", 2)),
                List.of(new SiteView.Fallout(1, "A", "unburst", 0.99, false, List.of(new Spot(-60, 0, 0), new Spot(-40, 0, 0), new Spot(-50, 30, 0)))), unknown, List.of());
    }

    @Test
    void everythingFixedIsInTheDrawing() {
        Ground ground = state.ground();
        for (double[] m : new double[][] {{-100, -150}, {100, -150}, {170, 70}, {-50, 0}}) {
            assertThat(ground.px(m[0])).isBetween(0.0, 900.0);
            assertThat(ground.py(m[1])).isBetween(0.0, 700.0);
        }
        // One scale for both axes: a circle stays round.
        assertThat(ground.px(10) - ground.px(0)).isCloseTo(ground.py(0) - ground.py(10), within(1e-9));
    }

    @Test
    void theKnobIsWhereTheWindComesFrom() {
        Rose rose = new Rose(100, 100, 50);
        // A wind from 90 degrees comes from the right; 6 of 12 m/s is half way out.
        assertThat(rose.knobX(new WindView(90, 6, null))).isCloseTo(125, within(0.001));
        assertThat(rose.knobY(new WindView(90, 6, null))).isCloseTo(100, within(0.001));
        WindView dragged = rose.dragged(100, 75, new WindView(90, 6, 8.0));
        assertThat(dragged.fromDeg()).isZero();
        assertThat(dragged.speedMps()).isEqualTo(6);
        assertThat(dragged.gustMps()).isEqualTo(8);
        assertThat(rose.dragged(50, 100, dragged).fromDeg()).isEqualTo(270);
        assertThat(rose.dragged(0, 100, dragged).speedMps()).isEqualTo(Rose.RIM_MPS);
    }

    @Test
    void aTriedWindIsAskedForOnceAndSaidToBeTried() {
        state.turnWind(1, 0);
        assertThat(asked).containsExactly(Optional.of(new WindView(245, 4, 7.0)));
        assertThat(state.trying()).isTrue();
        assertThat(state.settled()).isFalse();
        state.show(site(new WindView(245, 4, 7.0)));
        assertThat(state.settled()).isTrue();
        assertThat(texts()).anySatisfy(text -> assertThat(text).contains("TRIED"));
        state.scriptWind();
        assertThat(asked).hasSize(2).last().isEqualTo(Optional.empty());
        assertThat(texts()).noneSatisfy(text -> assertThat(text).contains("TRIED"));
    }

    /** Else the site of the next show would be drawn as if for a wind that nobody tried on it. */
    @Test
    void aTriedWindIsForgottenWithItsShow() {
        tried.look("file:///show.show");
        state.turnWind(1, 0);
        tried.look("file:///show.show");
        assertThat(state.trying()).isTrue();
        tried.look("file:///other.show");
        assertThat(state.trying()).isFalse();
        assertThat(state.settled()).isTrue();
    }

    /** A view that is opened anew must not say that the script's wind blows while it draws the one that is tried. */
    @Test
    void allThatDrawTheSiteTryTheSameWind() {
        state.turnWind(1, 0);
        SiteState other = new SiteState(tried);
        other.show(site(new WindView(245, 4, 7.0)));
        assertThat(other.trying()).isTrue();
        assertThat(other.wind()).isEqualTo(new WindView(245, 4, 7.0));
    }

    @Test
    void theEnvelopeLeavesNothingOut() {
        // A square with points on its edges and inside: its corners are left.
        List<Spot> square = List.of(new Spot(0, 0, 0), new Spot(4, 0, 0), new Spot(4, 4, 0), new Spot(0, 4, 0), new Spot(2, 0, 0), new Spot(1, 3, 0), new Spot(4, 2, 0));
        assertThat(Hull.of(square)).containsExactlyInAnyOrder(new Spot(0, 0, 0), new Spot(4, 0, 0), new Spot(4, 4, 0), new Spot(0, 4, 0));
        assertThat(Hull.of(square.subList(0, 2))).hasSize(2);
    }

    @Test
    void theWindNeverBlowsBackwards() {
        for (int i = 0; i < 30; i++) {
            state.turnWind(0, -1);
        }
        assertThat(state.wind().speedMps()).isZero();
    }

    @Test
    void positionsAreReachedByKeyAndClick() {
        state.stepPosition(1);
        assertThat(state.selected()).map(SiteView.Position::name).contains("A");
        state.stepPosition(-1);
        assertThat(state.selected()).map(SiteView.Position::name).contains("B");
        assertThat(state.at(state.ground().px(-50), state.ground().py(0), 10)).map(SiteView.Position::name).contains("A");
        assertThat(state.at(5, 5, 10)).isEmpty();
    }

    @Test
    void whatIsNotMetAndWhatIsNotKnownIsSaid() {
        assertThat(texts()).anySatisfy(text -> assertThat(text).contains("ASSESSMENT")).anySatisfy(text -> assertThat(text).contains("not permission"));
        assertThat(SitePainter.description(state)).contains("1 distances not met");
    }

    /** A view as narrow as beside the script at 1280 pixels. */
    @Test
    void inANarrowViewTheWordsGiveWayAndWhatIsWrongStaysFirst() {
        state.arrange(300, 320, new Sketch(1));
        assertThat(state.folded()).isTrue();
        List<String> folded = texts();
        assertThat(folded).anySatisfy(text -> assertThat(text).contains("ASSESSMENT")).anySatisfy(text -> assertThat(text).contains("more (L)"))
                .anySatisfy(text -> assertThat(text).contains("not permission")).noneSatisfy(text -> assertThat(text).contains("(solid)"));
        state.fold();
        state.arrange(300, 320, new Sketch(1));
        assertThat(texts()).anySatisfy(text -> assertThat(text).contains("(solid)")).anySatisfy(text -> assertThat(text).contains("not permission"))
                .anySatisfy(text -> assertThat(text).contains("are met")).noneSatisfy(text -> assertThat(text).contains("more"));
        state.fold();
        state.arrange(300, 320, new Sketch(1));
        assertThat(texts()).isEqualTo(folded);
    }

    @Test
    void fewWordsSayThatAllWasAgreedToOnlyWhereNothingElseIsWrong() {
        WindView wind = new WindView(240, 4, 7.0);
        String agreed = "only what was agreed to in writing";
        state.arrange(600, 320, new Sketch(1));
        assertThat(texts()).doesNotContain(agreed);
        state.show(site(wind, "waived", List.of()));
        assertThat(texts()).contains(agreed);
        state.show(site(wind, "unchecked", List.of()));
        assertThat(texts()).doesNotContain(agreed);
        state.show(site(wind, "waived", List.of("B: no muzzle speed")));
        assertThat(texts()).doesNotContain(agreed).anySatisfy(text -> assertThat(text).contains("FALLOUT NOT KNOWN"));
        state.show(site(wind, "clean", List.of()));
        assertThat(texts()).doesNotContain(agreed);
    }

    @Test
    void whyThereIsNoSiteIsReadWholeInANarrowViewToo() {
        String why = "The show has no site. Name one in the show block.";
        state.show(SiteView.nothing("", why));
        state.arrange(200, 300, new Sketch(1));
        assertThat(texts()).hasSizeGreaterThan(1);
        assertThat(String.join(" ", texts())).isEqualTo(why);
    }

    @Test
    void namesOfPositionsThatLieCloseGiveWayButNotThatOfTheSelectedOne() {
        assertThat(texts()).contains("A", "B");
        state.zoom(0.02);
        assertThat(texts()).contains("A").doesNotContain("B");
        state.selectPosition("B");
        assertThat(texts()).contains("B").doesNotContain("A");
    }

    private List<String> texts() {
        Sketch sketch = new Sketch(1);
        new SitePainter(sketch, Palette.LIGHT, state).paint();
        return sketch.texts().stream().map(Sketch.Text::text).toList();
    }
}
