package org.girandole.lang.ide.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;

/** What the client can do. */
final class ClientAbilities {
    /** Files whose change may change findings. */
    private static final List<String> WATCHED = List.of("**/*.show", "**/*.lock", "**/*.wav", "**/*.mid", "**/*.txt", "**/*.mp3", "**/*.ogg", "**/*.flac");

    private final Optional<TextDocumentClientCapabilities> text;
    private final Optional<WorkspaceClientCapabilities> workspace;

    ClientAbilities(ClientCapabilities capabilities) {
        text = Optional.ofNullable(capabilities).map(ClientCapabilities::getTextDocument);
        workspace = Optional.ofNullable(capabilities).map(ClientCapabilities::getWorkspace);
    }

    /** Whether it can jump from gap to gap. */
    boolean snippets() {
        return text.map(TextDocumentClientCapabilities::getCompletion).map(CompletionCapabilities::getCompletionItem)
                .map(CompletionItemCapabilities::getSnippetSupport).orElse(false);
    }

    /** Asks to be told of files that change on disk. */
    void watchFiles(LanguageClient client) {
        if (workspace.map(w -> w.getDidChangeWatchedFiles()).map(w -> w.getDynamicRegistration()).orElse(false)) {
            List<FileSystemWatcher> watchers = WATCHED.stream().map(pattern -> new FileSystemWatcher(Either.forLeft(pattern))).toList();
            client.registerCapability(new RegistrationParams(List.of(new Registration("girandole-files", "workspace/didChangeWatchedFiles",
                    new DidChangeWatchedFilesRegistrationOptions(watchers)))));
        }
    }

    /** Asks for hints and lenses to be fetched anew: they tell of the plan, which has changed. */
    void refresh(LanguageClient client) {
        if (workspace.map(w -> w.getInlayHint()).map(w -> w.getRefreshSupport()).orElse(false)) {
            client.refreshInlayHints();
        }
        if (workspace.map(w -> w.getCodeLens()).map(w -> w.getRefreshSupport()).orElse(false)) {
            client.refreshCodeLenses();
        }
    }
}
