package org.girandole.studio.views.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.Shows;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Sketch;
import org.junit.jupiter.api.Test;

class SkyTest {
    private static final long S = 1_000_000;
    private static final SiteView SITE = new SiteView(Shows.URI, null, "Field", List.of(), List.of(), null, List.of(), null, null, 0, "", List.of(), List.of(),
            List.of(), List.of());

    private final PlanView plan = Shows.small();
    private final Flights flights = new Flights(plan, Optional.of(plan.tracks().get(0)));

    @Test
    void whatIsFiredAndNotYetGoneIsSeen() {
        assertThat(flights.at(7 * S)).isEmpty();
        assertThat(flights.at(9 * S)).extracting(CueView::number).containsExactly(1);
        assertThat(flights.at(10 * S + 1)).extracting(CueView::number).containsExactly(1, 2);
        assertThat(flights.at(11 * S)).isEmpty();
    }

    /** By the rule of the compass: who looks north has the east at the right hand, who looks south has the west there. */
    @Test
    void rightIsTheRightHandOfTheAudience() {
        assertThat(Stand.across(0, new Spot(10, 0, 0))).isCloseTo(10, within(1e-9));
        assertThat(Stand.across(180, new Spot(10, 0, 0))).isCloseTo(-10, within(1e-9));
        assertThat(Stand.across(90, new Spot(0, -10, 0))).isCloseTo(10, within(1e-9));
    }

    @Test
    void everyBurstIsInThePicture() {
        Stand stand = Stand.whole(flights.all(), 0, 800, 600, 60);
        for (CueView cue : flights.all()) {
            Spot at = cue.burst() == null ? cue.from() : cue.burst();
            assertThat(stand.x(at)).isBetween(0.0, 800.0);
            assertThat(stand.y(at.z())).isBetween(0.0, 600.0);
        }
    }

    @Test
    void aShellRisesThenOpens() {
        assertThat(sketch(9 * S)).noneMatch(stroke -> stroke.startsWith("line SOLID"));
        assertThat(sketch(10 * S + 300_000).stream().filter(stroke -> stroke.startsWith("line SOLID")).count()).isGreaterThan(20);
    }

    @Test
    void theSameMomentLooksTheSame() {
        assertThat(sketch(10 * S + 300_000)).isEqualTo(sketch(10 * S + 300_000));
    }

    /** A view as narrow as beside the script. */
    @Test
    void thatItIsASketchIsReadWholeInANarrowViewToo() {
        Sketch sketch = new Sketch(1);
        new SkyPainter(sketch, Palette.LIGHT, plan, SITE, flights, 360, 300).paint(10 * S, 0);
        String all = sketch.texts().stream().map(Sketch.Text::text).collect(Collectors.joining(" "));
        assertThat(all).contains("what the script does not say of height, width and length is drawn as is usual.");
        for (Sketch.Text one : sketch.texts()) {
            assertThat(one.bottom()).isLessThanOrEqualTo(300);
            assertThat(sketch.texts()).filteredOn(other -> other != one && other.overlaps(one)).as(one.text()).isEmpty();
        }
    }

    private List<String> sketch(long us) {
        Sketch sketch = new Sketch(1);
        new SkyPainter(sketch, Palette.DARK, plan, SITE, flights, 800, 600).paint(us, 0);
        return sketch.strokes();
    }
}
