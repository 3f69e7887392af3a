package org.girandole.lang.ide.server;

import com.google.gson.JsonObject;
import com.google.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.eclipse.emf.common.util.URI;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.xtext.ide.server.LanguageServerImpl;
import org.girandole.lang.ide.completion.Completion;
import org.girandole.lang.ide.features.Folding;
import org.girandole.lang.ide.features.Formatting;
import org.girandole.lang.ide.features.Hints;
import org.girandole.lang.ide.features.Hovers;
import org.girandole.lang.ide.features.Lenses;
import org.girandole.lang.ide.features.Links;
import org.girandole.lang.ide.features.References;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.features.Signatures;
import org.girandole.lang.ide.features.Symbols;
import org.girandole.lang.ide.features.Tokens;
import org.girandole.lang.ide.fixes.Fixes;
import org.girandole.lang.scoping.Lookup;

/**
 * The server: Xtext's order of reads and writes, with answers of our own. What tells of the plan waits for the check to catch up with
 * the text; everything else answers from the text as it stands.
 */
public class ShowLanguageServer extends LanguageServerImpl {
    private final Checking checking;
    private final FindingsPublisher publisher;
    private final RulePages pages;
    private final ShowBoard board;
    private final ShowWorkspace workspace;
    private final Completion completion;
    private final Fixes fixes;
    private final Formatting formatting;
    private final Renaming renaming;
    private final Lookup lookup;
    private final CompletableFuture<Void> exited = new CompletableFuture<>();
    private volatile ClientAbilities client = new ClientAbilities(null);

    @Inject
    ShowLanguageServer(Checking checking, FindingsPublisher publisher, RulePages pages, ShowBoard board, ShowWorkspace workspace,
            Language language) {
        this.checking = checking;
        this.publisher = publisher;
        this.pages = pages;
        this.board = board;
        this.workspace = workspace;
        this.completion = language.get(Completion.class);
        this.fixes = language.get(Fixes.class);
        this.formatting = language.get(Formatting.class);
        this.renaming = language.get(Renaming.class);
        this.lookup = language.get(Lookup.class);
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        if (params.getInitializationOptions() instanceof JsonObject options && options.has("rulePages")) {
            pages.base(options.get("rulePages").getAsString());
        }
        client = new ClientAbilities(params.getCapabilities());
        return super.initialize(params).thenApply(result -> {
            result.setServerInfo(new ServerInfo("girandole"));
            return result;
        });
    }

    @Override
    protected ServerCapabilities createServerCapabilities(InitializeParams params) {
        return Abilities.add(super.createServerCapabilities(params));
    }

    @Override
    public void initialized(InitializedParams params) {
        super.initialized(params);
        client.watchFiles(getLanguageClient());
        board.onChecked(script -> client.refresh(getLanguageClient()));
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

    /** An answer from the text as it stands. */
    private <T> CompletableFuture<T> read(TextDocumentIdentifier document, T none, Function<ScriptView, T> work) {
        return getRequestManager().runRead(cancel -> workspace.alone(() -> workspace.view(document.getUri()).map(work).orElse(none)));
    }

    /** An answer that needs the plan of the text as it stands. */
    private <T> CompletableFuture<T> planned(TextDocumentIdentifier document, T none, Reading<T> work) {
        // The first read waits its turn behind changes that are still on their way; only then is it known whether a check is due.
        return getRequestManager().runRead(cancel -> board.fresh(document.getUri())).thenCompose(fresh -> fresh)
                .thenCompose(checked -> getRequestManager().runRead(cancel -> workspace.alone(
                        () -> workspace.view(document.getUri()).map(view -> work.read(view, checked)).orElse(none))));
    }

    private interface Reading<T> {
        T read(ScriptView view, Optional<CheckedScript> checked);
    }

    private Optional<CheckedScript> latest(TextDocumentIdentifier document) {
        return board.latest(document.getUri());
    }

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
        return read(params.getTextDocument(), Either.forRight(new CompletionList()), view -> Either.forRight(new CompletionList(false,
                completion.at(view, latest(params.getTextDocument()), params.getPosition(), client.snippets()))));
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams params) {
        return read(params.getTextDocument(), null, view -> Hovers.at(view, latest(params.getTextDocument()), params.getPosition()).orElse(null));
    }

    @Override
    public CompletableFuture<SignatureHelp> signatureHelp(SignatureHelpParams params) {
        return read(params.getTextDocument(), null, view -> Signatures.at(view, lookup, params.getPosition()).orElse(null));
    }

    @Override
    public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams params) {
        return read(params.getTextDocument(), List.of(), view -> Symbols.outline(view).stream()
                .map(Either::<SymbolInformation, DocumentSymbol>forRight).toList());
    }

    @Override
    public CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>> symbol(WorkspaceSymbolParams params) {
        return getRequestManager().runRead(cancel -> workspace.alone(
                () -> Either.forRight(Symbols.find(params.getQuery(), workspace.scripts(), workspace::view))));
    }

    @Override
    public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
        return read(params.getTextDocument(), List.of(), Folding::of);
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
        return read(params.getTextDocument(), new SemanticTokens(List.of()), view -> Tokens.of(view, 0, view.lines().count()));
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensRange(SemanticTokensRangeParams params) {
        return read(params.getTextDocument(), new SemanticTokens(List.of()), view -> Tokens.of(view, params.getRange().getStart().getLine(),
                params.getRange().getEnd().getLine()));
    }

    @Override
    public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
        return planned(params.getTextDocument(), List.of(), (view, checked) -> Hints.of(view, checked, params.getRange()));
    }

    @Override
    public CompletableFuture<List<? extends CodeLens>> codeLens(CodeLensParams params) {
        return planned(params.getTextDocument(), List.of(), Lenses::of);
    }

    @Override
    public CompletableFuture<CodeLens> resolveCodeLens(CodeLens lens) {
        return CompletableFuture.completedFuture(lens);
    }

    @Override
    public CompletableFuture<List<DocumentLink>> documentLink(DocumentLinkParams params) {
        return read(params.getTextDocument(), List.of(), Links::of);
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
        return planned(params.getTextDocument(), List.of(), (view, checked) -> fixes.at(view, checked, params.getRange(), params.getContext())
                .stream().map(Either::<Command, CodeAction>forRight).toList());
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
        return read(params.getTextDocument(), List.of(), view -> formatting.of(view, Optional.empty()));
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> rangeFormatting(DocumentRangeFormattingParams params) {
        return read(params.getTextDocument(), List.of(), view -> formatting.of(view, Optional.of(params.getRange())));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(DefinitionParams params) {
        return read(params.getTextDocument(), Either.forLeft(List.of()), view -> Either.forLeft(References.definition(view, params.getPosition(),
                workspace::view).map(List::of).orElse(List.of())));
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
        return read(params.getTextDocument(), List.of(), view -> References.all(view, params.getPosition(), workspace.scripts(), workspace::view,
                params.getContext() == null || params.getContext().isIncludeDeclaration()));
    }

    @Override
    public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(DocumentHighlightParams params) {
        return read(params.getTextDocument(), List.of(), view -> References.highlights(view, params.getPosition()));
    }

    @Override
    public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
        // A refusal is an answer to the user, not a mishap to be logged, which is what an exception inside of a read would be.
        return read(params.getTextDocument(), Either.<WorkspaceEdit, ResponseErrorException>forLeft(null), view -> {
            try {
                return Either.<WorkspaceEdit, ResponseErrorException>forLeft(renaming.rename(view, params.getPosition(), params.getNewName(),
                        workspace.scripts(), workspace::view));
            } catch (ResponseErrorException refused) {
                return Either.<WorkspaceEdit, ResponseErrorException>forRight(refused);
            }
        }).thenCompose(answer -> answer.isRight() ? CompletableFuture.failedFuture(answer.getRight())
                : CompletableFuture.completedFuture(answer.getLeft()));
    }

    @Override
    public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(PrepareRenameParams params) {
        return read(params.getTextDocument(), null, view -> renaming.prepare(view, params.getPosition())
                .map(Either3::<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forFirst).orElse(null));
    }
}
