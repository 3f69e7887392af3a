package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourceAttributes;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.client.Findings;
import org.girandole.studio.client.KnownTexts;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Tell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Files that are not as an editor would like them: never a dialog, never a logged error, never lost text. */
class BadInputTest {
    private static final int MEGABYTE = 1_000_000;
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @AfterEach
    void noDialog() {
        assertThat(Display.getCurrent().getShells()).filteredOn(shell -> shell.isVisible() && shell.getText().length() > 0
                && shell != Ui.window().getShell()).as("dialogs").isEmpty();
    }

    @Test
    void aFileOutsideOfAnyProjectIsCheckedInItsEditor() throws Exception {
        Path folder = Files.createTempDirectory("girandole-studio-test");
        Path file = Files.writeString(folder.resolve("lone.show"), "show Lone \"Lone\" {\n  site Nowhere\n}\n");
        try {
            ITextEditor editor = Adapters.adapt(IDE.openEditorOnFileStore(Ui.page(), EFS.getLocalFileSystem().fromLocalFile(file.toFile())),
                    ITextEditor.class);
            Ui.until("a finding in the margin", () -> {
                boolean[] found = new boolean[1];
                ((ISourceViewer) Ui.viewer(editor)).getAnnotationModel().getAnnotationIterator().forEachRemaining(annotation -> {
                    found[0] |= annotation instanceof Findings.FindingAnnotation && annotation.getText().contains("Nowhere");
                });
                return found[0];
            });
        } finally {
            Ui.page().closeAllEditors(false);
            Files.delete(file);
            Files.delete(folder);
        }
    }

    @Test
    void aReadOnlyFileStaysAsItIs() throws Exception {
        ResourceAttributes attributes = new ResourceAttributes();
        attributes.setReadOnly(true);
        ITextEditor editor = Ui.open(shows.show());
        String before = Ui.document(editor).get();
        shows.show().setResourceAttributes(attributes);
        try {
            org.eclipse.lsp4j.TextEdit edit = new org.eclipse.lsp4j.TextEdit(new org.eclipse.lsp4j.Range(
                    new org.eclipse.lsp4j.Position(0, 0), new org.eclipse.lsp4j.Position(0, 1)), "x");
            OpenText text = ShowClient.get().text(Ui.document(editor)).orElseThrow();
            boolean done = org.girandole.studio.client.Edits.apply("Try", new org.eclipse.lsp4j.WorkspaceEdit(
                    java.util.Map.of(text.uri(), java.util.List.of(edit))), KnownTexts.now());
            assertThat(done).isFalse();
            assertThat(Tell.last()).contains("read-only").contains(shows.show().getName());
            assertThat(Ui.document(editor).get()).isEqualTo(before);
        } finally {
            attributes.setReadOnly(false);
            shows.show().setResourceAttributes(attributes);
        }
    }

    @Test
    void anAnswerToAnOlderTextIsNotApplied() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        OpenText text = ShowClient.get().text(document).orElseThrow();
        var asked = KnownTexts.now();
        document.replace(0, 0, "// newer\n");
        String newer = document.get();
        org.eclipse.lsp4j.TextEdit edit = new org.eclipse.lsp4j.TextEdit(new org.eclipse.lsp4j.Range(
                new org.eclipse.lsp4j.Position(0, 0), new org.eclipse.lsp4j.Position(0, 1)), "x");
        assertThat(org.girandole.studio.client.Edits.apply("Try",
                new org.eclipse.lsp4j.WorkspaceEdit(java.util.Map.of(text.uri(), java.util.List.of(edit))), asked)).isFalse();
        assertThat(document.get()).isEqualTo(newer);
    }

    @Test
    void anAnswerThatReachesIntoAnotherTextIsNotAppliedWhenThatOneIsNewer() throws Exception {
        IDocument other = Ui.document(Ui.open(shows.catalogue()));
        IDocument document = Ui.document(Ui.open(shows.show()));
        String before = document.get();
        var asked = KnownTexts.now();
        other.replace(0, 0, "// newer\n");
        String newer = other.get();
        org.eclipse.lsp4j.TextEdit edit = new org.eclipse.lsp4j.TextEdit(new org.eclipse.lsp4j.Range(
                new org.eclipse.lsp4j.Position(0, 0), new org.eclipse.lsp4j.Position(0, 1)), "x");
        assertThat(org.girandole.studio.client.Edits.apply("Try", new org.eclipse.lsp4j.WorkspaceEdit(java.util.Map.of(
                ShowClient.get().text(document).orElseThrow().uri(), java.util.List.of(edit),
                ShowClient.get().text(other).orElseThrow().uri(), java.util.List.of(edit))), asked)).isFalse();
        assertThat(document.get()).isEqualTo(before);
        assertThat(other.get()).isEqualTo(newer);
    }

    @Test
    void aFileThatChangesOnDiskWhileItIsDirtyLosesNeitherTextNorFindings() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        for (int round = 0; round < 10; round++) {
            document.replace(0, 0, "// mine\nshw\n");
            Files.writeString(Path.of(shows.show().getLocationURI()), "// theirs " + round + "\n");
            shows.show().refreshLocal(0, null);
            Ui.until("the mistake is found", () -> Ui.hasMarker(shows.show(), "syntax"));
            assertThat(document.get()).startsWith("// mine\n").contains("RedPeony75");
            document.replace(0, "// mine\nshw\n".length(), "");
            shows.show().refreshLocal(0, null);
            Ui.until("and goes", () -> !Ui.hasMarker(shows.show(), "syntax"));
        }
    }

    @Test
    void savingOverAFileThatChangedOnDiskIsAskedFirst() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        document.replace(0, 0, "// mine\n");
        String mine = document.get();
        Path file = Path.of(shows.show().getLocationURI());
        Files.writeString(file, "// theirs\n");
        shows.show().refreshLocal(0, null);
        String asked = Ui.answering("No", () -> editor.doSave(new org.eclipse.core.runtime.NullProgressMonitor()));
        assertThat(asked).contains(shows.show().getName()).contains("overwrite").doesNotContain("Exception");
        assertThat(document.get()).isEqualTo(mine);
        assertThat(editor.isDirty()).isTrue();
        assertThat(Files.readString(file)).isEqualTo("// theirs\n");
        Ui.answering("Yes", () -> editor.doSave(new org.eclipse.core.runtime.NullProgressMonitor()));
        assertThat(Files.readString(file)).isEqualTo(mine);
    }

    @Test
    void aHugeFileCanBeEdited() throws Exception {
        String line = "// " + "x".repeat(96) + "\n";
        IFile huge = shows.project().getFile("huge.show");
        huge.write(line.repeat(50 * MEGABYTE / line.length()).getBytes(StandardCharsets.UTF_8), true, false, false, null);
        ITextEditor editor = Ui.open(huge);
        IDocument document = Ui.document(editor);
        assertThat(document.getLength()).isGreaterThan(49 * MEGABYTE);
        document.replace(0, 0, "// still here\n");
        editor.doSave(new org.eclipse.core.runtime.NullProgressMonitor());
        Ui.settle();
        assertThat(Files.readString(Path.of(huge.getLocationURI()))).startsWith("// still here\n");
    }

    @Test
    void halfTypedTextsAreOnlyFindings() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String whole = document.get();
        for (int length = 0; length < whole.length(); length += whole.length() / 25) {
            document.set(whole.substring(0, length));
            Ui.settle();
        }
        document.set("show \"\u0000 { at at at {{{ \uD83C");
        Ui.until("findings", () -> !Ui.markers(shows.show()).isEmpty());
        document.set(whole);
        Ui.until("no syntax error is left", () -> !Ui.hasMarker(shows.show(), "syntax"));
    }
}
