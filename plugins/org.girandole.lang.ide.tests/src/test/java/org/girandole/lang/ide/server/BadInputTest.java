package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FileChangeType;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are not as they should be: the server says so, and goes on. */
class BadInputTest {
    private static final String FILE = "quay.show";

    @TempDir
    private Path folder;
    @TempDir
    private Path elsewhere;
    private Editor editor;

    @BeforeEach
    void start() {
        editor = new Editor(folder);
    }

    @AfterEach
    void stop() {
        editor.close();
    }

    @Test
    void aFileOutsideOfEveryFolderIsServedLikeAnyOther() throws IOException {
        Path file = Files.writeString(elsewhere.resolve("stray.show"), Quay.SHOW);
        String uri = file.toUri().toString();
        editor.show(uri, Quay.SHOW);
        TextDocumentIdentifier id = new TextDocumentIdentifier(uri);
        assertThat(Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(id)))).isNotEmpty();
        assertThat(Editor.get(editor.texts().hover(new HoverParams(id, new Position(0, 6))))).isNotNull();
    }

    @Test
    void aTextThatWasNeverSavedIsServed() {
        editor.show("untitled:Untitled-1", Quay.SHOW);
        TextDocumentIdentifier id = new TextDocumentIdentifier("untitled:Untitled-1");
        assertThat(Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(id)))).isNotEmpty();
    }

    @Test
    void aFileThatIsNotThereIsAnsweredWithNothing() {
        TextDocumentIdentifier id = new TextDocumentIdentifier(folder.resolve("nowhere.show").toUri().toString());
        assertThat(Editor.get(editor.texts().hover(new HoverParams(id, new Position(0, 0))))).isNull();
        assertThat(Editor.get(editor.texts().completion(new CompletionParams(id, new Position(5, 5)))).getRight().getItems()).isEmpty();
        assertThat(Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(id)))).isEmpty();
    }

    @Test
    void aFileOfFiftyMegabytesIsRefusedInWordsAndTypingGoesOn() {
        String line = "// " + "x".repeat(96) + "\n";
        editor.open(FILE, line.repeat(500_000));
        assertThat(editor.rules(FILE)).contains("unreadable");
        editor.type(FILE, 0, 0, "y");
        assertThat(editor.rules(FILE)).contains("unreadable");
        editor.type(FILE, 0, editor.text(FILE).length(), Quay.SHOW);
        assertThat(editor.rules(FILE)).doesNotContain("unreadable");
    }

    @Test
    void aFileThatIsNotTextIsReported() throws IOException {
        Files.write(folder.resolve("latin.show"), "show N { } // caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1));
        editor.open(FILE, Quay.SHOW + "use \"latin.show\"\n");
        assertThat(editor.findings("latin.show")).anySatisfy(d -> assertThat(d.getCode().getLeft()).isEqualTo("not-utf8"));
    }

    @Test
    void whatIsTypedCountsThoughTheFileChangesOnDisk() throws IOException {
        editor.open(FILE, Quay.SHOW);
        editor.type(FILE, 0, 0, "// typed\n");
        Files.writeString(folder.resolve(FILE), "show Other { }\n");
        editor.server().getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(
                List.of(new FileEvent(editor.uri(FILE), FileChangeType.Changed))));
        assertThat(Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(editor.id(FILE))))).extracting(s -> s.getRight().getName())
                .contains("Quay").doesNotContain("Other");
    }

    /** A write that changes nothing interrupts a check as every write does: the check must come all the same. */
    @Test
    void changesOnDiskDoNotLoseTheCheckOfWhatWasTyped() throws IOException {
        // Many shows use one file, so that a check of them all takes long enough to be interrupted.
        for (int i = 0; i < 30; i++) {
            Files.writeString(folder.resolve("show" + i + ".show"), "use \"parts.show\"\n" + Quay.SHOW.replace("Quay", "Quay" + i));
        }
        editor.open("parts.show", "comet Star { calibre 45 mm }\n");
        String uri = editor.uri("parts.show");
        DidChangeWatchedFilesParams changed = new DidChangeWatchedFilesParams(List.of(new FileEvent(uri, FileChangeType.Changed)));
        editor.send(uri, new Range(new Position(0, 0), new Position(0, 0)), "shw ");
        // Until well after the check has begun, which is a moment after the key press.
        long enough = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(700);
        while (System.nanoTime() < enough) {
            editor.server().getWorkspaceService().didChangeWatchedFiles(changed);
            Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(editor.id("parts.show"))).handle((symbols, overtaken) -> true));
        }
        editor.await(uri);
        assertThat(editor.rules("parts.show")).contains("syntax");
    }

    @Test
    void aUsedFileThatAppearsIsFound() throws IOException {
        editor.open(FILE, "use \"later.show\"\n" + Quay.SHOW);
        assertThat(editor.rules(FILE)).contains("use-missing");
        Files.writeString(folder.resolve("later.show"), "comet Star { calibre 45 mm }\n");
        editor.server().getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(
                List.of(new FileEvent(editor.uri("later.show"), FileChangeType.Created))));
        // Hints wait for the check.
        Editor.get(editor.texts().inlayHint(new InlayHintParams(editor.id(FILE), new Range(new Position(0, 0), new Position(1, 0)))));
        assertThat(editor.rules(FILE)).doesNotContain("use-missing");
    }

    @Test
    void aPlaceBehindTheEndIsDrawnBackIntoTheText() {
        editor.open(FILE, Quay.SHOW);
        assertThat(Editor.get(editor.texts().completion(new CompletionParams(editor.id(FILE), new Position(100_000, 100_000)))).getRight().getItems())
                .isNotEmpty();
        assertThat(Editor.get(editor.texts().hover(new HoverParams(editor.id(FILE), new Position(100_000, 0))))).isNull();
    }
}
