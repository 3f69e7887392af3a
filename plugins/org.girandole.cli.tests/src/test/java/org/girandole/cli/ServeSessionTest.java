package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
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
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceFolder;
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
        String uri = folder.resolve("harbour.show").toUri().toString();
        TextDocumentService texts = server.getTextDocumentService();
        TextDocumentIdentifier id = new TextDocumentIdentifier(uri);
        texts.didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "show", 1, text)));
        List<Diagnostic> first = client.findings(uri, 1);
        String checked = Cli.in(folder).run("check", "harbour.show").out();
        assertThat(first).isNotEmpty().allSatisfy(finding -> {
            assertThat(finding.getSource()).isEqualTo("girandole");
            assertThat(checked).contains(finding.getCode().getLeft()).contains(finding.getMessage().getLeft().lines().findFirst().orElseThrow());
            assertThat(finding.getCodeDescription().getHref()).endsWith(finding.getCode().getLeft() + ".md");
        });

        // Type: a new cue with a slip in it.
        int section = text.indexOf("    at Swell               Towers");
        int line = (int) text.substring(0, section).lines().count();
        change(texts, uri, 2, new Range(new Position(line, 0), new Position(line, 0)), "    at ");
        List<String> labels = get(texts.completion(new CompletionParams(id, new Position(line, 7)))).map(items -> items, list -> list.getItems()).stream()
                .map(CompletionItem::getLabel).toList();
        assertThat(labels).contains("Swell", "Break", "bar").doesNotContain("RedPeony75");
        String typed = "    at ";
        for (String piece : List.of("Swe", "ll + ", "1 beat  D", "  RedPeny75\n")) {
            int column = typed.length();
            change(texts, uri, 2 + typed.length(), new Range(new Position(line, column), new Position(line, column)), piece);
            typed += piece;
        }
        int version = 2 + typed.length() - "  RedPeny75\n".length();
        Diagnostic slip = client.findings(uri, version).stream().filter(d -> d.getSeverity() == DiagnosticSeverity.Error).findFirst().orElseThrow();
        assertThat(slip.getCode().getLeft()).isEqualTo("unresolved-name");
        assertThat(slip.getMessage().getLeft()).contains("did you mean RedPeony75?");

        // Mend: the first fix offered makes the error go away.
        CodeAction fix = get(texts.codeAction(new CodeActionParams(id, slip.getRange(), new CodeActionContext(List.of(slip))))).get(0).getRight();
        assertThat(fix.getTitle()).isEqualTo("Write RedPeony75");
        TextEdit edit = fix.getEdit().getChanges().get(uri).get(0);
        change(texts, uri, version + 1, edit.getRange(), edit.getNewText());
        assertThat(client.findings(uri, version + 1)).noneMatch(d -> d.getSeverity() == DiagnosticSeverity.Error);

        // Read: the derivation, the outline, the hints.
        assertThat(get(texts.hover(new HoverParams(id, new Position(line, 5)))).getContents().getRight().getValue()).contains("due = seen - rise - latency");
        assertThat(get(texts.documentSymbol(new DocumentSymbolParams(id)))).isNotEmpty();
        assertThat(get(texts.inlayHint(new InlayHintParams(id, new Range(new Position(line, 0), new Position(line, 1)))))).singleElement()
                .satisfies(hint -> assertThat(hint.getLabel().getLeft()).startsWith("fires 0:"));

        // Rename an effect that two files use: one edit over both.
        Position effect = edit.getRange().getStart();
        WorkspaceEdit renamed = get(texts.rename(new RenameParams(id, effect, "ScarletPeony75")));
        assertThat(renamed.getChanges().keySet()).extracting(u -> u.substring(u.lastIndexOf('/') + 1)).contains("harbour.show", "house.show");
        List<TextEdit> own = renamed.getChanges().get(uri).stream().sorted(Comparator.comparing((TextEdit e) -> e.getRange().getStart().getLine())
                .thenComparing(e -> e.getRange().getStart().getCharacter()).reversed()).toList();
        int next = version + 2;
        for (TextEdit each : own) {
            change(texts, uri, next++, each.getRange(), each.getNewText());
        }
        for (Map.Entry<String, List<TextEdit>> other : renamed.getChanges().entrySet()) {
            if (!other.getKey().equals(uri)) {
                Path file = Path.of(java.net.URI.create(other.getKey()));
                texts.didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(other.getKey(), "show", 1, Files.readString(file))));
                int v = 2;
                for (TextEdit each : other.getValue().stream().sorted(Comparator.comparing((TextEdit e) -> e.getRange().getStart().getLine())
                        .thenComparing(e -> e.getRange().getStart().getCharacter()).reversed()).toList()) {
                    change(texts, other.getKey(), v++, each.getRange(), each.getNewText());
                }
            }
        }
        // A request that tells of the plan waits until the check has caught up; after it the findings are of all these changes.
        get(texts.inlayHint(new InlayHintParams(id, new Range(new Position(0, 0), new Position(1, 0)))));
        assertThat(client.findings(uri, next - 1)).noneMatch(d -> d.getSeverity() == DiagnosticSeverity.Error);

        // Format, close, leave.
        assertThat(get(texts.formatting(new DocumentFormattingParams(id, new FormattingOptions(2, true))))).isNotNull();
        texts.didClose(new DidCloseTextDocumentParams(id));
        get(server.shutdown());
        server.exit();
        assertThat(process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(errors(process.getErrorStream())).doesNotContain("Exception").doesNotContain("\tat ");
        // What the editor did not save is not on disk.
        assertThat(Files.readString(folder.resolve("harbour.show"))).isEqualTo(text);
    }

    private static String errors(InputStream stream) throws IOException {
        return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }

    private static void change(TextDocumentService texts, String uri, int version, Range range, String text) {
        texts.didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                List.of(new TextDocumentContentChangeEvent(range, text))));
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
