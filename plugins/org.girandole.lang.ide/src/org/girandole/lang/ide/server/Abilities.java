package org.girandole.lang.ide.server;

import java.util.List;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CodeLensOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DocumentLinkOptions;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.SignatureHelpOptions;
import org.girandole.lang.ide.features.Tokens;

/** What the server says that it can do, beyond what Xtext's says. */
final class Abilities {
    private Abilities() {
    }

    static ServerCapabilities add(ServerCapabilities server) {
        server.setCompletionProvider(new CompletionOptions(false, List.of(" ", "/", "\"")));
        server.setSignatureHelpProvider(new SignatureHelpOptions(List.of("(", ",")));
        server.setCodeLensProvider(new CodeLensOptions(false));
        server.setInlayHintProvider(true);
        server.setDocumentLinkProvider(new DocumentLinkOptions(false));
        server.setFoldingRangeProvider(true);
        server.setRenameProvider(new RenameOptions(true));
        server.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite)));
        SemanticTokensWithRegistrationOptions tokens = new SemanticTokensWithRegistrationOptions(Tokens.legend());
        tokens.setFull(true);
        tokens.setRange(true);
        server.setSemanticTokensProvider(tokens);
        return server;
    }
}
