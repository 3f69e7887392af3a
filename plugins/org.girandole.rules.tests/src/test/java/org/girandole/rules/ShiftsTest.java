package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.plan.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A cue is moved, or a preroll made longer, by what the remedy says, and the finding is gone, whatever the step of the firing system. */
class ShiftsTest {
    private static final Pattern SHIFT = Pattern.compile("([0-9.]+ m?s) (later|earlier)");
    private static final Pattern PREROLL = Pattern.compile("preroll at least ([0-9.]+ m?s)");
    private static final String WRITTEN = "preroll 60 s";
    private static final String RUN = "chain Run of 4 Peony { gap 500 ms +- 8 %  lead 100 ms }\n";

    @TempDir
    private Path project;

    /** Steps of a firing system: none that anybody notices, one that is usual, one that is no whole number of milliseconds, and a coarse one. */
    @ParameterizedTest
    @ValueSource(strings = {"0.001 ms", "10 ms", "33.3 ms", "100 ms"})
    void theShiftIsEnough(String step) throws IOException {
        String hold = "  hold from 0:38 to 0:45 \"ferry crosses\"\n";
        shifted("fires-in-preroll", step, "", "at 0:02.0004%s A Peony", "");
        shifted("fires-before-timecode", step, WRITTEN.replace("60 s", "8 ms"), "at 0:02.0004%s A Peony", "");
        shifted("hold-debris", step, "", "at 0:21.0004%s A Peony", hold);
        shifted("hold-violated", step, "", "at 0:40.5004%s A Peony", hold);
        shifted("hold-violated", step, RUN, "at 0:36.5554%s A Run", hold);
        shifted("chain-overruns", step, RUN, "at 0:59.0004%s A Run", "");
        shifted("pins-too-close", step, "", "at 0:10.1004%s A Peony pin MA/2", "  at 0:10.000 A Peony pin MA/1\n");
    }

    /** A cue is moved no further than need be, also where the step is coarse: what is judged as it is written moves as it is written. */
    @ParameterizedTest
    @ValueSource(strings = {"0.001 ms", "33.3 ms", "100 ms"})
    void aMillisecondLessIsNotEnough(String step) throws IOException {
        String hold = "  hold from 0:38 to 0:45 \"ferry crosses\"\n";
        shiftedByLess("hold-debris", step, "", "at 0:21.0004%s A Peony", hold);
        shiftedByLess("hold-violated", step, "", "at 0:40.5004%s A Peony", hold);
        shiftedByLess("chain-overruns", step, RUN, "at 0:59.0004%s A Run", "");
    }

    @ParameterizedTest
    @CsvSource({"fires-before-timecode, 8 ms", "preroll-short, 9 s", "preroll-short, 8 ms", "preroll-short, 100 ms"})
    void thePrerollIsEnough(String rule, String preroll) throws IOException {
        List<Finding> findings = found(rule, "10 ms", WRITTEN.replace("60 s", preroll), "at 0:02.0004 A Peony", "");
        Matcher advised = PREROLL.matcher(findings.get(0).remedy());
        assertThat(advised.find()).as(findings.get(0).remedy()).isTrue();
        assertThat(found(rule, "10 ms", WRITTEN.replace("60 s", advised.group(1)), "at 0:02.0004 A Peony", "")).isEmpty();
    }

    @Test
    void whatIsSaidOfSeveralFiringsIsAskedOfEach() throws IOException {
        String cues = "at 0:21.0004%1$s A Peony\n  at 0:21.0504%1$s B Peony";
        shifted("hold-debris", "100 ms", "", cues, "  hold from 0:38 to 0:45 \"ferry crosses\"\n");
    }

    private void shifted(String rule, String step, String before, String cues, String more) throws IOException {
        String by = advised(rule, step, before, cues, more);
        assertThat(found(rule, step, before, String.format(cues, by), more)).as("%s, step %s, moved by%s", rule, step, by).isEmpty();
    }

    private void shiftedByLess(String rule, String step, String before, String cues, String more) throws IOException {
        String by = advised(rule, step, before, cues, more) + " + 1 ms";
        assertThat(found(rule, step, before, String.format(cues, by), more)).as("%s, step %s, moved by%s", rule, step, by).isNotEmpty();
    }

    /** By how much the finding would have its cue moved, as steps of a time are written. */
    private String advised(String rule, String step, String before, String cues, String more) throws IOException {
        List<Finding> findings = found(rule, step, before, String.format(cues, ""), more);
        assertThat(findings).as(rule).isNotEmpty();
        Matcher advised = SHIFT.matcher(findings.get(0).remedy());
        assertThat(advised.find()).as(findings.get(0).remedy()).isTrue();
        return (advised.group(2).equals("later") ? " + " : " - ") + advised.group(1);
    }

    /** What is found by a rule in a show with this step, these parts before its score, and these cues. */
    private List<Finding> found(String rule, String step, String before, String cues, String more) throws IOException {
        String preroll = before.startsWith("preroll") ? before : WRITTEN;
        String field = Files.readString(Fixture.ROOT.resolve("field.show"), StandardCharsets.UTF_8);
        Files.writeString(project.resolve("field.show"), field.replace("step 10 ms", "step " + step).replace("pin gap 20 ms", "pin gap 255 ms"), StandardCharsets.UTF_8);
        Path script = project.resolve("evening.show");
        Files.writeString(script, "use \"field.show\"\nshow Evening { on 2027-06-19  site Quay  firing system Field }\n"
                + "soundtrack Tides { length 1:00  timecode 25 fps from 10:00:00:00  " + preroll + " }\n"
                + (before.equals(preroll) ? "" : before) + "score Tides in slot 0 {\n  " + cues + "\n" + more + "}\n", StandardCharsets.UTF_8);
        List<Finding> findings = Checking.findings(script, project);
        assertThat(findings).extracting(Finding::rule).doesNotContain("syntax", "unresolved-name");
        return findings.stream().filter(finding -> finding.rule().equals(rule)).toList();
    }
}
