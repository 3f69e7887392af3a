package org.girandole.benchmarks;

import com.google.inject.Injector;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.emf.common.util.URI;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.ShowStandaloneSetup;
import org.girandole.lang.ide.server.ShowServer;

/** How long an editor waits on a show of 10,000 cues: prints the table of docs/performance-editor.md. */
public final class EditorMeasure {
    private static final int CUES = 10_000;
    private static final int WARM_PARSES = 8;
    /** A session lasts hours; the compiler of the virtual machine is busy for its first minute. */
    private static final int WARM_PRESSES = 60;
    private static final int PRESSES = 100;
    /** Full parses between so many key presses: what slows the machine slows both. The next key press pays for their garbage and is not counted. */
    private static final int PRESSES_A_BLOCK = 20;
    private static final int PARSES_A_BLOCK = 4;
    /** A line as somebody types it, and how often. */
    private static final String TYPED = "    at Start + 301 beats  P3  Peony7";
    private static final int TYPED_LINES = 5;
    private static final double MEDIAN = 0.5;
    private static final double P95 = 0.95;

    private EditorMeasure() {
    }

    /** Expects a folder to write the show into, and perhaps a number of key presses. */
    public static void main(String[] args) throws IOException, InterruptedException, ExecutionException {
        Path folder = Files.createDirectories(Path.of(args[0]).toAbsolutePath().normalize());
        Path file = SyntheticShow.write(CUES, folder.resolve("big.show"));
        String text = Files.readString(file);
        List<Double> parses = new ArrayList<>();
        Client client = new Client();
        long begun = System.nanoTime();
        LanguageServer server = ShowServer.connect(client);
        InitializeParams hello = new InitializeParams();
        hello.setCapabilities(new ClientCapabilities());
        server.initialize(hello).get();
        server.initialized(new InitializedParams());
        String uri = file.toUri().toString();
        TextDocumentIdentifier id = new TextDocumentIdentifier(uri);
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "show", 1, text)));
        server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(id)).get();
        double outline = millis(begun);
        client.await(1);
        double opened = millis(begun);
        Parser parser = new Parser(file);
        for (int i = 0; i < WARM_PARSES; i++) {
            parser.millis();
        }
        int line = (int) text.substring(0, text.indexOf("Start + 300 beats")).lines().count() - 1;
        int column = text.lines().skip(line).findFirst().orElseThrow().indexOf("300");
        Typist typist = new Typist(server, client, uri);
        List<Double> early = new ArrayList<>();
        List<Double> findings = new ArrayList<>();
        List<Double> completions = new ArrayList<>();
        int presses = args.length > 1 ? Integer.parseInt(args[1]) : PRESSES;
        for (int i = 0; findings.size() < presses; i++) {
            Range digit = new Range(new Position(line, column + 2), new Position(line, column + 3));
            Waited waited = typist.press(digit, Integer.toString((i + 1) % 10), new Position(line, column + 10));
            boolean afterParses = i % PRESSES_A_BLOCK == 0;
            if (i < WARM_PRESSES) {
                early.add(waited.findings);
            } else if (!afterParses) {
                completions.add(waited.completion);
                findings.add(waited.findings);
            }
            if (i >= WARM_PRESSES && (i + 1) % PRESSES_A_BLOCK == 0) {
                for (int k = 0; k < PARSES_A_BLOCK; k++) {
                    parses.add(parser.millis());
                }
            }
        }
        List<Double> typed = new ArrayList<>();
        for (int k = 0; k < TYPED_LINES; k++) {
            typist.press(new Range(new Position(line, 0), new Position(line, 0)), "\n", new Position(line, 0));
            for (int i = 0; i < TYPED.length(); i++) {
                Position here = new Position(line, i);
                typed.add(typist.press(new Range(here, here), TYPED.substring(i, i + 1), new Position(line, i + 1)).findings);
            }
        }
        double parse = at(parses, MEDIAN);
        System.out.printf(Locale.ROOT, "one full parse by the parser alone, between the key presses: median of %d %.0f ms%n", parses.size(), parse);
        System.out.printf(Locale.ROOT, "opening: outline after %.0f ms, findings after %.0f ms (in a process that has done nothing yet, start of the server included)%n", outline, opened);
        System.out.printf(Locale.ROOT, "key press to fresh findings, the first %d after opening: median %.0f ms, p95 %.0f ms%n", early.size(),
                at(early, MEDIAN), at(early, P95));
        System.out.printf(Locale.ROOT, "key press to completion: median %.0f ms, p95 %.0f ms%n", at(completions, MEDIAN), at(completions, P95));
        System.out.printf(Locale.ROOT, "key press to fresh findings, the next %d: median %.0f ms, p95 %.0f ms; in full parses: median %.2f, p95 %.2f%n",
                findings.size(), at(findings, MEDIAN), at(findings, P95), at(findings, MEDIAN) / parse, at(findings, P95) / parse);
        System.out.printf(Locale.ROOT, "the same, letter by letter of new cue lines, which cannot be read before they are whole, %d of them: median %.0f ms, "
                + "p95 %.0f ms; in full parses: median %.2f, p95 %.2f%n", typed.size(), at(typed, MEDIAN), at(typed, P95), at(typed, MEDIAN) / parse,
                at(typed, P95) / parse);
        server.shutdown().get();
        System.exit(0);
    }

    /** How long one key press waits, milliseconds. */
    private record Waited(double completion, double findings) {
    }

    /** Somebody at the keyboard, who asks for completion at each key press and waits for the findings before the next. */
    private static final class Typist {
        private final LanguageServer server;
        private final Client client;
        private final String uri;
        private int version = 1;

        Typist(LanguageServer server, Client client, String uri) {
            this.server = server;
            this.client = client;
            this.uri = uri;
        }

        Waited press(Range replaced, String text, Position caret) throws InterruptedException, ExecutionException {
            long pressed = System.nanoTime();
            version++;
            server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version),
                    List.of(new TextDocumentContentChangeEvent(replaced, text))));
            server.getTextDocumentService().completion(new CompletionParams(new TextDocumentIdentifier(uri), caret)).get();
            double completed = millis(pressed);
            client.await(version);
            return new Waited(completed, millis(pressed));
        }
    }

    /** The parser alone, without a server. */
    private static final class Parser {
        private final Injector language = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration();
        private final URI file;

        Parser(Path file) {
            this.file = URI.createFileURI(file.toString());
        }

        /** How long one full parse takes. */
        double millis() {
            long begun = System.nanoTime();
            language.getInstance(XtextResourceSet.class).getResource(file, true);
            return EditorMeasure.millis(begun);
        }
    }

    private static double millis(long begun) {
        return (System.nanoTime() - begun) / 1e6;
    }

    private static double at(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(Math.ceil(share * sorted.size())) - 1));
    }

    /** Waits for the findings of a version. */
    private static final class Client implements LanguageClient {
        private int version;

        synchronized void await(int wanted) throws InterruptedException {
            while (version < wanted) {
                wait();
            }
        }

        @Override
        public synchronized void publishDiagnostics(PublishDiagnosticsParams params) {
            version = params.getVersion() == null ? version : params.getVersion();
            notifyAll();
        }

        @Override
        public void telemetryEvent(Object object) {
            // Not of interest here.
        }

        @Override
        public void showMessage(MessageParams message) {
            System.err.println(message.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
            return CompletableFuture.completedFuture(null);
        }

        @Override
        public void logMessage(MessageParams message) {
            System.err.println(message.getMessage());
        }
    }
}
