package org.girandole.studio.client;

import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionCapabilities;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionKindCapabilities;
import org.eclipse.lsp4j.CodeActionLiteralSupportCapabilities;
import org.eclipse.lsp4j.CodeLensCapabilities;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.DefinitionCapabilities;
import org.eclipse.lsp4j.DocumentHighlightCapabilities;
import org.eclipse.lsp4j.DocumentLinkCapabilities;
import org.eclipse.lsp4j.DocumentSymbolCapabilities;
import org.eclipse.lsp4j.FoldingRangeCapabilities;
import org.eclipse.lsp4j.FormattingCapabilities;
import org.eclipse.lsp4j.HoverCapabilities;
import org.eclipse.lsp4j.InlayHintCapabilities;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.PublishDiagnosticsCapabilities;
import org.eclipse.lsp4j.ReferencesCapabilities;
import org.eclipse.lsp4j.RenameCapabilities;
import org.eclipse.lsp4j.SemanticTokensCapabilities;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;

/** What this client can do with the server's answers. */
final class Capabilities {
    private Capabilities() {
    }

    static ClientCapabilities all() {
        TextDocumentClientCapabilities text = new TextDocumentClientCapabilities();
        text.setCompletion(new CompletionCapabilities(new CompletionItemCapabilities(true)));
        HoverCapabilities hover = new HoverCapabilities();
        hover.setContentFormat(List.of(MarkupKind.MARKDOWN));
        text.setHover(hover);
        text.setDefinition(new DefinitionCapabilities());
        text.setReferences(new ReferencesCapabilities());
        text.setDocumentHighlight(new DocumentHighlightCapabilities());
        text.setDocumentLink(new DocumentLinkCapabilities());
        DocumentSymbolCapabilities symbols = new DocumentSymbolCapabilities();
        symbols.setHierarchicalDocumentSymbolSupport(true);
        text.setDocumentSymbol(symbols);
        text.setFormatting(new FormattingCapabilities());
        text.setFoldingRange(new FoldingRangeCapabilities());
        text.setRename(new RenameCapabilities(true, false));
        text.setCodeLens(new CodeLensCapabilities());
        text.setInlayHint(new InlayHintCapabilities());
        text.setSemanticTokens(new SemanticTokensCapabilities(false));
        text.setCodeAction(new CodeActionCapabilities(new CodeActionLiteralSupportCapabilities(
                new CodeActionKindCapabilities(List.of(CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite))), false));
        PublishDiagnosticsCapabilities diagnostics = new PublishDiagnosticsCapabilities(true);
        diagnostics.setCodeDescriptionSupport(true);
        diagnostics.setDataSupport(true);
        diagnostics.setVersionSupport(true);
        text.setPublishDiagnostics(diagnostics);
        WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
        workspace.setWorkspaceFolders(true);
        return new ClientCapabilities(workspace, text, null);
    }
}
