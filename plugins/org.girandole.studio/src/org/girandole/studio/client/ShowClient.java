package org.girandole.studio.client;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.jface.text.IDocument;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.ui.PlatformUI;

/**
 * What the studio's parts know of the language server. Every method returns at once; answers come on threads of the server.
 *
 * <p>An answer is null when the text has changed since the question, or when there is no server: ask again when {@link
 * ShowListener#checked} says so.
 */
public final class ShowClient {
    static final int MOST_TRIES = 5;
    private static ShowClient instance;

    private final ServerLink link = new ServerLink();
    private final OpenTexts texts = new OpenTexts(link);
    private final Findings findings = new Findings(texts);
    private final ShowFolders folders = new ShowFolders(link);
    private final Collection<ShowListener> listeners = new CopyOnWriteArrayList<>();
    private final EditorWatch watch = new EditorWatch(this);

    private ShowClient() {
    }

    /** The client; starts the server when it is asked for the first time. */
    public static synchronized ShowClient get() {
        if (instance == null) {
            ShowClient created = new ShowClient();
            created.link.start(new HostClient(created.findings, created::tellChecked), created.folders.now());
            created.folders.listen();
            created.texts.listen();
            instance = created;
            if (PlatformUI.isWorkbenchRunning()) {
                PlatformUI.getWorkbench().getDisplay().asyncExec(created.watch::install);
            }
        }
        return instance;
    }

    /** Ends the server; for the end of the workbench. */
    public static synchronized void stop() {
        if (instance != null) {
            instance.folders.ignore();
            instance.texts.ignore();
            instance.watch.uninstall();
            instance.link.stop();
            instance = null;
        }
    }

    /** A request of the protocol, sent after all changes of text that came before it. */
    public <T> CompletableFuture<T> ask(Function<LanguageServer, CompletableFuture<T>> question) {
        return link.ask(question);
    }

    /** As {@link #ask}, for what a person has asked for: a change that overtakes the question does not lose it, it is asked again. */
    public <T> CompletableFuture<T> insist(Function<LanguageServer, CompletableFuture<T>> question) {
        return insist(question, () -> true, MOST_TRIES);
    }

    /**
     * As {@link #insist(Function)}, as long as somebody wants to know.
     *
     * @param wanted asked on threads of the server
     */
    public <T> CompletableFuture<T> insist(Function<LanguageServer, CompletableFuture<T>> question, BooleanSupplier wanted) {
        return insist(question, wanted, MOST_TRIES);
    }

    private <T> CompletableFuture<T> insist(Function<LanguageServer, CompletableFuture<T>> question, BooleanSupplier wanted, int tries) {
        return link.attempt(question).handle((answer, problem) -> {
            if (problem != null && Answers.cancelled(problem) && tries > 1 && wanted.getAsBoolean()) {
                return insist(question, wanted, tries - 1);
            }
            return CompletableFuture.completedFuture(problem == null ? answer : Answers.<T>none(problem));
        }).thenCompose(Function.identity());
    }

    <T> CompletableFuture<T> attempt(Function<LanguageServer, CompletableFuture<T>> question) {
        return link.attempt(question);
    }

    /** A request that is not of the protocol, such as {@code girandole/plan}; the parameter is passed as it is. */
    public CompletableFuture<Object> request(String method, Object parameter) {
        return link.ask(server -> ((Endpoint) server).request(method, parameter).thenApply(answer -> (Object) answer));
    }

    /** A message of the protocol. */
    public void send(Consumer<LanguageServer> message) {
        link.send(message);
    }

    /** The open script of a document; empty when it is no script. */
    public Optional<OpenText> text(IDocument document) {
        return texts.of(document);
    }

    public Optional<OpenText> text(String uri) {
        return texts.of(uri);
    }

    /** All scripts that are open. */
    Collection<OpenText> texts() {
        return texts.all();
    }

    /** The script being looked at. On the display's thread. */
    public Optional<String> activeUri() {
        return watch.active();
    }

    /**
     * Shows a place in its editor; opens it when need be. From any thread.
     *
     * @param line from 1
     * @param column from 1
     * @param length of what is selected, in characters
     */
    public void reveal(String uri, int line, int column, int length) {
        Places.reveal(uri, line, column, length);
    }

    public void addListener(ShowListener listener) {
        listeners.add(listener);
    }

    public void removeListener(ShowListener listener) {
        listeners.remove(listener);
    }

    /** The names of the server's kinds of words, in the order of their numbers. */
    public CompletableFuture<List<String>> legend() {
        return link.legend();
    }

    /** The finding that a marker stands for: the nearest one of its rule with its message. */
    public Optional<Diagnostic> finding(String uri, String rule, int line, String message) {
        return findings.of(uri).stream().filter(found -> Findings.rule(found).equals(rule) && Findings.message(found).equals(message))
                .min(Comparator.comparingInt(found -> Math.abs(found.getRange().getStart().getLine() - line)));
    }

    /** The findings of a file as they were told last. */
    public List<Diagnostic> findings(String uri) {
        return findings.of(uri);
    }

    /** Tells again what is known of all files: after a change of how it shall be shown. */
    public void showFindingsAgain() {
        findings.again();
    }

    /** Files that changed without being open, or all of them when a folder is built anew. */
    public void filesChanged(List<String> changed, List<String> deleted) {
        folders.filesChanged(changed, deleted);
    }

    void tellEditor(Optional<String> uri) {
        listeners.forEach(listener -> listener.editorChanged(uri));
    }

    void tellCaret(String uri, int line) {
        listeners.forEach(listener -> listener.caretMoved(uri, line));
    }

    void tellChecked(String uri) {
        listeners.forEach(listener -> listener.checked(uri));
    }
}
