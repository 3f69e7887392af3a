package org.girandole.lang.ide.server;

import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;
import org.girandole.plan.Finding;

/** Tells the client what was found, file by file, and only where something is new. */
@Singleton
final class FindingsPublisher {
    private final Map<String, PublishDiagnosticsParams> told = new HashMap<>();
    private final CompletableFuture<LanguageClient> client = new CompletableFuture<>();
    private final RulePages pages;

    @com.google.inject.Inject
    FindingsPublisher(RulePages pages) {
        this.pages = pages;
    }

    /** The client may be told from now on. */
    void ready(LanguageClient ready) {
        client.complete(ready);
    }

    void publish(List<CheckedScript> scripts) {
        Map<String, PublishDiagnosticsParams> now = diagnostics(scripts);
        client.thenAccept(listener -> tell(listener, now));
    }

    private void tell(LanguageClient listener, Map<String, PublishDiagnosticsParams> now) {
        List<PublishDiagnosticsParams> news = new ArrayList<>();
        synchronized (told) {
            for (Map.Entry<String, PublishDiagnosticsParams> entry : now.entrySet()) {
                if (!entry.getValue().equals(told.put(entry.getKey(), entry.getValue()))) {
                    news.add(entry.getValue());
                }
            }
            Set<String> gone = new HashSet<>(told.keySet());
            gone.removeAll(now.keySet());
            for (String uri : gone) {
                told.remove(uri);
                news.add(new PublishDiagnosticsParams(uri, List.of()));
            }
        }
        news.forEach(listener::publishDiagnostics);
    }

    private Map<String, PublishDiagnosticsParams> diagnostics(List<CheckedScript> scripts) {
        Map<String, PublishDiagnosticsParams> byFile = new TreeMap<>();
        Map<String, Set<Finding>> seen = new HashMap<>();
        for (CheckedScript script : scripts) {
            script.texts().values().forEach(text -> {
                PublishDiagnosticsParams params = byFile.computeIfAbsent(text.uri(), uri -> new PublishDiagnosticsParams(uri, new ArrayList<>()));
                text.version().ifPresent(params::setVersion);
            });
            for (Finding finding : script.show().findings()) {
                CheckedText text = script.texts().get(finding.source().file());
                // Two shows may use one file; what both say of it is said once.
                if (text != null && seen.computeIfAbsent(text.uri(), uri -> new HashSet<>()).add(finding)) {
                    byFile.get(text.uri()).getDiagnostics().add(diagnostic(finding, text.lines()));
                }
            }
        }
        return byFile;
    }

    private Diagnostic diagnostic(Finding finding, TextLines lines) {
        return FindingDiagnostics.of(finding, lines, pages.uri(finding.rule()));
    }
}
