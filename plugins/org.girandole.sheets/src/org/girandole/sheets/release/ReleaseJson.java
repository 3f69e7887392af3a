package org.girandole.sheets.release;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.function.UnaryOperator;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Waiver;
import org.girandole.sheets.diff.Since;
import org.girandole.sheets.json.FindingJson;
import org.girandole.sheets.json.JsonText;

/** Writes {@code release.json}: what the release was made of, what is in it, and what was found and agreed. */
final class ReleaseJson {
    static final String NAME = "release.json";
    /** By this a later release knows that the folder is one of ours. */
    static final String GENERATOR = "girandole";

    private ReleaseJson() {
    }

    static void write(ReleaseOrder order, List<ReleasedFile> files, List<String> leftOut, Writer writer) throws IOException {
        CheckedPlan checked = order.checked();
        Plan plan = checked.plan();
        ShowScript script = plan.script();
        JsonText json = new JsonText(writer);
        json.object()
                .field("schema", 1)
                .field("generator", GENERATOR)
                .field("version", order.toolVersion())
                .field("show", script.show().name())
                .field("label", script.show().label())
                .field("stamp", plan.stamp().full())
                .field("stampPrinted", plan.stamp().printed())
                .field("since", order.since().map(Since::stamp))
                .field("script", order.origin().map(ReleaseOrder.Origin::path));
        json.array("inputs");
        for (InputFile input : script.inputs()) {
            json.object().field("path", input.path()).field("sha256", input.sha256()).endObject();
        }
        json.endArray().object("counts")
                .field("soundtracks", plan.soundtracks().size())
                .field("cues", plan.cues().size())
                .field("pieces", plan.cues().stream().mapToLong(PlannedCue::pieces).sum())
                .field("modules", script.modules().size())
                .field("racks", script.racks().size())
                .field("errors", open(checked, Severity.ERROR))
                .field("warnings", open(checked, Severity.WARNING))
                .field("notes", open(checked, Severity.INFO))
                .field("waived", checked.findings().stream().filter(Finding::waived).count())
                .endObject();
        json.array("findings");
        for (Finding finding : checked.findings()) {
            FindingJson.write(finding, UnaryOperator.identity(), json);
        }
        json.endArray().array("waivers");
        for (Waiver waiver : script.waivers()) {
            json.object();
            FindingJson.waiver(waiver, UnaryOperator.identity(), json);
            json.field("used", checked.findings().stream().filter(f -> f.waiver().filter(waiver::equals).isPresent()).count())
                    .endObject();
        }
        json.endArray().array("leftOut");
        for (String what : leftOut) {
            json.item(what);
        }
        json.endArray().array("files");
        for (ReleasedFile file : files) {
            json.object().field("path", file.path()).field("bytes", file.bytes()).field("sha256", file.sha256()).endObject();
        }
        json.endArray().endObject().end(writer);
    }

    private static long open(CheckedPlan checked, Severity severity) {
        return checked.findings().stream().filter(f -> f.severity() == severity && !f.waived()).count();
    }
}
