package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;

/** An editor with no screen: keeps the text of open files, sends what is typed, and remembers what it is told. */
final class Editor implements LanguageClient, AutoCloseable {
    /** Far beyond what anything here takes. */
    private static final long LONGEST_SECONDS = 120;

    private final Path folder;
    private final LanguageServer server;
    private final Map<String, PublishDiagnosticsParams> told = new ConcurrentHashMap<>();
    private final Map<String, String> texts = new ConcurrentHashMap<>();
    private final Map<String, Integer> versions = new ConcurrentHashMap<>();

    Editor(Path folder) {
        this.folder = folder;
        this.server = ShowServer.connect(this);
        InitializeParams params = new InitializeParams();
        CompletionItemCapabilities items = new CompletionItemCapabilities(true);
        TextDocumentClientCapabilities text = new TextDocumentClientCapabilities();
        text.setCompletion(new CompletionCapabilities(items));
        ClientCapabilities capabilities = new ClientCapabilities();
        capabilities.setTextDocument(text);
        params.setCapabilities(capabilities);
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "show")));
        params.setRootUri(folder.toUri().toString());
        get(server.initialize(params));
        server.initialized(new InitializedParams());
    }

    static <T> T get(CompletableFuture<T> answer) {
        try {
            return answer.get(LONGEST_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new AssertionError(e);
        }
    }

    Path folder() {
        return folder;
    }

    TextDocumentService texts() {
        return server.getTextDocumentService();
    }

    LanguageServer server() {
        return server;
    }

    String uri(String file) {
        return folder.resolve(file).toUri().toString();
    }

    TextDocumentIdentifier id(String file) {
        return new TextDocumentIdentifier(uri(file));
    }

    String text(String file) {
        return texts.get(uri(file));
    }

    /** Writes a file, opens it, and waits until it has been checked. */
    Editor open(String file, String text) {
        try {
            Files.createDirectories(folder.resolve(file).getParent());
            Files.writeString(folder.resolve(file), text);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return show(uri(file), text);
    }

    /** Opens a text under a URI that may lead nowhere. */
    Editor show(String uri, String text) {
        texts.put(uri, text);
        versions.put(uri, 1);
        texts().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "show", 1, text)));
        await(uri);
        return this;
    }

    /** Replaces the text of an open file from one offset to another, and waits until that has been checked. */
    void type(String file, int from, int to, String text) {
        String uri = uri(file);
        TextLines lines = new TextLines(texts.get(uri));
        send(uri, lines.range(from, to), text);
        await(uri);
    }

    /** Replaces a range of an open text and waits for nothing. */
    void send(String uri, Range range, String text) {
        TextLines lines = new TextLines(texts.get(uri));
        StringBuilder now = new StringBuilder(lines.text());
        now.replace(lines.offset(range.getStart()), lines.offset(range.getEnd()), text);
        texts.put(uri, now.toString());
        int version = versions.merge(uri, 1, Integer::sum);
        texts().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                List.of(new TextDocumentContentChangeEvent(range, text))));
    }

    /** Waits for the findings of the present text. */
    void await(String uri) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
        synchronized (told) {
            while (!told.containsKey(uri) || !versions.get(uri).equals(told.get(uri).getVersion())) {
                long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                assertThat(left).as("findings of version %s of %s; told %s", versions.get(uri), uri, told.keySet()).isPositive();
                try {
                    told.wait(left);
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
            }
        }
    }

    List<Diagnostic> findings(String file) {
        PublishDiagnosticsParams params = told.get(uri(file));
        return params == null ? List.of() : params.getDiagnostics();
    }

    List<String> rules(String file) {
        return findings(file).stream().map(d -> d.getCode().getLeft()).distinct().sorted().toList();
    }

    /** What is proposed at an offset. */
    List<CompletionItem> completions(String file, int offset) {
        return get(texts().completion(new CompletionParams(id(file), new TextLines(text(file)).position(offset)))).getRight().getItems();
    }

    Position at(String file, String word) {
        return new TextLines(text(file)).position(text(file).indexOf(word));
    }

    /** What can be done about the findings of a rule. */
    List<CodeAction> fixes(String file, String rule) {
        List<CodeAction> all = new ArrayList<>();
        findings(file).stream().filter(d -> d.getCode().getLeft().equals(rule)).forEach(d -> get(texts().codeAction(
                new CodeActionParams(id(file), d.getRange(), new CodeActionContext(List.of(d))))).forEach(action -> all.add(action.getRight())));
        return all;
    }

    /** The text of a file after some edits. */
    static String applied(String text, List<? extends TextEdit> edits) {
        TextLines lines = new TextLines(text);
        StringBuilder now = new StringBuilder(text);
        edits.stream().sorted(Comparator.comparingInt((TextEdit edit) -> lines.offset(edit.getRange().getStart())).reversed())
                .forEach(edit -> now.replace(lines.offset(edit.getRange().getStart()), lines.offset(edit.getRange().getEnd()), edit.getNewText()));
        return now.toString();
    }

    /** Does what an action says, in the files that are open. */
    void apply(CodeAction action) {
        action.getEdit().getChanges().forEach((uri, edits) -> {
            TextLines lines = new TextLines(texts.get(uri));
            send(uri, new Range(new Position(0, 0), lines.position(lines.text().length())), applied(lines.text(), edits));
            await(uri);
        });
    }

    @Override
    public void close() {
        get(server.shutdown());
        server.exit();
    }

    @Override
    public void publishDiagnostics(PublishDiagnosticsParams params) {
        synchronized (told) {
            told.put(params.getUri(), params);
            told.notifyAll();
        }
    }

    @Override
    public void telemetryEvent(Object object) {
        // Nothing is measured.
    }

    @Override
    public void showMessage(MessageParams message) {
        throw new AssertionError("a message to the user: " + message.getMessage());
    }

    @Override
    public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
        throw new AssertionError("a question to the user: " + request.getMessage());
    }

    @Override
    public void logMessage(MessageParams message) {
        throw new AssertionError("a message to the log: " + message.getMessage());
    }
}
