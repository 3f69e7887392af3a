package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole editing session with the built jar, over its standard streams. The client is the launcher of Eclipse LSP4J 1.0.0, a general
 * implementation of the Language Server Protocol; nothing of ours is on its side.
 */
class ServeSessionTest {
    private static final Path JAR = Path.of("../org.girandole.cli/target/girandole.jar").toAbsolutePath().normalize();
    private static final long LONGEST_SECONDS = 120;

    @TempDir
    private Path folder;
    private Process process;
    private LanguageServer server;
    private Future<Void> listening;
    private final Client client = new Client();

    @BeforeEach
    void start() throws IOException {
        Example.copyTo(folder);
        ProcessBuilder builder = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx1g", "-jar", JAR.toString(),
                "serve").directory(folder.toFile());
        builder.environment().keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "MAVEN_OPTS", "_JAVA_OPTIONS"));
        process = builder.start();
        Launcher<LanguageServer> launcher = LSPLauncher.createClientLauncher(client, process.getInputStream(), process.getOutputStream());
        server = launcher.getRemoteProxy();
        listening = launcher.startListening();
    }

    @AfterEach
    void stop() {
        listening.cancel(true);
        process.destroyForcibly();
    }

    private static <T> T get(CompletableFuture<T> answer) throws Exception {
        return answer.get(LONGEST_SECONDS, TimeUnit.SECONDS);
    }

    @Test
    void aSessionFromHelloToGoodbye() throws Exception {
        InitializeParams hello = new InitializeParams();
        hello.setCapabilities(new ClientCapabilities());
        hello.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "show")));
        hello.setRootUri(folder.toUri().toString());
        InitializeResult welcome = get(server.initialize(hello));
        assertThat(welcome.getServerInfo().getName()).isEqualTo("girandole");
        assertThat(welcome.getCapabilities().getInlayHintProvider()).isNotNull();
        server.initialized(new InitializedParams());

        // Open: the findings are those of the check, for a file as for the show.
        String text = Files.readString(folder.resolve("harbour.show"));
        Document show = open("harbour.show");
        List<Diagnostic> first = show.findings();
        String checked = Cli.in(folder).run("check", "harbour.show").out();
        assertThat(first).isNotEmpty().allSatisfy(finding -> {
            assertThat(finding.getSource()).isEqualTo("girandole");
            assertThat(checked).contains(finding.getCode().getLeft()).contains(finding.getMessage().getLeft().lines().findFirst().orElseThrow());
            assertThat(finding.getCodeDescription().getHref()).endsWith(finding.getCode().getLeft() + ".md");
        });
        lookAround(show, welcome.getCapabilities().getSemanticTokensProvider().getLegend());

        // Type: a new cue with a slip in it.
        Position at = show.at("    at Swell               Towers");
        int line = at.getLine();
        show.type(at, "    at ");
        List<String> labels = get(texts().completion(new CompletionParams(show.id(), new Position(line, 7)))).map(items -> items, list -> list.getItems()).stream()
                .map(CompletionItem::getLabel).toList();
        assertThat(labels).contains("Swell", "Break", "bar").doesNotContain("RedPeony75");
        int column = "    at ".length();
        for (String piece : List.of("Swe", "ll + ", "1 beat  D", "  RedPeny75\n")) {
            show.type(new Position(line, column), piece);
            column += piece.length();
        }
        Diagnostic slip = show.findings().stream().filter(ServeSessionTest::isError).findFirst().orElseThrow();
        assertThat(slip.getCode().getLeft()).isEqualTo("unresolved-name");
        assertThat(slip.getMessage().getLeft()).contains("did you mean RedPeony75?");

        // Mend: the first fix offered makes the error go away.
        CodeAction fix = get(texts().codeAction(new CodeActionParams(show.id(), slip.getRange(), new CodeActionContext(List.of(slip))))).get(0).getRight();
        assertThat(fix.getTitle()).isEqualTo("Write RedPeony75");
        show.apply(fix.getEdit().getChanges().get(show.uri));
        assertThat(show.findings()).noneMatch(ServeSessionTest::isError);

        // Read: the derivation and the hint of the new cue.
        assertThat(get(texts().hover(new HoverParams(show.id(), new Position(line, 5)))).getContents().getRight().getValue()).contains("due = seen - rise - latency");
        assertThat(get(texts().inlayHint(new InlayHintParams(show.id(), new Range(new Position(line, 0), new Position(line, 1)))))).singleElement()
                .satisfies(hint -> assertThat(hint.getLabel().getLeft()).startsWith("fires 0:"));

        // Rename an effect that two files use: one edit over both.
        Position effect = slip.getRange().getStart();
        assertThat(get(texts().prepareRename(new PrepareRenameParams(show.id(), effect)))).isNotNull();
        WorkspaceEdit renamed = get(texts().rename(new RenameParams(show.id(), effect, "ScarletPeony75")));
        Document house = open("catalogue/house.show");
        Map<String, Document> open = Map.of(show.uri, show, house.uri, house);
        assertThat(renamed.getChanges().keySet()).contains(show.uri, house.uri);
        for (Map.Entry<String, List<TextEdit>> each : renamed.getChanges().entrySet()) {
            Document document = open.containsKey(each.getKey()) ? open.get(each.getKey()) : open(folder.relativize(Path.of(URI.create(each.getKey()))).toString());
            document.apply(each.getValue());
        }
        assertThat(house.text).contains("ScarletPeony75 ").doesNotContain(" RedPeony75 ");
        assertThat(show.text).contains("ScarletPeony75\n").doesNotContain(" RedPeony75\n");
        settle(show);
        assertThat(show.findings()).noneMatch(ServeSessionTest::isError);

        // Format: the whole file, which then is in its form, and is the same show as before.
        show.type(new Position(line, 0), "  ");
        show.apply(get(texts().formatting(new DocumentFormattingParams(show.id(), new FormattingOptions(2, true)))));
        assertThat(get(texts().formatting(new DocumentFormattingParams(show.id(), new FormattingOptions(2, true))))).isEmpty();
        settle(show);
        assertThat(show.findings()).noneMatch(ServeSessionTest::isError);

        // Close, leave.
        texts().didClose(new DidCloseTextDocumentParams(show.id()));
        get(server.shutdown());
        server.exit();
        assertThat(process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(errors(process.getErrorStream())).doesNotContain("Exception").doesNotContain("\tat ");
        // What the editor did not save is not on disk.
        assertThat(Files.readString(folder.resolve("harbour.show"))).isEqualTo(text);
    }

    /** What an editor asks of a file that somebody looks at, without changing it. */
    private void lookAround(Document show, SemanticTokensLegend legend) throws Exception {
        List<Integer> tokens = get(texts().semanticTokensFull(new SemanticTokensParams(show.id()))).getData();
        // Five numbers a token, says the protocol; the fourth is the place of its type in the legend.
        assertThat(tokens.size() % 5).isZero();
        assertThat(IntStream.range(0, tokens.size() / 5).mapToObj(i -> legend.getTokenTypes().get(tokens.get(5 * i + 3))))
                .contains("keyword", "number", "class", "event", "comment");
        int score = show.at("score Tides").getLine();
        assertThat(get(texts().foldingRange(new FoldingRangeRequestParams(show.id())))).extracting(FoldingRange::getStartLine).contains(score);
        assertThat(get(texts().documentSymbol(new DocumentSymbolParams(show.id())))).extracting(symbol -> symbol.getRight().getName())
                .contains("HarbourNight", "score Tides");
        assertThat(get(server.getWorkspaceService().symbol(new WorkspaceSymbolParams("redpeony75"))).getRight()).extracting(WorkspaceSymbol::getName)
                .contains("RedPeony75");
        assertThat(get(texts().codeLens(new CodeLensParams(show.id()))).stream().map(lens -> lens.getCommand().getTitle()).toList())
                .isNotEmpty().allMatch(title -> title.matches("\\d+ igniters, .* s, .* kg"));
        List<DocumentLink> links = get(texts().documentLink(new DocumentLinkParams(show.id())));
        assertThat(links).hasSize(3).allSatisfy(link -> assertThat(Path.of(URI.create(link.getTarget()))).isRegularFile());
        Position call = show.at("play Crossing(");
        SignatureHelp help = get(texts().signatureHelp(new SignatureHelpParams(show.id(), new Position(call.getLine(), call.getCharacter()
                + "play Crossing(".length()))));
        assertThat(help.getSignatures()).extracting(SignatureInformation::getLabel).containsExactly("Crossing(shot, step)");
        assertThat(help.getActiveParameter()).isZero();
        Position figure = new Position(call.getLine(), call.getCharacter() + "play ".length());
        assertThat(get(texts().definition(new DefinitionParams(show.id(), figure))).getLeft()).singleElement()
                .satisfies(found -> assertThat(found.getRange().getStart().getLine()).isEqualTo(show.at("figure Crossing").getLine()));
        // Defined once, played twice.
        assertThat(get(texts().references(new ReferenceParams(show.id(), figure, new ReferenceContext(true))))).hasSize(3);
        assertThat(get(texts().documentHighlight(new DocumentHighlightParams(show.id(), figure)))).hasSize(3);
        assertThat(get(texts().rangeFormatting(new DocumentRangeFormattingParams(show.id(), new FormattingOptions(2, true),
                new Range(new Position(score, 0), new Position(score + 1, 0)))))).isEmpty();
    }

    private static boolean isError(Diagnostic finding) {
        return finding.getSeverity() == DiagnosticSeverity.Error;
    }

    /** A request that tells of the plan waits until the check has caught up with every open file. */
    private void settle(Document document) throws Exception {
        get(texts().inlayHint(new InlayHintParams(document.id(), new Range(new Position(0, 0), new Position(1, 0)))));
    }

    private TextDocumentService texts() {
        return server.getTextDocumentService();
    }

    private Document open(String file) throws IOException {
        Document document = new Document(folder.resolve(file).toUri().toString(), Files.readString(folder.resolve(file)));
        texts().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(document.uri, "show", document.version, document.text)));
        return document;
    }

    /** A file as an editor has it open. */
    private final class Document {
        private final String uri;
        private String text;
        private int version = 1;

        Document(String uri, String text) {
            this.uri = uri;
            this.text = text;
        }

        TextDocumentIdentifier id() {
            return new TextDocumentIdentifier(uri);
        }

        List<Diagnostic> findings() throws InterruptedException {
            return client.findings(uri, version);
        }

        Position at(String words) {
            String before = text.substring(0, text.indexOf(words));
            return new Position((int) before.chars().filter(c -> c == '\n').count(), before.length() - before.lastIndexOf('\n') - 1);
        }

        private int offset(Position position) {
            int start = 0;
            for (int line = 0; line < position.getLine(); line++) {
                start = text.indexOf('\n', start) + 1;
            }
            return start + position.getCharacter();
        }

        void type(Position at, String words) {
            change(new Range(at, at), words);
        }

        /** From the last to the first, so that none moves what another is about. */
        void apply(List<? extends TextEdit> edits) {
            edits.stream().sorted(Comparator.comparing((TextEdit edit) -> offset(edit.getRange().getStart())).reversed()).toList()
                    .forEach(edit -> change(edit.getRange(), edit.getNewText()));
        }

        private void change(Range range, String words) {
            text = text.substring(0, offset(range.getStart())) + words + text.substring(offset(range.getEnd()));
            version++;
            texts().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                    List.of(new TextDocumentContentChangeEvent(range, words))));
        }
    }

    private static String errors(InputStream stream) throws IOException {
        return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }

    /** Remembers what it is told. */
    private static final class Client implements LanguageClient {
        private final Map<String, PublishDiagnosticsParams> told = new ConcurrentHashMap<>();

        List<Diagnostic> findings(String uri, int version) throws InterruptedException {
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
            synchronized (told) {
                while (!told.containsKey(uri) || told.get(uri).getVersion() == null || told.get(uri).getVersion() != version) {
                    long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                    assertThat(left).as("findings of version %s; told %s", version, told.get(uri)).isPositive();
                    told.wait(left);
                }
                return told.get(uri).getDiagnostics();
            }
        }

        @Override
        public void publishDiagnostics(PublishDiagnosticsParams params) {
            synchronized (told) {
                told.put(params.getUri(), params);
                told.notifyAll();
            }
        }

        @Override
        public void telemetryEvent(Object object) {
            // Nothing is measured.
        }

        @Override
        public void showMessage(MessageParams message) {
            throw new AssertionError(message.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
            throw new AssertionError(request.getMessage());
        }

        @Override
        public void logMessage(MessageParams message) {
            throw new AssertionError(message.getMessage());
        }
    }
}
