package org.girandole.studio.views;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.girandole.lang.ide.server.ShowServer;
import org.girandole.music.synth.HarbourTides;
import org.girandole.music.synth.PieceRenderer;
import org.girandole.protocol.ShowRequests;

/** The example show, with the music that was written for it rendered beside it, served by a language server in this process. */
public final class HarbourNight implements AutoCloseable {
    private static final int SECONDS = 120;

    private final LanguageServer server;
    private final ShowRequests requests;
    private final String uri;

    /** @param folder an empty folder for the copy */
    public HarbourNight(Path folder) throws Exception {
        copy(example(), folder);
        PieceRenderer.writeWav(HarbourTides.compose(), folder.resolve("music").resolve("tides.wav"));
        Path script = folder.resolve("harbour.show");
        uri = script.toUri().toString();
        server = ShowServer.connect(new SilentClient());
        InitializeParams params = new InitializeParams();
        WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
        workspace.setWorkspaceFolders(true);
        ClientCapabilities capabilities = new ClientCapabilities();
        capabilities.setWorkspace(workspace);
        params.setCapabilities(capabilities);
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "show")));
        get(server.initialize(params));
        server.initialized(new InitializedParams());
        requests = ServiceEndpoints.toServiceObject((Endpoint) server, ShowRequests.class);
    }

    public String uri() {
        return uri;
    }

    public ShowRequests requests() {
        return requests;
    }

    public static <T> T get(CompletableFuture<T> answer) throws Exception {
        return answer.get(SECONDS, TimeUnit.SECONDS);
    }

    /** The root of the sources. */
    public static Path root() {
        for (Path folder = Path.of(System.getProperty("girandole.root", "")).toAbsolutePath(); folder != null; folder = folder.getParent()) {
            if (Files.isDirectory(folder.resolve("examples").resolve("harbour-night"))) {
                return folder;
            }
        }
        throw new IllegalStateException("the examples are in no folder above");
    }

    private static Path example() {
        return root().resolve("examples").resolve("harbour-night");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            all.filter(path -> Files.isRegularFile(path) && !path.startsWith(from.resolve("target"))).forEach(path -> {
                Path target = to.resolve(from.relativize(path).toString());
                try {
                    Files.createDirectories(target.getParent());
                    Files.copy(path, target);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    @Override
    public void close() {
        server.shutdown();
        server.exit();
    }

    /** Takes what the server says unasked. */
    private static final class SilentClient implements LanguageClient {
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
