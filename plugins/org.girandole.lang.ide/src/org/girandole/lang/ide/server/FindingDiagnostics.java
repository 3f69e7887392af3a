package org.girandole.lang.ide.server;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DiagnosticTag;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.girandole.plan.Finding;

/** Findings as the protocol knows them. */
public final class FindingDiagnostics {
    /** The source of every diagnostic of this server. */
    public static final String SOURCE = "girandole";
    private static final Set<String> UNUSED = Set.of("unused-effect", "waiver-unused");

    private FindingDiagnostics() {
    }

    /**
     * A finding as a diagnostic. Its data is a JSON object with {@code rule}, {@code found}, {@code allowed}, {@code basis},
     * {@code remedy}, {@code waived}, {@code names}, {@code positions}, and the finding's own values for quick fixes under {@code data}.
     * A waived finding stays visible, as a piece of information.
     */
    static Diagnostic of(Finding finding, TextLines lines, Optional<String> page) {
        String text = finding.remedy().isEmpty() ? finding.message() : finding.message() + "\n" + finding.remedy();
        Diagnostic diagnostic = new Diagnostic(lines.range(finding.source()), waived(finding, text));
        diagnostic.setSeverity(severity(finding));
        diagnostic.setSource(SOURCE);
        diagnostic.setCode(Either.forLeft(finding.rule()));
        page.ifPresent(uri -> diagnostic.setCodeDescription(new DiagnosticCodeDescription(uri)));
        if (UNUSED.contains(finding.rule())) {
            diagnostic.setTags(List.of(DiagnosticTag.Unnecessary));
        }
        diagnostic.setData(data(finding));
        return diagnostic;
    }

    private static String waived(Finding finding, String text) {
        return finding.waiver().map(waiver -> text + "\nWaived by " + waiver.by() + ": " + waiver.because()).orElse(text);
    }

    private static DiagnosticSeverity severity(Finding finding) {
        if (finding.waived()) {
            return DiagnosticSeverity.Information;
        }
        return switch (finding.severity()) {
            case ERROR -> DiagnosticSeverity.Error;
            case WARNING -> DiagnosticSeverity.Warning;
            case INFO -> DiagnosticSeverity.Information;
        };
    }

    private static JsonObject data(Finding finding) {
        JsonObject data = new JsonObject();
        data.addProperty("rule", finding.rule());
        data.addProperty("found", finding.found());
        data.addProperty("allowed", finding.allowed());
        data.addProperty("basis", finding.basis());
        data.addProperty("remedy", finding.remedy());
        data.addProperty("waived", finding.waived());
        data.add("names", array(finding.subject().names()));
        data.add("positions", array(finding.subject().positions()));
        JsonObject own = new JsonObject();
        finding.data().forEach(own::addProperty);
        data.add("data", own);
        return data;
    }

    private static JsonArray array(List<String> words) {
        JsonArray array = new JsonArray();
        words.forEach(array::add);
        return array;
    }
}
