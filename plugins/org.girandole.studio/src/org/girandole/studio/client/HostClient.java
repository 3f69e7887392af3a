package org.girandole.studio.client;

import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.services.LanguageClient;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.ShowNotifications;
import org.girandole.studio.StudioPlugin;

/** What the server may say of its own accord. Called on the server's threads; hands everything on and returns. */
final class HostClient implements LanguageClient, ShowNotifications {
    private final Findings findings;
    private final Consumer<String> checked;

    HostClient(Findings findings, Consumer<String> checked) {
        this.findings = findings;
        this.checked = checked;
    }

    @Override
    public void publishDiagnostics(PublishDiagnosticsParams diagnostics) {
        findings.show(diagnostics);
        checked.accept(diagnostics.getUri());
    }

    @Override
    public void checked(ScriptParams script) {
        checked.accept(script.uri());
    }

    @Override
    public void telemetryEvent(Object object) {
        // Nothing leaves this machine.
    }

    @Override
    public void showMessage(MessageParams message) {
        Tell.status(message.getMessage());
    }

    @Override
    public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
        Tell.status(request.getMessage());
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void logMessage(MessageParams message) {
        StudioPlugin plugin = StudioPlugin.get();
        if (plugin != null) {
            plugin.getLog().log(new Status(IStatus.INFO, StudioPlugin.ID, message.getMessage()));
        }
    }

    @Override
    public CompletableFuture<Void> refreshInlayHints() {
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public CompletableFuture<Void> refreshCodeLenses() {
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public CompletableFuture<Void> refreshSemanticTokens() {
        return CompletableFuture.completedFuture(null);
    }
}
