package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.eclipse.core.resources.IFile;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.inlined.AbstractInlinedAnnotation;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.editors.text.EditorsUI;
import org.eclipse.ui.texteditor.AbstractDecoratedTextEditorPreferenceConstants;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.SiteCanvas;
import org.girandole.studio.views.swt.TimelineCanvas;
import org.girandole.studio.views.workbench.ShowHub;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The whole workbench with the example, light and dark, as it is on the display. */
class WorkbenchPicturesTest {
    private static final String LIGHT = "org.eclipse.e4.ui.css.theme.e4_default";
    private static final String DARK = "org.eclipse.e4.ui.css.theme.e4_dark";

    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private final IThemeEngine themes = PlatformUI.getWorkbench().getService(IThemeEngine.class);
    private Rectangle before;
    private IFile show;
    private ITextEditor editor;

    @BeforeEach
    void open() throws Exception {
        before = Ui.window().getShell().getBounds();
        Ui.window().getShell().setBounds(0, 0, 1280, 1000);
        // As the product has it.
        EditorsUI.getPreferenceStore().setValue(AbstractDecoratedTextEditorPreferenceConstants.EDITOR_LINE_NUMBER_RULER, true);
        shows.project().close(null);
        show = Example.create();
        Ui.page().resetPerspective();
        editor = Ui.open(show);
        Ui.page().showView("org.girandole.studio.views.site");
        Ui.page().activate(editor);
        Stage stage = ShowHub.get(Display.getCurrent()).stage();
        Ui.until("the example is on the stage", () -> stage.plan().nothing() == null && stage.plan().uri().contains("harbour-night/harbour"));
        SiteCanvas site = Screen.find(SiteCanvas.class);
        Ui.until("the site", () -> site.state().site().nothing() == null && site.state().settled());
    }

    @AfterEach
    void close() throws Exception {
        themes.setTheme(LIGHT, false);
        Ui.page().closeAllEditors(false);
        show.getProject().delete(true, true, null);
        Ui.window().getShell().setBounds(before);
        EditorsUI.getPreferenceStore().setToDefault(AbstractDecoratedTextEditorPreferenceConstants.EDITOR_LINE_NUMBER_RULER);
        Ui.settle();
    }

    @Test
    void light() throws Exception {
        show(LIGHT);
        Screen screen = Screen.now();
        screen.keep("studio-light");
        assertThat(screen.share(screen.place(text()), pixel -> luma(pixel) > 230)).as("light ground").isGreaterThan(0.8);
        whole(screen, Palette.LIGHT);
    }

    @Test
    void dark() throws Exception {
        show(DARK);
        Screen screen = Screen.now();
        screen.keep("studio-dark");
        assertThat(screen.share(screen.place(text()), pixel -> luma(pixel) < 60)).as("dark ground").isGreaterThan(0.8);
        whole(screen, Palette.DARK);
    }

    private static int luma(int pixel) {
        return ((pixel >> 16 & 0xFF) * 3 + (pixel >> 8 & 0xFF) * 6 + (pixel & 0xFF)) / 10;
    }

    private StyledText text() {
        return Ui.viewer(editor).getTextWidget();
    }

    private void show(String theme) throws Exception {
        themes.setTheme(theme, false);
        IDocument document = Ui.document(editor);
        int cue = document.get().indexOf("at bar 26");
        editor.selectAndReveal(cue, 0);
        // By the viewer: what stands beside lines follows its scrolling, not that of the widget.
        Ui.viewer(editor).setTopIndex(text().getLineAtOffset(cue) - 8);
        Ui.page().activate(editor);
        for (String word : new String[] {"repeat 4", "GoldComet  inward", "Swell + 2"}) {
            Ui.until(word + " has a colour", () -> text().getStyleRangeAtOffset(text().getText().indexOf(word)) != null
                    && text().getStyleRangeAtOffset(text().getText().indexOf(word)).foreground != null);
        }
        Ui.until("fire times", () -> inlined() > 20);
        for (String fired : new String[] {"at 0                 Wings       RedComet", "at bar 25"}) {
            Ui.until("a fire time is drawn beside " + fired, () -> fireTime(Screen.now(), fired) > 60);
        }
        Ui.until("problems", () -> Stream.of(problems().getItems()).anyMatch(group -> group.getText().contains("Warnings")));
        Stream.of(problems().getItems()).forEach(group -> group.setExpanded(true));
    }

    /** Pixels of letters behind the end of a cue's line. */
    private int fireTime(Screen screen, String cue) {
        StyledText text = text();
        int ground = Screen.rgb(text.getBackground().getRGB());
        int end = text.getText().indexOf('\n', text.getText().indexOf(cue)) - 1;
        Rectangle line = text.getTextBounds(end, end);
        Rectangle beside = new Rectangle(line.x + line.height, line.y, 220, line.height);
        return screen.count(screen.place(text, beside), pixel -> Palette.contrast(pixel, ground) >= 4.5);
    }

    private static Tree problems() {
        return Widgets.all(Ui.window().getShell(), Tree.class).stream()
                .filter(tree -> tree.getColumnCount() > 3 && tree.getItemCount() > 0).findFirst().orElseThrow(() -> new AssertionError("no problems"));
    }

    private int inlined() {
        int[] count = new int[1];
        ((ISourceViewer) Ui.viewer(editor)).getAnnotationModel().getAnnotationIterator().forEachRemaining(annotation ->
                count[0] += annotation instanceof AbstractInlinedAnnotation ? 1 : 0);
        return count[0];
    }

    /** No part is blank, and what is to be read can be read: contrast as WCAG 2.1 asks of text, 4.5 to 1 (success criterion 1.4.3). */
    private void whole(Screen screen, Palette palette) throws Exception {
        StyledText text = text();
        int ground = Screen.rgb(text.getBackground().getRGB());
        int first = text.getOffsetAtLine(text.getTopIndex());
        Set<Integer> colours = new TreeSet<>();
        for (StyleRange style : text.getStyleRanges(first, text.getOffsetAtLine(text.getTopIndex() + 20) - first)) {
            if (style.foreground != null && style.length > 0) {
                int colour = Screen.rgb(style.foreground.getRGB());
                colours.add(colour);
                assertThat(Palette.contrast(colour, ground)).as(text.getText(style.start, style.start + style.length - 1)).isGreaterThanOrEqualTo(4.5);
                Rectangle word = text.getTextBounds(style.start, style.start + style.length - 1);
                if (style.length < 3 || word.height > text.getLineHeight() || !text.getClientArea().contains(word.x + word.width, word.y + word.height)) {
                    continue;
                }
                assertThat(screen.count(screen.place(text, word), Screen.near(colour))).as(text.getText(style.start, style.start + style.length - 1))
                        .isGreaterThan(0);
            }
        }
        assertThat(colours).as("kinds of words differ").hasSizeGreaterThan(4);
        assertThat(fireTime(screen, "at bar 25")).as("a fire time beside the cue").isGreaterThan(60);
        Tree outline = Widgets.all(Ui.window().getShell(), Tree.class).stream()
                .filter(tree -> Stream.of(tree.getItems()).anyMatch(item -> item.getText().contains("soundtrack"))).findFirst().orElseThrow();
        Rectangle item = outline.getItem(4).getBounds();
        assertThat(outline.getItem(4).getText()).isEqualTo("Tides  soundtrack");
        int paper = Screen.rgb(outline.getBackground().getRGB());
        assertThat(screen.count(screen.place(outline, new Rectangle(item.x + item.width / 2, item.y, item.width / 2, item.height)),
                pixel -> Palette.contrast(pixel, paper) >= 4.5)).as("what kind of thing an entry of the outline is").isGreaterThan(20);
        TimelineCanvas timeline = Screen.find(TimelineCanvas.class);
        SiteCanvas site = Screen.find(SiteCanvas.class);
        for (Control canvas : new Control[] {timeline, site}) {
            Rectangle place = screen.place(canvas);
            assertThat(screen.share(place, Screen.near(palette.paper()).or(Screen.near(palette.band())))).as("its own ground").isBetween(0.4, 0.95);
            assertThat(screen.count(place, Screen.near(palette.ink()))).as("its own ink").isGreaterThan(300);
        }
    }
}
