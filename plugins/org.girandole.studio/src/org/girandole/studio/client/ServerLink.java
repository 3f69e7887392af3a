package org.girandole.studio.client;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.girandole.lang.ide.server.ShowServer;
import org.girandole.studio.StudioPlugin;

/** The server and the one thread that speaks to it, so that requests and changes of text keep their order and no caller ever waits. */
final class ServerLink {
    private static final int START_MS = 120_000;

    private final ExecutorService speaker = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "girandole-client");
        thread.setDaemon(true);
        return thread;
    });
    private final CompletableFuture<List<String>> legend = new CompletableFuture<>();
    private LanguageServer server;

    /** Starts the server; returns at once. */
    void start(LanguageClient client, List<WorkspaceFolder> folders) {
        speaker.execute(() -> {
            try {
                ServerLog.listen();
                LanguageServer created = ShowServer.connect(client);
                InitializeParams params = new InitializeParams();
                params.setCapabilities(Capabilities.all());
                params.setWorkspaceFolders(folders);
                Optional<InitializeResult> ready = Waiting.of(created.initialize(params), START_MS);
                if (ready.isEmpty()) {
                    StudioPlugin.log("The language server did not start; scripts are plain text until the next start.", null);
                    legend.complete(List.of());
                    return;
                }
                SemanticTokensWithRegistrationOptions tokens = ready.get().getCapabilities().getSemanticTokensProvider();
                legend.complete(tokens == null ? List.of() : List.copyOf(tokens.getLegend().getTokenTypes()));
                created.initialized(new InitializedParams());
                server = created;
            } catch (RuntimeException | LinkageError e) {
                legend.complete(List.of());
                StudioPlugin.log("The language server could not be started; scripts are plain text until the next start.", e);
            }
        });
    }

    /** The names of the kinds of words. */
    CompletableFuture<List<String>> legend() {
        return legend;
    }

    /** Tells the server something. */
    void send(Consumer<LanguageServer> message) {
        ask(reached -> {
            message.accept(reached);
            return CompletableFuture.completedFuture(null);
        });
    }

    /** The server's answer; null when there is no server, and when a later change has overtaken the question. */
    <T> CompletableFuture<T> ask(Function<LanguageServer, CompletableFuture<T>> question) {
        CompletableFuture<T> attempt = attempt(question);
        CompletableFuture<T> answer = attempt.handle((value, problem) -> problem == null ? value : Answers.none(problem));
        answer.whenComplete((value, problem) -> {
            if (answer.isCancelled()) {
                attempt.cancel(true);
            }
        });
        return answer;
    }

    /** The server's answer, or why there is none; null when there is no server. */
    <T> CompletableFuture<T> attempt(Function<LanguageServer, CompletableFuture<T>> question) {
        CompletableFuture<T> answer = new CompletableFuture<>();
        try {
            speaker.execute(() -> put(question, answer));
        } catch (RejectedExecutionException e) {
            answer.complete(null);
        }
        return answer;
    }

    private <T> void put(Function<LanguageServer, CompletableFuture<T>> question, CompletableFuture<T> answer) {
        if (server == null || answer.isCancelled()) {
            answer.complete(null);
            return;
        }
        try {
            CompletableFuture<T> asked = question.apply(server);
            answer.whenComplete((value, problem) -> {
                if (answer.isCancelled()) {
                    asked.cancel(true);
                }
            });
            asked.whenComplete((value, problem) -> {
                if (problem == null) {
                    answer.complete(value);
                } else {
                    answer.completeExceptionally(problem);
                }
            });
        } catch (UnsupportedOperationException e) {
            // What this server does not offer has no answer.
            answer.complete(null);
        } catch (RuntimeException e) {
            answer.completeExceptionally(e);
        }
    }

    void stop() {
        speaker.execute(() -> {
            if (server != null) {
                server.shutdown();
                server.exit();
                server = null;
            }
        });
        speaker.shutdown();
        try {
            speaker.awaitTermination(1, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
