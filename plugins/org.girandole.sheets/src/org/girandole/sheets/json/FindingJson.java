package org.girandole.sheets.json;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.girandole.plan.Finding;
import org.girandole.plan.script.Waiver;

/** One finding as a JSON object; the same in {@code plan.json}, {@code release.json} and the output of a check. */
public final class FindingJson {
    private FindingJson() {
    }

    /**
     * Writes the object.
     *
     * @param path turns the finding's path into the one that the reader can open
     */
    public static void write(Finding finding, UnaryOperator<String> path, JsonText json) throws IOException {
        json.object()
                .field("rule", finding.rule())
                .field("severity", finding.severity().word())
                .field("message", finding.message())
                .field("found", finding.found())
                .field("allowed", finding.allowed())
                .field("basis", finding.basis())
                .field("remedy", finding.remedy())
                .field("waived", finding.waived())
                .field("file", path.apply(finding.source().file()))
                .field("line", finding.source().line())
                .field("column", finding.source().column())
                .field("length", finding.source().length());
        json.array("names");
        for (String name : finding.subject().names()) {
            json.item(name);
        }
        json.endArray().array("positions");
        for (String position : finding.subject().positions()) {
            json.item(position);
        }
        json.endArray().object("data");
        for (Map.Entry<String, String> value : finding.data().entrySet()) {
            json.field(value.getKey(), value.getValue());
        }
        json.endObject();
        Optional<Waiver> waiver = finding.waiver();
        if (waiver.isPresent()) {
            json.object("waiver");
            waiver(waiver.get(), path, json);
            json.endObject();
        } else {
            json.field("waiver", Optional.empty());
        }
        json.endObject();
    }

    /** Writes the fields of a waiver. */
    public static void waiver(Waiver waiver, UnaryOperator<String> path, JsonText json) throws IOException {
        json.field("rule", waiver.rule())
                .field("subject", waiver.subject())
                .field("position", waiver.position())
                .field("because", waiver.because())
                .field("by", waiver.by())
                .field("until", waiver.until())
                .field("file", path.apply(waiver.source().file()))
                .field("line", waiver.source().line());
    }
}
