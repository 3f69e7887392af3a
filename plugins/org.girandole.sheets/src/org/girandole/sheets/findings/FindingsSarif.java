package org.girandole.sheets.findings;

import java.io.IOException;
import java.io.Writer;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Waiver;
import org.girandole.sheets.json.JsonText;

/** Findings in the OASIS Static Analysis Results Interchange Format, version 2.1.0. */
public final class FindingsSarif {
    private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    private FindingsSarif() {
    }

    /** Writes the document; the writer stays open. */
    public static void write(FindingReport report, Writer writer) throws IOException {
        Map<String, RuleInfo> known = new TreeMap<>();
        report.rules().forEach(rule -> known.put(rule.id(), rule));
        List<String> ids = new ArrayList<>(report.findings().stream().map(Finding::rule).distinct().sorted().toList());
        JsonText json = new JsonText(writer);
        json.object()
                .field("$schema", SCHEMA)
                .field("version", "2.1.0")
                .array("runs").object()
                .object("tool").object("driver")
                .field("name", "girandole")
                .field("version", report.toolVersion())
                .array("rules");
        for (String id : ids) {
            rule(id, known.get(id), json);
        }
        json.endArray().endObject().endObject();
        json.field("columnKind", "utf16CodeUnits").array("results");
        for (Finding finding : report.findings()) {
            result(finding, ids.indexOf(finding.rule()), report, json);
        }
        json.endArray().endObject().endArray().endObject().end(writer);
    }

    private static void rule(String id, RuleInfo rule, JsonText json) throws IOException {
        json.object().field("id", id);
        if (rule != null) {
            json.object("shortDescription").field("text", rule.summary()).endObject()
                    .object("help").field("text", rule.reason() + " Basis: " + rule.basis()).endObject()
                    .object("defaultConfiguration").field("level", level(rule.severity())).endObject();
        }
        json.endObject();
    }

    private static void result(Finding finding, int ruleIndex, FindingReport report, JsonText json) throws IOException {
        json.object()
                .field("ruleId", finding.rule())
                .field("ruleIndex", ruleIndex)
                .field("level", level(finding.severity()))
                .object("message").field("text", message(finding)).endObject();
        json.array("locations").object().object("physicalLocation")
                .object("artifactLocation").field("uri", uri(report.path().apply(finding.source().file()))).endObject()
                .object("region")
                .field("startLine", finding.source().line())
                .field("startColumn", finding.source().column())
                .field("endColumn", finding.source().column() + Math.max(1, finding.source().length()))
                .endObject().endObject().endObject().endArray();
        if (finding.waived()) {
            Waiver waiver = finding.waiver().orElseThrow();
            json.array("suppressions").object()
                    .field("kind", "inSource")
                    .field("status", "accepted")
                    .field("justification", waiver.because() + " (" + waiver.by() + ")")
                    .endObject().endArray();
        }
        json.endObject();
    }

    private static String message(Finding finding) {
        StringBuilder text = new StringBuilder(finding.message());
        part(text, "Found", finding.found());
        part(text, "Allowed", finding.allowed());
        part(text, "Basis", finding.basis());
        part(text, "Remedy", finding.remedy());
        return text.toString();
    }

    private static void part(StringBuilder text, String name, String value) {
        if (!value.isEmpty()) {
            text.append(' ').append(name).append(": ").append(value).append(value.endsWith(".") ? "" : ".");
        }
    }

    private static String level(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case INFO -> "note";
        };
    }

    /** A path as a URI reference. */
    private static String uri(String path) {
        try {
            return path.startsWith("/")
                    ? new URI("file", "", path, null).toASCIIString()
                    : new URI(null, null, path, null).toASCIIString();
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException("not a path: " + path, e);
        }
    }
}
