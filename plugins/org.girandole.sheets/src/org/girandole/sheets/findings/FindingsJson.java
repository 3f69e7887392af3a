package org.girandole.sheets.findings;

import java.io.IOException;
import java.io.Writer;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.sheets.json.FindingJson;
import org.girandole.sheets.json.JsonText;

/** Findings as JSON, for other programs. */
public final class FindingsJson {
    private FindingsJson() {
    }

    /** Writes the document; the writer stays open. */
    public static void write(FindingReport report, Writer writer) throws IOException {
        JsonText json = new JsonText(writer);
        json.object()
                .field("schema", 1)
                .object("tool").field("name", "girandole").field("version", report.toolVersion()).endObject()
                .field("scripts", report.scripts());
        json.object("counts")
                .field("error", report.open(Severity.ERROR))
                .field("warning", report.open(Severity.WARNING))
                .field("info", report.open(Severity.INFO))
                .field("waived", report.waived())
                .endObject();
        json.array("findings");
        for (Finding finding : report.findings()) {
            FindingJson.write(finding, report.path(), json);
        }
        json.endArray().endObject().end(writer);
    }
}
