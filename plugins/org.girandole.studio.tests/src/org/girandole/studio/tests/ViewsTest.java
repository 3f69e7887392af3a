package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
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
