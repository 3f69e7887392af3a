package org.girandole.studio.views.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.Shows;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Sketch;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Little room: everything keeps clear of the plan and of each other. */
class SiteRoomTest {
    private final TriedWind tried = new TriedWind(() -> { });
    private final SiteState state = new SiteState(tried);

    /** An invented quay with a boundary all about, a protected place near its corner, and seven positions close to each other. */
    private static SiteView quay() {
        List<SiteView.Position> positions = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            positions.add(new SiteView.Position(String.valueOf((char) ('A' + i)), new Spot(30 * i - 90, 0, 0), 9, i == 2 ? "NOT" : "clean", Shows.line(20 + i)));
        }
        return new SiteView(Shows.URI, null, "Invented quay", positions,
                List.of(new SiteView.Outline("Promenade", List.of(new Spot(-150, -230, 0), new Spot(150, -230, 0)), null, Shows.line(7))),
                new SiteView.Outline("boundary", List.of(new Spot(-300, -230, 0), new Spot(300, -230, 0), new Spot(300, 250, 0), new Spot(-300, 250, 0)), null,
                        Shows.line(9)),
                List.of(new SiteView.Outline("FuelDock", List.of(new Spot(220, 60, 0)), 30.0, Shows.line(8))), new WindView(240, 4, 7.0),
                new WindView(240, 4, 7.0), 0, "Some table",
                List.of(new SiteView.Distance("C", "Promenade", true, 230, null, "no number for it", false, false, "basis", 1),
                        new SiteView.Distance("D", "Promenade", true, 230, 126.0, null, true, false, "basis", 2)),
                List.of(), List.of(), List.of());
    }

    @ParameterizedTest
    @CsvSource({"400, 300, 1", "360, 290, 1", "300, 320, 1", "270, 200, 1", "260, 480, 1", "700, 240, 1", "400, 300, 2", "800, 600, 2", "720, 580, 2",
        "540, 400, 2", "520, 960, 2", "400, 300, 1.5"})
    void nothingLiesOnThePlanOrOnAnother(double width, double height, double scale) {
        state.show(quay());
        keepsClear(width, height, scale);
        state.selectPosition("D");
        keepsClear(width, height, scale);
        state.turnWind(1, 0);
        keepsClear(width, height, scale);
    }

    private void keepsClear(double width, double height, double scale) {
        Sketch sketch = new Sketch(scale);
        state.arrange(width, height, sketch);
        new SitePainter(sketch, Palette.LIGHT, state).paint();
        Ground ground = state.ground();
        Box plan = new Box(ground.px(-300), ground.py(250), ground.px(300), ground.py(-230));
        SiteLayout layout = state.layout();
        assertThat(layout.dial().meets(plan)).as("dial %s on plan %s", layout.dial(), plan).isFalse();
        assertThat(plan.bottom()).as("foot").isLessThanOrEqualTo(layout.foot());
        assertThat(plan.width() * plan.height()).as("share of the plan").isGreaterThan(width * height * 0.05);
        List<Sketch.Text> texts = sketch.texts();
        // What the corner says stands before the dial and the foot.
        List<String> corner = new SiteWords(sketch, state).corner(layout.words(), layout.high(), layout.fold()).stream().map(SiteWords.Line::text).toList();
        for (Sketch.Text text : texts) {
            Box box = new Box(text.left(), text.top(), text.right(), text.bottom());
            assertThat(new Box(0, 0, width, height).holds(box)).as("inside: %s", text).isTrue();
            assertThat(corner.contains(text.text()) && box.meets(plan)).as("on the plan: %s", text).isFalse();
        }
        for (int i = 0; i < texts.size(); i++) {
            for (int j = i + 1; j < texts.size(); j++) {
                assertThat(texts.get(i).overlaps(texts.get(j))).as("'%s' over '%s'", texts.get(i), texts.get(j)).isFalse();
            }
        }
        assertThat(texts).anySatisfy(text -> assertThat(text.text()).contains("m/s")).anySatisfy(text -> assertThat(text.text()).contains("permission"));
    }
}
