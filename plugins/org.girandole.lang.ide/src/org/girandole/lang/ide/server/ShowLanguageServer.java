package org.girandole.lang.ide.server;

import com.google.gson.JsonObject;
import com.google.inject.Inject;
import java.util.concurrent.CompletableFuture;
import org.eclipse.emf.common.util.URI;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.xtext.ide.server.LanguageServerImpl;

/** The server: Xtext's, with what it lacks. */
public class ShowLanguageServer extends LanguageServerImpl {
    private final Checking checking;
    private final FindingsPublisher publisher;
    private final RulePages pages;
    private final CompletableFuture<Void> exited = new CompletableFuture<>();

    @Inject
    ShowLanguageServer(Checking checking, FindingsPublisher publisher, RulePages pages) {
        this.checking = checking;
        this.publisher = publisher;
        this.pages = pages;
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        if (params.getInitializationOptions() instanceof JsonObject options && options.has("rulePages")) {
            pages.base(options.get("rulePages").getAsString());
        }
        return super.initialize(params).thenApply(result -> {
            result.setServerInfo(new ServerInfo("girandole"));
            return result;
        });
    }

    @Override
    public void initialized(InitializedParams params) {
        super.initialized(params);
        publisher.ready(getLanguageClient());
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        checking.stop();
        getRequestManager().shutdown();
        return super.shutdown();
    }

    @Override
    public void exit() {
        checking.stop();
        exited.complete(null);
    }


    void whenExited(Runnable action) {
        exited.thenRun(action);
    }

    /** The client's own spelling: what is published must come back under the same name. */
    @Override
    protected URI getURI(TextDocumentIdentifier document) {
        return URI.createURI(document.getUri());
    }

    @Override
    protected URI getURI(TextDocumentItem document) {
        return URI.createURI(document.getUri());
    }
}
