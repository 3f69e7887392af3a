package org.girandole.studio.views.swt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.girandole.protocol.SheetList;
import org.girandole.studio.views.Shows;
import org.girandole.studio.views.site.TriedWind;
import org.girandole.studio.views.stage.Playback;
import org.girandole.studio.views.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The views for somebody who does not see them, or has no mouse. */
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+", disabledReason = "there is no display: run under xvfb-run")
class AccessTest {
    private final Stage stage = new Stage();
    private final Display display = Display.getDefault();
    private final List<String> rendered = new ArrayList<>();
    private Shell shell;
    private TimelineCanvas timeline;
    private SiteCanvas site;
    private SkyCanvas sky;

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        Playback playback = new Playback(stage, () -> 0, () -> { });
        stage.show(Shows.missing("file:///tune.mid"));
        timeline = new TimelineCanvas(shell, stage, playback, place -> { }, rendered::add);
        site = new SiteCanvas(shell, new TriedWind(() -> { }), place -> { });
        sky = new SkyCanvas(shell, stage, playback);
        timeline.picture(900, 400).dispose();
        site.picture(900, 400).dispose();
        sky.picture(900, 400).dispose();
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    @Test
    void eachDrawingHasANameOfItsOwnAndSaysWhatItShows() {
        assertThat(List.of(timeline.title(), site.title(), sky.title())).doesNotHaveDuplicates().allSatisfy(name -> assertThat(name).isNotBlank());
        for (DrawnCanvas canvas : List.of(timeline, site, sky)) {
            assertThat(canvas.description()).as(canvas.title()).isNotBlank();
            assertThat(canvas.keys()).as(canvas.title()).isNotBlank();
        }
        stage.select(3);
        assertThat(timeline.description()).contains("cue 3").contains("Some shell").contains("at A").contains("error");
        stage.select(0);
        assertThat(timeline.description()).contains("1 error");
    }

    /** What a key does is said, and what is said is done. */
    @ParameterizedTest
    @CsvSource({"timeline, +, Plus", "timeline, -, minus", "timeline, 0, 0:", "timeline, f, F:", "timeline, t, T:", "timeline, r, R:", "timeline, m, M:",
        "site, +, Plus", "site, -, minus", "site, 0, 0:", "site, s, S:", "site, p, P and", "site, o, O:", "site, l, L:"})
    void lettersThatDoSomethingAreNamed(String name, char key, String words) {
        DrawnCanvas canvas = name.equals("timeline") ? timeline : site;
        assertThat(canvas.keys()).contains(words);
        Event event = new Event();
        event.character = key;
        assertThat(canvas.key(event)).as("it takes the key").isTrue();
    }

    @Test
    void everyLetterThatIsTakenIsNamed() {
        for (DrawnCanvas canvas : List.of(timeline, site, sky)) {
            for (char letter = 'a'; letter <= 'z'; letter++) {
                Event event = new Event();
                event.character = letter;
                if (canvas.key(event)) {
                    assertThat(canvas.keys()).as(canvas.title() + " takes " + letter).containsPattern("\\b" + Character.toUpperCase(letter) + "\\b");
                }
            }
        }
    }

    @Test
    void tabLeavesADrawingAndArrowsDoNot() {
        for (DrawnCanvas canvas : List.of(timeline, site, sky)) {
            assertThat(traverse(canvas, SWT.TRAVERSE_TAB_NEXT)).as(canvas.title()).isTrue();
            assertThat(traverse(canvas, SWT.TRAVERSE_TAB_PREVIOUS)).as(canvas.title()).isTrue();
            assertThat(traverse(canvas, SWT.TRAVERSE_ARROW_NEXT)).as(canvas.title()).isFalse();
            assertThat(traverse(canvas, SWT.TRAVERSE_RETURN)).as(canvas.title()).isFalse();
        }
    }

    private static boolean traverse(Control control, int detail) {
        Event event = new Event();
        event.detail = detail;
        event.doit = true;
        control.notifyListeners(SWT.Traverse, event);
        return event.doit;
    }

    @Test
    void thePieceIsPlayedByKey() {
        Event event = new Event();
        event.character = 'm';
        timeline.notifyListeners(SWT.KeyDown, event);
        assertThat(rendered).containsExactly("file:///tune.mid");
    }

    @Test
    void theSheetsAreReachedByTabAndHaveNames() {
        SheetPane pane = new SheetPane(shell, () -> { }, format -> { });
        pane.list(new SheetList("", null, "ABCD", List.of()));
        List<Control> stops = new ArrayList<>();
        collect(pane, stops);
        assertThat(stops.stream().filter(Button.class::isInstance).map(button -> ((Button) button).getText())).hasSize(6).doesNotHaveDuplicates()
                .allSatisfy(text -> assertThat(text).isNotBlank());
        stops.removeIf(Label.class::isInstance);
        assertThat(stops).hasSize(8).allSatisfy(control -> assertThat(control.getStyle() & SWT.NO_FOCUS).isZero());
        assertThat(pane.canvas().title()).isEqualTo("Page");
        assertThat(pane.canvas().keys()).isNotBlank();
    }

    private static void collect(Control control, List<Control> stops) {
        if (control instanceof Composite composite && composite.getChildren().length > 0) {
            for (Control child : composite.getChildren()) {
                collect(child, stops);
            }
        } else {
            stops.add(control);
        }
    }
}
