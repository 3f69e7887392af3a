package org.girandole.studio.views.workbench;

import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.girandole.studio.client.ShowClient;

/** The studio's client as an endpoint of LSP4J, so that requests have types. */
record ClientEndpoint(ShowClient client) implements Endpoint {
    @Override
    public CompletableFuture<?> request(String method, Object parameter) {
        return client.request(method, parameter);
    }

    @Override
    public void notify(String method, Object parameter) {
        throw new UnsupportedOperationException("views only ask; '" + method + "' is told to nobody");
    }
}
