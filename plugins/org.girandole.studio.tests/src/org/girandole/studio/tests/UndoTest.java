package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.eclipse.core.resources.IMarker;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Tell;
import org.girandole.studio.editor.RenameHandler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Whatever the server changes is one step of the editor's own Undo, and one of its Redo. */
class UndoTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @Test
    void aQuickFixIsOneStep() throws Exception {
        shows.edit("cue First at Start  B       RedPeony75", "cue First at Start  B       RedPeony57");
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String before = document.get();
        IMarker marker = Ui.marker(shows.show(), "unresolved-name");
        fix(marker, "RedPeony75").run(marker);
        Ui.settle();
        String after = document.get();
        assertThat(after).contains("cue First at Start  B       RedPeony75");
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
        editor.getAction(ITextEditorActionConstants.REDO).run();
        Ui.settle();
        assertThat(document.get()).isEqualTo(after);
        Ui.until("the finding goes with the mistake", () -> !Ui.hasMarker(shows.show(), "unresolved-name"));
    }

    @Test
    void aFixOfManyLinesIsOneStep() throws Exception {
        shows.edit("cue First at Start  B       RedPeony75", "cue First at Start  B       BluePeony75");
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String before = document.get();
        IMarker marker = Ui.marker(shows.show(), "unresolved-name");
        fix(marker, "Define the effect").run(marker);
        Ui.settle();
        assertThat(document.getNumberOfLines()).isGreaterThan(before.split("\n", -1).length);
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
    }

    static IMarkerResolution fix(IMarker marker, String word) {
        IMarkerResolution[] found = new IMarkerResolution[1];
        Ui.until("a fix with " + word, () -> {
            for (IMarkerResolution one : IDE.getMarkerHelpRegistry().getResolutions(marker)) {
                if (one.getLabel().contains(word)) {
                    found[0] = one;
                }
            }
            return found[0] != null;
        });
        return found[0];
    }

    @Test
    void aRenameInAFileThatIsOpenAndOneThatIsNotIsOneStep() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        String catalogue = shows.catalogue().readString();
        String script = Ui.document(editor).get();
        rename(editor);
        assertThat(shows.catalogue().readString()).isEqualTo(catalogue.replace("RedPeony75", "CrimsonPeony75"));
        undoEverywhere(editor);
        assertThat(Ui.document(editor).get()).isEqualTo(script);
        assertThat(shows.catalogue().readString()).isEqualTo(catalogue);
    }

    @Test
    void aRenameInTwoOpenFilesIsOneStep() throws Exception {
        ITextEditor other = Ui.open(shows.catalogue());
        ITextEditor editor = Ui.open(shows.show());
        String catalogue = Ui.document(other).get();
        String script = Ui.document(editor).get();
        rename(editor);
        assertThat(Ui.document(other).get()).isEqualTo(catalogue.replace("RedPeony75", "CrimsonPeony75"));
        assertThat(other.isDirty()).as("what is open is left to its editor to save").isTrue();
        undoEverywhere(editor);
        assertThat(Ui.document(editor).get()).isEqualTo(script);
        assertThat(Ui.document(other).get()).isEqualTo(catalogue);
    }

    @Test
    void aRenameIsNotLostWhenTheTextChangesMeanwhile() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String script = document.get();
        ask(editor, "CrimsonPeony75");
        document.replace(0, 0, "// Above it.\n");
        Ui.until("the script is renamed", () -> document.get().equals("// Above it.\n" + script.replace("RedPeony75", "CrimsonPeony75")));
    }

    @Test
    void aRenameIsNotWrittenOverANewerTextOfAnotherFile() throws Exception {
        IDocument other = Ui.document(Ui.open(shows.catalogue()));
        ITextEditor editor = Ui.open(shows.show());
        String catalogue = other.get();
        String script = Ui.document(editor).get();
        ask(editor, "CrimsonPeony75");
        other.replace(0, 0, "// Above it.\n");
        Ui.until("the script is renamed", () -> Ui.document(editor).get().equals(script.replace("RedPeony75", "CrimsonPeony75")));
        assertThat(other.get()).isEqualTo("// Above it.\n" + catalogue.replace("RedPeony75", "CrimsonPeony75"));
    }

    @Test
    void aRenameOfANameThatIsGoneIsSaidToBeLost() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        int end = ask(editor, "CrimsonPeony75");
        document.replace(end, 0, "x");
        String script = document.get();
        Ui.until("the loss is told", () -> Tell.last().startsWith("RedPeony75 was not renamed. The text has changed meanwhile"));
        assertThat(document.get()).isEqualTo(script);
    }

    @Test
    void aRenameToANameThatIsTakenIsRefusedWithTheReason() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        String script = Ui.document(editor).get();
        ask(editor, "SilverMine75");
        Ui.until("the refusal is told", () -> Tell.last().startsWith("RedPeony75 was not renamed. 'SilverMine75' is already an effect"));
        assertThat(Ui.document(editor).get()).isEqualTo(script);
    }

    private static void rename(ITextEditor editor) throws Exception {
        IDocument document = Ui.document(editor);
        String script = document.get();
        ask(editor, "CrimsonPeony75");
        Ui.until("the script is renamed", () -> document.get().equals(script.replace("RedPeony75", "CrimsonPeony75")));
    }

    /** Asks for the first use of an effect to be renamed; where that ends. */
    private static int ask(ITextEditor editor, String name) throws Exception {
        int end = Ui.caretAfter(editor, "RedPeony75");
        RenameHandler.rename(ShowClient.get().text(Ui.document(editor)).orElseThrow(), end - "RedPeony75".length(), "RedPeony75", name);
        return end;
    }

    private static void undo(ITextEditor editor) {
        editor.getAction(ITextEditorActionConstants.UNDO).run();
        Ui.settle();
    }

    /** The platform asks before it undoes something in a file that is not the one being looked at. */
    private static void undoEverywhere(ITextEditor editor) throws Exception {
        String asked = Ui.answering("OK", () -> undo(editor));
        assertThat(asked).contains("Rename RedPeony75 to CrimsonPeony75");
    }
}
