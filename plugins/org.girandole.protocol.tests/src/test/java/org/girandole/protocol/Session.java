package org.girandole.protocol;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.girandole.lang.ide.server.ShowServer;

/** An editor of LSP4J's own making at one end of a pipe, the language server at the other; everything between them is JSON. */
final class Session implements AutoCloseable {
    private static final int SECONDS = 60;

    /** What the server is to the editor. */
    interface Server extends LanguageServer, ShowRequests {
    }

    private final Server server;
    private final SilentClient client = new SilentClient();

    Session(Path folder) throws Exception {
        Pipe toServer = Pipe.open();
        Pipe toClient = Pipe.open();
        Thread serving = new Thread(() -> serve(toServer, toClient), "server under test");
        serving.setDaemon(true);
        serving.start();
        Launcher<Server> here = new Launcher.Builder<Server>().setLocalService(client).setRemoteInterface(Server.class)
                .setInput(Channels.newInputStream(toClient.source())).setOutput(Channels.newOutputStream(toServer.sink())).create();
        here.startListening();
        server = here.getRemoteProxy();
        InitializeParams params = new InitializeParams();
        params.setCapabilities(new ClientCapabilities());
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "show")));
        get(server.initialize(params));
        server.initialized(new InitializedParams());
    }

    private static void serve(Pipe in, Pipe out) {
        try {
            ShowServer.serve(Channels.newInputStream(in.source()), Channels.newOutputStream(out.sink()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    Server server() {
        return server;
    }

    void open(String uri, String text) {
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "girandole", 1, text)));
    }

    void change(String uri, int version, String text) {
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                List.of(new TextDocumentContentChangeEvent(text))));
    }

    /** The script that the server next says to have checked. */
    String nextChecked() throws InterruptedException {
        return client.checked.poll(SECONDS, TimeUnit.SECONDS);
    }

    /** Forgets what was said so far. */
    void forgetChecked() {
        client.checked.clear();
    }

    static <T> T get(CompletableFuture<T> answer) throws Exception {
        return answer.get(SECONDS, TimeUnit.SECONDS);
    }

    @Override
    public void close() throws IOException {
        server.shutdown().thenRun(server::exit);
    }

    /** Takes what the server says unasked. */
    private static final class SilentClient implements LanguageClient, ShowNotifications {
        private final BlockingQueue<String> checked = new LinkedBlockingQueue<>();

        @Override
        public void checked(ScriptParams script) {
            checked.add(script.uri());
        }

        @Override
        public void telemetryEvent(Object object) {
            // Not looked at here.
        }

        @Override
        public void publishDiagnostics(PublishDiagnosticsParams diagnostics) {
            // Not looked at here.
        }

        @Override
        public void showMessage(MessageParams message) {
            // Not looked at here.
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
            return CompletableFuture.completedFuture(null);
        }

        @Override
        public void logMessage(MessageParams message) {
            // Not looked at here.
        }
    }
}
