package org.girandole.sheets.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.girandole.sheets.SmallShow.finding;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.girandole.plan.Severity;
import org.girandole.sheets.SmallShow;
import org.junit.jupiter.api.Test;

class PlanJsonTest {
    private static final SmallShow SHOW = new SmallShow().findings(finding(Severity.WARNING, "a"),
            SmallShow.waived(finding(Severity.ERROR, "b")));

    @Test
    void documentIsValidByItsSchema() throws IOException {
        assertThat(schema().validate(write(SHOW), InputFormat.JSON)).isEmpty();
    }

    @Test
    void schemaRefusesWhatIsNotAPlan() throws IOException {
        String plan = write(SHOW);

        assertThat(schema().validate(plan.replace("\"pin\": 7", "\"pin\": \"7\""), InputFormat.JSON)).isNotEmpty();
        assertThat(schema().validate(plan.replace("\"fireUs\"", "\"fire\""), InputFormat.JSON)).isNotEmpty();
        assertThat(schema().validate(plan.replace("10:01:17:04", "10:01:17"), InputFormat.JSON)).isNotEmpty();
        assertThat(schema().validate(plan.replace("\"schema\": 1", "\"schema\": 2"), InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void delaysAddUp() throws IOException {
        JsonArray cues = JsonParser.parseString(write(SHOW)).getAsJsonObject().getAsJsonArray("cues");

        assertThat(cues).hasSize(2).allSatisfy(element -> {
            JsonObject cue = element.getAsJsonObject();
            assertThat(us(cue, "fireUs")).isEqualTo(us(cue, "seenUs") - us(cue, "riseUs") - us(cue, "latencyUs") - us(cue, "soundUs")
                    + us(cue, "roundingUs"));
        });
    }

    @Test
    void valuesAreTheOnesOfThePlan() throws IOException {
        JsonObject plan = JsonParser.parseString(write(SHOW)).getAsJsonObject();
        JsonObject hero = plan.getAsJsonArray("cues").get(0).getAsJsonObject();
        JsonObject chain = plan.getAsJsonArray("cues").get(1).getAsJsonObject();

        assertThat(plan.get("clean").getAsBoolean()).isTrue();
        assertThat(hero.get("timecode").getAsString()).isEqualTo("10:01:17:04");
        assertThat(hero.get("tiltDeg").toString()).isEqualTo("-20.000");
        assertThat(hero.get("loopOhm").toString()).isEqualTo("4.125");
        assertThat(hero.getAsJsonObject("burst").get("z").toString()).isEqualTo("105.000");
        assertThat(chain.get("pin").isJsonNull()).isTrue();
        assertThat(chain.get("count").getAsInt()).isEqualTo(3);
        assertThat(chain.getAsJsonArray("items").get(2).getAsJsonObject().get("seenUs").getAsLong()).isEqualTo(30_500_000);
    }

    private static long us(JsonObject cue, String field) {
        return cue.get(field).getAsLong();
    }

    private static String write(SmallShow show) throws IOException {
        StringWriter text = new StringWriter();
        PlanJson.write(show.checked(), text);
        return text.toString();
    }

    private static JsonSchema schema() throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(Files.readString(Path.of("../../docs/plan.schema.json")));
    }
}
