package org.girandole.lang.ide.server;

import com.google.inject.Guice;
import com.google.inject.Injector;
import com.google.inject.util.Modules;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** Starts language servers. */
public final class ShowServer {
    private ShowServer() {
    }

    /**
     * A language server in this process, without streams. It still wants {@code initialize} and {@code initialized}, as the protocol
     * says. Its answers come on threads of its own; {@code shutdown} ends these. Requests that are not of the protocol are sent through
     * {@link org.eclipse.lsp4j.jsonrpc.Endpoint}, which the server implements as well.
     *
     * @param client is told of findings; it must not wait in there for an answer of the server
     */
    public static LanguageServer connect(LanguageClient client) {
        ShowLanguageServer server = create();
        server.connect(client);
        return server;
    }

    /** Serves one client on two streams, and returns when the client has said goodbye or hung up. */
    public static void serve(InputStream in, OutputStream out) throws InterruptedException {
        ShowLanguageServer server = create();
        Launcher<LanguageClient> launcher = new Launcher.Builder<LanguageClient>().setLocalService(server)
                .setRemoteInterface(LanguageClient.class).setInput(in).setOutput(out).create();
        server.connect(launcher.getRemoteProxy());
        Future<Void> listening = launcher.startListening();
        server.whenExited(() -> listening.cancel(true));
        try {
            listening.get();
        } catch (ExecutionException | CancellationException e) {
            // The stream broke or the client said exit: either way nobody listens any more.
        } finally {
            server.shutdown();
        }
    }

    private static ShowLanguageServer create() {
        ShowBoard board = new ShowBoard();
        Language language = new Language(new ServedShowSetup(board).createInjectorAndDoEMFRegistration());
        WarmUp warmUp = new WarmUp(language);
        warmUp.begin();
        Injector server = Guice.createInjector(Modules.override(new org.eclipse.xtext.ide.server.ServerModule())
                .with(new ShowServerModule(language, board, warmUp)));
        ShowLanguageServer created = server.getInstance(ShowLanguageServer.class);
        // This is what makes extensions known to the server, also where no launcher asks for them.
        created.supportedMethods();
        return created;
    }
}
