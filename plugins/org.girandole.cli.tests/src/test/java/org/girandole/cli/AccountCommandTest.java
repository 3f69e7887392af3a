package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example after its night: three cues misfired, the rest fired. */
class AccountCommandTest {
    private static final List<Integer> MISFIRED = List.of(32, 157, 401);
    private static final Pattern LOT = Pattern.compile("lot (\\w+) of \\w+ \\{ count (\\d+)");

    @TempDir
    private Path temp;

    @BeforeEach
    void copyTheExample() throws IOException {
        Example.copyTo(temp);
    }

    @Test
    void misfiresAreListedWithTheirPlacesAndTheStockAddsUp() throws Exception {
        Cli.in(temp).run("release", "harbour.show", "--into", "out").exits(0);
        JsonObject plan = JsonParser.parseString(Files.readString(temp.resolve("out/plan.json"))).getAsJsonObject();
        log(plan.getAsJsonArray("cues").size(), MISFIRED);
        Map<String, Integer> before = counts();

        String report = Cli.in(temp).run("account", "harbour.show", "log.csv", "--stamp", printed(plan.get("stamp").getAsString()), "--report", "report.html",
                "--stock-patch", "stock.patch").exits(1).out();

        for (JsonElement each : plan.getAsJsonArray("cues")) {
            JsonObject cue = each.getAsJsonObject();
            if (MISFIRED.contains(cue.get("number").getAsInt())) {
                assertThat(report).contains("cue " + cue.get("number") + " misfired: position " + cue.get("position").getAsString() + ", rack "
                        + cue.get("rack").getAsString() + " tube " + cue.get("tube") + ", module " + cue.get("module").getAsString() + " pin "
                        + cue.get("pin"));
            }
        }
        assertThat(report).contains("3 misfired, 0 not-fired, 0 dud, 0 returned, 0 unaccounted for");
        assertThat(Files.readString(temp.resolve("report.html"))).contains("Made safe how, by whom, when",
                "Local law, the authority having jurisdiction", "Nobody goes near it before the waiting time has ended");

        Git.init(temp).git("apply", "stock.patch").exits(0);
        Map<String, Integer> drawn = new TreeMap<>();
        plan.getAsJsonArray("cues").forEach(cue -> drawn.merge(cue.getAsJsonObject().get("lot").getAsString(), pieces(cue.getAsJsonObject()),
                Integer::sum));
        Map<String, Integer> after = counts();
        before.forEach((lot, count) -> assertThat(after.get(lot)).as(lot).isEqualTo(count - drawn.getOrDefault(lot, 0)));
    }

    @Test
    void aFormIsFilledInAndWhatIsLeftEmptyCountsAsLive() throws Exception {
        Cli.in(temp).run("account", "harbour.show", "--form", "log.csv").exits(0);
        List<String> form = new ArrayList<>(Files.readAllLines(temp.resolve("log.csv")));
        assertThat(form.get(0)).isEqualTo("cue,outcome,time,note,where");
        assertThat(form).hasSize(437).anyMatch(line -> line.matches("\\d+,,,,\"A, rack A1 tube 1, module M01 pin 1, .*\""));
        Files.write(temp.resolve("log.csv"), form.stream().map(line -> line.replaceFirst("^(\\d+),,", "$1,fired,")).toList());
        assertThat(Cli.in(temp).run("account", "harbour.show", "log.csv").exits(0).out()).contains("0 unaccounted for")
                .contains("nothing is live in the field. Search it all the same.");
        form.set(1, form.get(1).replaceFirst(",,", ",fired,"));
        Files.write(temp.resolve("log.csv"), form);
        assertThat(Cli.in(temp).run("account", "harbour.show", "log.csv").exits(1).out())
                .contains("Nobody wrote down what became of 435 cues. They count as live in their tubes until somebody has looked.");
    }

    @Test
    void severalShowsTellWhichLotAndModuleFail() throws Exception {
        log(436, MISFIRED);
        Files.copy(temp.resolve("log.csv"), temp.resolve("second.csv"));
        // Wilson 95 % for 2 of 92 is 0.6 % to 7.6 % (computed by hand from the formula of NIST/SEMATECH 7.2.4.1)
        assertThat(Cli.in(temp).run("reliability", "harbour.show", "log.csv", "harbour.show", "second.csv").exits(0).out())
                .contains("L115 of SilverMine: 2 of 92 failed, 2.2 % (0.6 to 7.6 %)").contains("M06: 2 of ");
        assertThat(Cli.in(temp).run("reliability", "harbour.show", "log.csv", "harbour.show").exits(2).err()).contains("has no partner");
    }

    @Test
    void aLogThatMakesNoSenseIsRefusedAndNothingIsWritten() throws Exception {
        for (Map.Entry<String, String> wrong : Map.of("cue,outcome\n9999,fired\n", "the number or key of a cue of this show, 1 to 436",
                "cue,outcome\n1,exploded\n", "line 2: found 'exploded', expected fired, misfired, not-fired, dud or returned",
                "cue,outcome\n1,fired\n1,dud\n", "each cue once", "nonsense\n", "the titles cue, outcome, time, note, where",
                "cue,outcome,time\n1,fired,25:99\n", "a time such as 22:34").entrySet()) {
            Files.writeString(temp.resolve("log.csv"), wrong.getKey());
            assertThat(Cli.in(temp).run("account", "harbour.show", "log.csv", "--stock-patch", "s.patch").exits(2).err()).contains(wrong.getValue());
        }
        assertThat(temp.resolve("s.patch")).doesNotExist();
        log(436, MISFIRED);
        assertThat(Cli.in(temp).run("account", "harbour.show", "log.csv", "--stamp", "0000-0000").exits(2).err())
                .contains("it is not the release that was fired");
    }

    private void log(int cues, List<Integer> misfired) throws IOException {
        List<String> lines = new ArrayList<>(List.of("cue,outcome,time,note"));
        for (int cue = 1; cue <= cues; cue++) {
            lines.add(cue + (misfired.contains(cue) ? ",misfired,22:40,no lift" : ",fired"));
        }
        Files.write(temp.resolve("log.csv"), lines);
    }

    /** The first eight digits, as every sheet shows them. */
    private static String printed(String stamp) {
        return stamp.substring(0, 4) + "-" + stamp.substring(4, 8);
    }

    private static int pieces(JsonObject cue) {
        return Math.max(1, cue.getAsJsonArray("items").size());
    }

    private Map<String, Integer> counts() throws IOException {
        Matcher lots = LOT.matcher(Files.readString(temp.resolve("stock.show")));
        return lots.results().collect(Collectors.toMap(result -> result.group(1), result -> Integer.parseInt(result.group(2))));
    }
}
