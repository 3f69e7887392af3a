package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WaiversCommandTest {
    @TempDir
    private Path temp;
    private Path script;

    @BeforeEach
    void example() throws Exception {
        Example.copyTo(temp);
        script = temp.resolve("harbour.show");
    }

    @Test
    void everyWaiverIsToldWithWhatItCovers() throws Exception {
        String text = Cli.in(temp).run("waivers", "harbour.show").exits(0).out();

        assertThat(text).contains("separation for SilverRocket: holds").contains("because: maker states 125 m; 230 m are there")
                .contains("by:      T. Example, second pyrotechnician, until 2027-06-20").contains("stands:  harbour.show:")
                .endsWith("waivers of 'Harbour Night' on 2027-06-19: " + waivers(Files.readString(script)) + " holds, 0 expired, 0 unused, 0 doubled.\n");
        // What the list says is covered is what a check says is waived.
        JsonObject check = JsonParser.parseString(Cli.in(temp).run("check", "--output", "json", "harbour.show").exits(0).out()).getAsJsonObject();
        Map<String, Integer> waived = new TreeMap<>();
        check.getAsJsonArray("findings").asList().stream().map(JsonElement::getAsJsonObject).filter(f -> f.get("waived").getAsBoolean())
                .forEach(f -> waived.merge(f.get("rule").getAsString() + f.getAsJsonObject("waiver").get("subject"), 1, Integer::sum));
        Map<String, Integer> listed = new TreeMap<>();
        JsonParser.parseString(Cli.in(temp).run("waivers", "--output", "json", "harbour.show").exits(0).out()).getAsJsonObject()
                .getAsJsonArray("waivers").asList().stream().map(JsonElement::getAsJsonObject)
                .forEach(w -> listed.put(w.get("rule").getAsString() + w.get("subject"), w.getAsJsonArray("waives").size()));
        assertThat(listed).isEqualTo(waived);
    }

    @Test
    void expiredUnusedAndDoubledAreToldApart() throws Exception {
        String before = Files.readString(script);
        Files.writeString(script, before.replaceFirst("(waive charge-limit .*until) 2027-06-20", "$1 2027-06-18")
                + "waive protect for SilverRocket because \"again\" by \"T. Example\"\n"
                + "waive protect for RedFlare because \"never fits\" by \"T. Example\"\n");

        assertThat(Cli.in(temp).run("waivers", "harbour.show").exits(1).out()).contains("charge-limit: expired")
                .contains("protect for SilverRocket: doubled").contains("protect for RedFlare: unused").contains("without a last day")
                .contains(", 1 expired, 1 unused, 1 doubled.");
    }

    @Test
    void aScriptWithHolesIsRefused() throws Exception {
        Files.writeString(script, Files.readString(script) + "nonsense {\n");

        assertThat(Cli.in(temp).run("waivers", "harbour.show").exits(2).err()).contains("cannot be read whole");
        assertThat(Cli.in(temp).run("waivers", "nope.show").exits(2).err()).contains("'nope.show'");
    }

    private static long waivers(String text) {
        return text.lines().filter(line -> line.startsWith("waive ")).count();
    }
}
