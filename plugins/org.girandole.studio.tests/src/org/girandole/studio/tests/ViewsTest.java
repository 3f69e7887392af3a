package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IActionBars;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.protocol.CueView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.SheetPane;
import org.girandole.studio.views.swt.SiteCanvas;
import org.girandole.studio.views.swt.SkyCanvas;
import org.girandole.studio.views.swt.TimelineCanvas;
import org.girandole.studio.views.workbench.ShowHub;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The views open, follow the script of the active editor, and lead back to its lines. */
class ViewsTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private ITextEditor editor;

    private Stage open(String view) throws Exception {
        Ui.page().showView("org.girandole.studio.views." + view);
        editor = Ui.open(shows.show());
        Stage stage = ShowHub.get(Display.getCurrent()).stage();
        Ui.until("the show is on the stage", () -> stage.plan().nothing() == null && !stage.plan().cues().isEmpty()
                && stage.plan().uri().contains(shows.project().getName()));
        return stage;
    }

    @Test
    void theTimelineFollowsTheCaretAndLeadsBack() throws Exception {
        Stage stage = open("timeline");
        TimelineCanvas canvas = Screen.find(TimelineCanvas.class);
        Ui.until("lanes", () -> canvas.state().frame() != null && !canvas.state().score().lanes().isEmpty());
        IDocument document = Ui.document(editor);
        List<CueView> cues = stage.plan().cues();
        CueView last = cues.get(cues.size() - 1);
        editor.selectAndReveal(document.getLineOffset(last.source().line() - 1), 0);
        Ui.until("the cue of the caret's line", () -> stage.selected().map(CueView::source).filter(last.source()::equals).isPresent());
        stage.select(1);
        Event enter = new Event();
        enter.keyCode = SWT.CR;
        enter.character = SWT.CR;
        canvas.notifyListeners(SWT.KeyDown, enter);
        int line = cues.get(0).source().line() - 1;
        Ui.until("the line of the cue", () -> ((ITextSelection) editor.getSelectionProvider().getSelection()).getStartLine() == line);
    }

    @Test
    void theTimelineFollowsTheText() throws Exception {
        Stage stage = open("timeline");
        CueView cue = stage.plan().cues().get(0);
        IDocument document = Ui.document(editor);
        int line = document.getLineOffset(cue.source().line() - 1);
        int before = stage.plan().cues().size();
        document.replace(line, 0, "// ");
        Ui.until("a cue less", () -> stage.plan().nothing() == null && stage.plan().cues().size() < before);
        document.replace(line, 3, "");
        Ui.until("all cues again", () -> stage.plan().cues().size() == before);
    }

    /** No finding changes with the rise, so that nothing but the end of the check tells of it. */
    @Test
    void theTimelineFollowsAFileThatIsNotOpen() throws Exception {
        Stage stage = open("timeline");
        long before = stage.plan().cues().get(0).fireUs();
        String catalogue = shows.catalogue().readString();
        assertThat(catalogue).contains("rise    2.4 s");
        shows.catalogue().write(catalogue.replace("rise    2.4 s", "rise    2.5 s").getBytes(StandardCharsets.UTF_8), true, false, false, null);
        Ui.until("fired a tenth of a second earlier", () -> stage.plan().cues().get(0).fireUs() == before - 100_000);
    }

    @Test
    void aRehearsalIsChosenAndFollowsTheText() throws Exception {
        shows.edit("release {", "rehearse \"Let go\" of Song {\n  released from 0:50 to 0:55\n}\n\nrelease {");
        Stage stage = open("timeline");
        Ui.until("the rehearsals", () -> stage.night().choices().size() == 1);
        Event key = new Event();
        key.character = 'r';
        Screen.find(TimelineCanvas.class).notifyListeners(SWT.KeyDown, key);
        Ui.until("the night", () -> stage.night().nothing() == null);
        // The last three are seen at bar 28 of four beats at 120 a minute, 54 s, and fired 2.4 s earlier: the control is released.
        assertThat(stage.night().cues().stream().filter(cue -> cue.end().equals("suppressed")).count()).isEqualTo(3);
        IDocument document = Ui.document(editor);
        document.replace(document.get().indexOf("released from 0:50"), "released from 0:50".length(), "released from 0:53");
        Ui.until("the night of the text as it stands", () -> stage.night().cues().stream().noneMatch(cue -> cue.end().equals("suppressed")));
    }

    @Test
    void theSiteOfAShowDoesNotStayForAScriptThatHasNone() throws Exception {
        open("site");
        SiteCanvas site = Screen.find(SiteCanvas.class);
        Ui.until("the site", () -> site.state().site().nothing() == null);
        IFile other = shows.project().getFile("other.show");
        other.write("at at at".getBytes(StandardCharsets.UTF_8), true, false, false, null);
        Ui.open(other);
        Ui.until("no site", () -> site.state().site().nothing() != null);
        Ui.page().activate(editor);
        Ui.until("the site again", () -> site.state().site().nothing() == null);
    }

    /** Keys reach the menu of a view, not its tool bar. */
    @Test
    void whateverAButtonDoesIsInTheMenuOfTheViewToo() throws Exception {
        for (String view : List.of("timeline", "site")) {
            IActionBars bars = ((IViewPart) Ui.page().showView("org.girandole.studio.views." + view)).getViewSite().getActionBars();
            List<IAction> buttons = Stream.of(bars.getToolBarManager().getItems()).filter(ActionContributionItem.class::isInstance)
                    .map(item -> ((ActionContributionItem) item).getAction()).toList();
            assertThat(buttons).as(view).hasSizeGreaterThan(3).allSatisfy(button -> assertThat(button.getToolTipText()).isNotBlank());
            List<String> inMenu = Stream.of(bars.getMenuManager().getItems()).map(item -> item instanceof MenuManager menu ? menu.getMenuText()
                    : item instanceof ActionContributionItem action ? action.getAction().getText() : "").toList();
            assertThat(inMenu).as(view).containsAll(buttons.stream().map(IAction::getText).toList());
        }
    }

    @Test
    void siteSkyAndSheetsShowTheSameShow() throws Exception {
        Ui.page().showView("org.girandole.studio.views.sky");
        Ui.page().showView("org.girandole.studio.views.sheets");
        open("site");
        Ui.page().showView("org.girandole.studio.views.sheets");
        SiteCanvas site = Screen.find(SiteCanvas.class);
        Ui.until("the site", () -> site.state().site().nothing() == null && !site.state().site().positions().isEmpty());
        site.state().tryWind(new WindView(90, 6, null));
        Ui.until("the site in the wind that is tried", () -> site.state().settled());
        assertThat(site.state().site().wind().fromDeg()).isEqualTo(90);
        SheetPane sheets = Screen.find(SheetPane.class);
        sheets.canvas().redraw();
        Ui.until("the first sheet", () -> sheets.state().page().nothing() == null);
        assertThat(sheets.state().names()).isNotEmpty();
        assertThat(Screen.find(SkyCanvas.class).isDisposed()).isFalse();
    }
}
