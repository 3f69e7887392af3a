package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.eclipse.jface.bindings.keys.KeySequence;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.client.Tell;
import org.girandole.studio.editor.Links;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** From a word to what it means. */
class LinksTest {
    private static final String OPEN = "org.eclipse.ui.edit.text.open.hyperlink";

    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private static IHyperlink link(ITextEditor editor, int offset) {
        IHyperlink[] links = new Links().detectHyperlinks(Ui.viewer(editor), new Region(offset, 0), false);
        assertThat(links).hasSize(1);
        return links[0];
    }

    private static String text(ITextEditor editor, IHyperlink link) throws Exception {
        return Ui.document(editor).get(link.getHyperlinkRegion().getOffset(), link.getHyperlinkRegion().getLength());
    }

    @Test
    void theNameOfAUsedFileLeadsToTheFile() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IHyperlink link = link(editor, Ui.caretAfter(editor, "use \"cata"));
        assertThat(text(editor, link)).isEqualTo("catalogue.show");
        link.open();
        Ui.until("the file", () -> active("catalogue.show"));
    }

    @Test
    void anEffectLeadsToItsDefinitionInAnotherFile() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IHyperlink link = link(editor, Ui.caretAfter(editor, "SilverMi"));
        assertThat(text(editor, link)).isEqualTo("SilverMine75");
        link.open();
        Ui.until("the definition", () -> active("catalogue.show") && selected().equals("SilverMine75")
                && line().startsWith("mine SilverMine75"));
    }

    @Test
    void aKeyFollowsThem() throws Exception {
        IBindingService keys = PlatformUI.getWorkbench().getService(IBindingService.class);
        ITextEditor editor = Ui.open(shows.show());
        Ui.until("F3 opens", () -> keys.getPerfectMatch(KeySequence.getInstance("F3")) != null
                && OPEN.equals(keys.getPerfectMatch(KeySequence.getInstance("F3")).getParameterizedCommand().getId()));
        Ui.caretAfter(editor, "section Opening from Sta");
        Ui.run(OPEN);
        Ui.until("the mark", () -> line().strip().startsWith("mark Start") && selected().equals("Start"));
    }

    @Test
    void aWordWithoutDefinitionSaysSo() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IHyperlink link = link(editor, Ui.caretAfter(editor, "tempo { at 0:00.000  120 bp"));
        link.open();
        Ui.until("a word in the status line", () -> Tell.last().equals("Nothing is defined under this word."));
        assertThat(active(shows.show().getName())).isTrue();
    }

    private static boolean active(String file) {
        IEditorPart editor = Ui.page().getActiveEditor();
        return editor != null && editor.getEditorInput().getName().equals(file);
    }

    private static ITextSelection selection() {
        return (ITextSelection) ((ITextEditor) Ui.page().getActiveEditor()).getSelectionProvider().getSelection();
    }

    private static String selected() {
        return selection().getText();
    }

    private static String line() throws Exception {
        var document = Ui.document((ITextEditor) Ui.page().getActiveEditor());
        var line = document.getLineInformation(selection().getStartLine());
        return document.get(line.getOffset(), line.getLength());
    }
}
