package org.girandole.benchmarks;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.girandole.lang.ide.server.ShowServer;

/** Somebody at an editor with a server in the same process, who waits for each answer before the next thing is done. */
final class EditorSession {
    private final Client client = new Client();
    private final LanguageServer server;

    /** How long one thing made somebody wait, milliseconds. */
    record Waited(double answer, double findings) {
    }

    /** Starts a server. */
    EditorSession() throws InterruptedException, ExecutionException {
        server = ShowServer.connect(client);
        InitializeParams hello = new InitializeParams();
        hello.setCapabilities(new ClientCapabilities());
        server.initialize(hello).get();
        server.initialized(new InitializedParams());
    }

    /** Opens a script, and waits for its outline and its findings. */
    Waited open(String uri, String text) throws InterruptedException, ExecutionException {
        long begun = System.nanoTime();
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "show", 1, text)));
        server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(new TextDocumentIdentifier(uri))).get();
        double outline = millis(begun);
        client.await(uri, 1);
        return new Waited(outline, millis(begun));
    }

    /** Changes a script, asks for completion, and waits for both this and the findings. */
    Waited press(String uri, int version, Range replaced, String text, Position caret) throws InterruptedException, ExecutionException {
        long pressed = System.nanoTime();
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                List.of(new TextDocumentContentChangeEvent(replaced, text))));
        server.getTextDocumentService().completion(new CompletionParams(new TextDocumentIdentifier(uri), caret)).get();
        double completed = millis(pressed);
        client.await(uri, version);
        return new Waited(completed, millis(pressed));
    }

    void end() throws InterruptedException, ExecutionException {
        server.shutdown().get();
    }

    static double millis(long begun) {
        return (System.nanoTime() - begun) / 1e6;
    }

    /** Waits for the findings of a version. */
    private static final class Client implements LanguageClient {
        private final Map<String, Integer> versions = new HashMap<>();

        synchronized void await(String uri, int wanted) throws InterruptedException {
            while (versions.getOrDefault(uri, 0) < wanted) {
                wait();
            }
        }

        @Override
        public synchronized void publishDiagnostics(PublishDiagnosticsParams params) {
            if (params.getVersion() != null) {
                versions.put(params.getUri(), params.getVersion());
            }
            notifyAll();
        }

        @Override
        public void telemetryEvent(Object object) {
            // Not of interest here.
        }

        @Override
        public void showMessage(MessageParams message) {
            System.err.println(message.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
            return CompletableFuture.completedFuture(null);
        }

        @Override
        public void logMessage(MessageParams message) {
            System.err.println(message.getMessage());
        }
    }
}
