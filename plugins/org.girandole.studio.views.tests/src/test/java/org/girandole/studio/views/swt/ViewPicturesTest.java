package org.girandole.studio.views.swt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.girandole.protocol.CueView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.RehearsalParams;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.girandole.protocol.SheetPageParams;
import org.girandole.protocol.SiteParams;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.WaveParams;
import org.girandole.protocol.WaveView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.HarbourNight;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.site.TriedWind;
import org.girandole.studio.views.sky.Flights;
import org.girandole.studio.views.stage.Playback;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.timeline.Frame;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;

/** Draws the example on images, under a display that may be a virtual one, and looks at pixels. */
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+", disabledReason = "there is no display: run under xvfb-run")
class ViewPicturesTest {
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;
    private static final long S = 1_000_000;
    private static final String REHEARSAL = "Lost code and a released control";

    @TempDir
    static Path folder;
    private static PlanView plan;
    private static SiteView site;
    private static SiteView turned;
    private static WaveView wave;
    private static RehearsalView night;
    private static SheetList sheets;
    private static List<SheetPage> pages;
    private static Display display;

    private final Stage stage = new Stage();
    private final List<SourcePlace> revealed = new ArrayList<>();
    private final List<String> rendered = new ArrayList<>();
    private Shell shell;
    private TimelineCanvas timeline;
    private Playback playback;

    @BeforeAll
    static void ask() throws Exception {
        try (HarbourNight show = new HarbourNight(folder)) {
            plan = HarbourNight.get(show.requests().plan(new ScriptParams(show.uri())));
            site = HarbourNight.get(show.requests().site(new SiteParams(show.uri(), null)));
            turned = HarbourNight.get(show.requests().site(new SiteParams(show.uri(), new WindView(90, 9, 12.0))));
            wave = HarbourNight.get(show.requests().waveform(new WaveParams(show.uri(), "Tides")));
            night = HarbourNight.get(show.requests().rehearsal(new RehearsalParams(show.uri(), REHEARSAL)));
            sheets = HarbourNight.get(show.requests().sheets(new ScriptParams(show.uri())));
            pages = List.of(HarbourNight.get(show.requests().sheetPage(new SheetPageParams(show.uri(), "8", 1, 1400))),
                    HarbourNight.get(show.requests().sheetPage(new SheetPageParams(show.uri(), "4 D", 1, 1400))));
        }
        assertThat(plan.nothing()).isNull();
        assertThat(site.nothing()).isNull();
        assertThat(wave.nothing()).isNull();
        assertThat(night.nothing()).isNull();
        display = Display.getDefault();
    }

    @AfterAll
    static void close() {
        display.dispose();
    }

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        stage.show(plan);
        stage.wave(wave);
        playback = new Playback(stage, () -> 0, () -> { });
        timeline = new TimelineCanvas(shell, stage, playback, revealed::add, rendered::add);
        timeline.dark(false);
    }

    @AfterEach
    void dispose() {
        playback.stop();
        shell.dispose();
    }

    private static IntPredicate not(int colour) {
        return Pictures.near(colour).negate();
    }

    @Test
    void theTimelineHasALaneForEachPositionAndSomethingInIt() throws Exception {
        Pictures picture = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        Palette palette = Palette.LIGHT;
        assertThat(timeline.state().score().lanes()).hasSize(7);
        for (int lane = 0; lane < 7; lane++) {
            int ground = lane % 2 == 0 ? palette.band() : palette.paper();
            assertThat(picture.count(frame.left(), frame.laneTop(lane, timeline.state().window()), frame.timeWidth(), frame.laneHeight(), not(ground)))
                    .as("lane " + lane).isGreaterThan(1500);
        }
        picture.keep("timeline-light");
    }

    @Test
    void theHoldIsWhereItIsSaidToBe() {
        Pictures picture = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        // The example holds from 2:35 to 2:41.
        double from = frame.left() + timeline.state().window().x(155 * S);
        double to = frame.left() + timeline.state().window().x(161 * S);
        IntPredicate violet = pixel -> (pixel & 0xFF) - (pixel >> 8 & 0xFF) > 12;
        int inside = picture.count(from + 2, frame.top(), to - from - 4, frame.room(), violet);
        int before = picture.count(from - (to - from) - 4, frame.top(), to - from - 4, frame.room(), violet);
        assertThat(inside).isGreaterThan((int) ((to - from - 4) * frame.room() * 0.6));
        assertThat(before).isLessThan(inside / 3);
    }

    @Test
    void aRehearsedNightLiesOverTheShow() throws Exception {
        Pictures plain = Pictures.of(timeline, WIDTH, HEIGHT);
        stage.night(RehearsalView.nothing(night.choices(), ""));
        stage.rehearse(REHEARSAL);
        stage.night(night);
        Pictures rehearsed = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        // The example loses code from 2:10 to 2:35 and lets go of the control from 3:02 to 3:05.
        double lost = frame.left() + timeline.state().window().x(130 * S);
        double found = frame.left() + timeline.state().window().x(155 * S);
        double released = frame.left() + timeline.state().window().x(182 * S);
        double pressed = frame.left() + timeline.state().window().x(185 * S);
        assertThat(rehearsed.different(plain, lost, frame.top(), found - lost, frame.room())).isGreaterThan((int) ((found - lost) * frame.room() / 2));
        assertThat(rehearsed.different(plain, released, frame.top(), pressed - released, frame.room()))
                .isGreaterThan((int) ((pressed - released) * frame.room() / 2));
        assertThat(rehearsed.different(plain, frame.left(), frame.top() + 2, lost - frame.left() - 20, frame.room() - 2)).as("nothing has happened yet").isZero();
        rehearsed.keep("timeline-rehearsal-light");
        timeline.dark(true);
        Pictures.of(timeline, WIDTH, HEIGHT).keep("timeline-rehearsal-dark");
    }

    @Test
    void theWaveformIsThere() {
        Pictures with = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        int drawn = with.count(frame.left(), frame.waveTop(), frame.timeWidth(), frame.waveHeight(), Pictures.near(Palette.LIGHT.wave()));
        stage.wave(WaveView.nothing("gone"));
        Pictures without = Pictures.of(timeline, WIDTH, HEIGHT);
        assertThat(drawn).isGreaterThan(2000);
        assertThat(without.count(frame.left(), frame.waveTop(), frame.timeWidth(), frame.waveHeight(), Pictures.near(Palette.LIGHT.wave()))).isLessThan(100);
    }

    @Test
    void thePlayheadMovesAndNothingElseDoes() {
        stage.playhead(60 * S);
        Pictures before = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        stage.playhead(180 * S);
        Pictures after = Pictures.of(timeline, WIDTH, HEIGHT);
        double old = frame.left() + timeline.state().window().x(60 * S);
        double now = frame.left() + timeline.state().window().x(180 * S);
        assertThat(after.count(now - 1, frame.top(), 3, frame.room(), Pictures.near(Palette.LIGHT.accent()))).isGreaterThan((int) frame.room());
        assertThat(after.count(old - 1, frame.top(), 3, frame.room(), Pictures.near(Palette.LIGHT.accent()))).isLessThan((int) frame.room() / 10);
        double all = after.different(before, 0, 0, WIDTH, HEIGHT);
        double near = after.different(before, old - 12, 0, 110, HEIGHT) + after.different(before, now - 12, 0, 110, HEIGHT);
        assertThat(near).isEqualTo(all);
    }

    @Test
    void aClickSelectsRevealsAndIsSeen() throws Exception {
        Pictures.of(timeline, WIDTH, HEIGHT);
        CueView hero = plan.cues().stream().filter(cue -> "Hero".equals(cue.name())).findFirst().orElseThrow();
        timeline.state().zoom(0.12, timeline.state().window().x(hero.burstUs()));
        Pictures before = Pictures.of(timeline, WIDTH, HEIGHT);
        Frame frame = timeline.state().frame();
        Event event = new Event();
        event.button = 1;
        event.x = (int) Math.round(frame.left() + timeline.state().window().x(hero.burstUs()));
        event.y = (int) Math.round(frame.sky(timeline.state().score().laneOf(hero), timeline.state().window()));
        timeline.notifyListeners(SWT.MouseDown, event);
        assertThat(stage.selected()).contains(hero);
        assertThat(revealed).containsExactly(hero.source());
        Pictures after = Pictures.of(timeline, WIDTH, HEIGHT);
        assertThat(after.different(before, event.x - 20, event.y - 20, 40, 40)).isGreaterThan(30);
        assertThat(after.different(before, 0, frame.statusTop(), WIDTH, frame.statusHeight())).isGreaterThan(200);
        stage.playhead(hero.burstUs() - S);
        Pictures.of(timeline, WIDTH, HEIGHT).keep("timeline-near-light");
        timeline.dark(true);
        Pictures.of(timeline, WIDTH, HEIGHT).keep("timeline-near-dark");
    }

    @Test
    void keysReachEverything() {
        Pictures.of(timeline, WIDTH, HEIGHT);
        key(SWT.ARROW_RIGHT, (char) 0);
        CueView first = stage.selected().orElseThrow();
        key(SWT.ARROW_DOWN, (char) 0);
        assertThat(stage.selected().orElseThrow().position()).isNotEqualTo(first.position());
        key(SWT.CR, SWT.CR);
        assertThat(revealed).containsExactly(stage.selected().orElseThrow().source());
        double before = timeline.state().window().usPerPx();
        key('+', '+');
        assertThat(timeline.state().window().usPerPx()).isLessThan(before);
        key('0', '0');
        assertThat(timeline.state().window().usPerPx()).isEqualTo(before);
        key('t', 't');
        assertThat(stage.track().orElseThrow().name()).isEqualTo("Encore");
        assertThat(Pictures.of(timeline, WIDTH, HEIGHT).count(0, 0, WIDTH, HEIGHT, not(Palette.LIGHT.paper()))).isGreaterThan(10_000);
    }

    private void key(int code, char character) {
        Event event = new Event();
        event.keyCode = code;
        event.character = character;
        timeline.notifyListeners(SWT.KeyDown, event);
    }

    @Test
    void darkIsDarkAndLargeIsLarge() throws Exception {
        timeline.dark(true);
        Pictures dark = Pictures.of(timeline, WIDTH, HEIGHT);
        assertThat(dark.count(0, 0, WIDTH, HEIGHT, pixel -> (pixel >> 8 & 0xFF) < 70)).isGreaterThan(WIDTH * HEIGHT * 6 / 10);
        dark.keep("timeline-dark");
        double small = timeline.state().frame().unit();
        timeline.dark(false);
        timeline.scale(2);
        Pictures large = Pictures.of(timeline, 2 * WIDTH, 2 * HEIGHT);
        assertThat(timeline.state().frame().unit()).isBetween(small * 1.7, small * 2.3);
        large.keep("timeline-200-percent");
    }

    @Test
    void theSkyFollowsThePlayhead() throws Exception {
        SkyCanvas sky = new SkyCanvas(shell, stage, playback);
        sky.site(site);
        sky.dark(true);
        CueView hero = plan.cues().stream().filter(cue -> "Hero".equals(cue.name())).findFirst().orElseThrow();
        stage.playhead(-30 * S);
        Pictures empty = Pictures.of(sky, 1100, 640);
        stage.playhead(hero.burstUs() + 700_000);
        Pictures full = Pictures.of(sky, 1100, 640);
        assertThat(full.different(empty, 0, 0, 1100, 540)).isGreaterThan(1500);
        stage.playhead(fullest());
        Pictures.of(sky, 1100, 640).keep("sky-dark");
        sky.dark(false);
        Pictures.of(sky, 1100, 640).keep("sky-light");
    }

    /** The half second at which most is in the sky. */
    private long fullest() {
        Flights flights = new Flights(plan, stage.track());
        long best = 0;
        for (long us = 0; us < 250 * S; us += S / 2) {
            if (burst(flights, us) > burst(flights, best)) {
                best = us;
            }
        }
        return best;
    }

    private static long burst(Flights flights, long us) {
        return flights.at(us).stream().filter(cue -> cue.burstUs() < us - S / 5).count();
    }

    @Test
    void theFalloutMovesWithTheWind() throws Exception {
        List<WindView> asked = new ArrayList<>();
        SiteCanvas[] drawn = new SiteCanvas[1];
        drawn[0] = new SiteCanvas(shell, new TriedWind(() -> asked.add(drawn[0].state().wind())), revealed::add);
        SiteCanvas canvas = drawn[0];
        canvas.dark(false);
        canvas.site(site);
        Pictures script = Pictures.of(canvas, 1000, 760);
        script.keep("site-light");
        assertThat(script.count(0, 0, 1000, 760, Pictures.near(Palette.LIGHT.info()))).as("audience").isGreaterThan(800);
        canvas.state().tryWind(new WindView(90, 9, 12.0));
        assertThat(asked).containsExactly(new WindView(90, 9, 12.0));
        canvas.site(turned);
        canvas.state().selectPosition("D");
        Pictures east = Pictures.of(canvas, 1000, 760);
        east.keep("site-wind-tried-light");
        assertThat(east.different(script, 200, 150, 600, 450)).isGreaterThan(3000);
        canvas.dark(true);
        Pictures.of(canvas, 1000, 760).keep("site-dark");
    }

    /** As wide as beside the script on a small screen: nothing lies on the plan, so that its ground is seen from corner to corner. */
    @Test
    void aSmallSiteIsSeenWhole() throws Exception {
        SiteCanvas canvas = new SiteCanvas(shell, new TriedWind(() -> { }), revealed::add);
        canvas.dark(false);
        canvas.site(site);
        Pictures small = Pictures.of(canvas, 400, 300);
        small.keep("site-small-light");
        double[] corners = {canvas.state().ground().px(-320), canvas.state().ground().py(280), canvas.state().ground().px(320), canvas.state().ground().py(-230)};
        assertThat(corners[2] - corners[0]).isGreaterThan(200);
        for (double y : new double[] {corners[1], corners[3]}) {
            assertThat(small.count(corners[0], y - 3, corners[2] - corners[0], 6, Pictures.near(Palette.LIGHT.ink())))
                    .as("the boundary at %s", y).isGreaterThan((int) ((corners[2] - corners[0]) / 2));
        }
        canvas.scale(2);
        Pictures.of(canvas, 800, 600).keep("site-small-200-percent");
    }

    @Test
    void thePageOfASheetIsThere() throws Exception {
        SheetPane pane = new SheetPane(shell, () -> { }, format -> { });
        pane.list(sheets);
        int index = sheets.sheets().stream().map(SheetList.Entry::id).toList().indexOf("8");
        pane.state().choose(index);
        pane.page(pages.get(0));
        Pictures page = Pictures.of(pane.canvas(), 800, 760);
        assertThat(page.count(50, 50, 700, 660, Pictures.near(0xFFFFFF))).isGreaterThan(200_000);
        assertThat(page.count(50, 50, 700, 660, pixel -> (pixel >> 8 & 0xFF) < 80)).isGreaterThan(2000);
        page.keep("sheets-page");
        pane.canvas().dark(true);
        Pictures.of(pane.canvas(), 800, 760).keep("sheets-page-dark");
        pane.state().choose(sheets.sheets().stream().map(SheetList.Entry::id).toList().indexOf("4 D"));
        pane.page(pages.get(0));
        assertThat(pane.state().words()).as("a page of another sheet").contains("being laid out");
        pane.page(pages.get(1));
        assertThat(pane.state().words()).contains("page 1 of");
    }
}
