package org.girandole.sheets.json;

import java.io.IOException;
import java.io.Writer;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Timing;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.TimecodeLine;

/** Writes {@code plan.json}. The form is described by {@code docs/plan.schema.json}; a change that breaks readers raises its number. */
public final class PlanJson {
    /** Number of the form. */
    public static final int SCHEMA = 1;

    private PlanJson() {
    }

    /** Writes the document; the writer stays open. */
    public static void write(CheckedPlan checked, Writer writer) throws IOException {
        Plan plan = checked.plan();
        JsonText json = new JsonText(writer);
        json.object()
                .field("schema", SCHEMA)
                .field("show", plan.script().show().name())
                .field("label", plan.script().show().label())
                .field("stamp", plan.stamp().full())
                .field("clean", checked.clean());
        json.array("soundtracks");
        for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
            soundtrack(soundtrack, json);
        }
        json.endArray().array("cues");
        for (PlannedCue cue : plan.cues()) {
            cue(cue, json);
        }
        json.endArray().array("findings");
        for (Finding finding : checked.findings()) {
            FindingJson.write(finding, UnaryOperator.identity(), json);
        }
        json.endArray().endObject().end(writer);
    }

    private static void soundtrack(PlannedSoundtrack soundtrack, JsonText json) throws IOException {
        Optional<FrameRate> rate = soundtrack.line().map(TimecodeLine::rate).or(() -> soundtrack.script().rate());
        json.object()
                .field("name", soundtrack.name())
                .field("slot", soundtrack.slot())
                .field("rate", rate.map(FrameRate::number))
                .field("dropFrame", rate.map(FrameRate::dropFrame).orElse(false))
                .field("start", soundtrack.line().map(TimecodeLine::start))
                .field("prerollUs", soundtrack.line().map(TimecodeLine::prerollUs))
                .field("lengthUs", soundtrack.lengthUs());
        json.array("marks");
        for (Map.Entry<String, Long> mark : soundtrack.marksUs().entrySet()) {
            json.object().field("name", mark.getKey()).field("atUs", mark.getValue()).endObject();
        }
        json.endArray().array("sections");
        for (PlannedSoundtrack.Section section : soundtrack.sections()) {
            json.object().field("name", section.name()).field("fromUs", section.fromUs()).field("toUs", section.toUs()).endObject();
        }
        json.endArray().array("holds");
        for (PlannedSoundtrack.Hold hold : soundtrack.holds()) {
            json.object().field("fromUs", hold.fromUs()).field("toUs", hold.toUs()).field("reason", hold.reason()).endObject();
        }
        json.endArray().endObject();
    }

    private static void cue(PlannedCue cue, JsonText json) throws IOException {
        Timing timing = cue.timing();
        json.object()
                .field("key", cue.key())
                .field("number", cue.number())
                .field("name", cue.cueName())
                .field("soundtrack", cue.soundtrack())
                .field("slot", cue.slot())
                .field("section", cue.section())
                .field("effect", cue.what())
                .field("position", cue.position())
                .field("count", cue.pieces())
                .field("lot", cue.lot())
                .field("seenUs", timing.seenUs())
                .field("riseUs", timing.riseUs())
                .field("riseSource", word(timing.riseSource()))
                .field("latencyUs", timing.latencyUs())
                .field("soundUs", timing.soundUs())
                .field("fireUs", timing.fireUs())
                .field("roundingUs", timing.roundingUs())
                .field("toleranceUs", timing.toleranceUs())
                .field("timecode", cue.timecode())
                .field("seenMode", word(timing.mode()))
                .field("module", cue.pin().map(PlannedCue.Pin::module))
                .field("pin", cue.pin().map(PlannedCue.Pin::pin))
                .field("rack", cue.tube().map(PlannedCue.Tube::rack))
                .field("tube", cue.tube().map(PlannedCue.Tube::tube))
                .field("tiltDeg", cue.aim().tiltDeg(), 3)
                .field("bearingDeg", cue.aim().bearingDeg(), 3);
        circuit(cue, json);
        burst(cue, json);
        json.array("items");
        for (PlannedCue.Item item : cue.items()) {
            json.object()
                    .field("index", item.index())
                    .field("lightUs", item.lightUs())
                    .field("seenUs", item.seenUs())
                    .field("toleranceUs", item.toleranceUs())
                    .field("toleranceRssUs", item.toleranceRssUs())
                    .endObject();
        }
        json.endArray()
                .object("source")
                .field("file", cue.source().file())
                .field("line", cue.source().line())
                .field("column", cue.source().column())
                .endObject()
                .endObject();
    }

    private static void circuit(PlannedCue cue, JsonText json) throws IOException {
        if (cue.circuit().isPresent()) {
            json.field("loopOhm", cue.circuit().get().loopOhm(), 3).field("currentA", cue.circuit().get().currentA(), 3);
        } else {
            json.field("loopOhm", Optional.empty()).field("currentA", Optional.empty());
        }
    }

    private static void burst(PlannedCue cue, JsonText json) throws IOException {
        if (cue.burst().isPresent()) {
            PlannedCue.Burst burst = cue.burst().get();
            json.object("burst")
                    .field("x", burst.at().xM(), 3)
                    .field("y", burst.at().yM(), 3)
                    .field("z", burst.at().zM(), 3)
                    .field("estimated", burst.estimated())
                    .endObject();
        } else {
            json.field("burst", Optional.empty());
        }
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
