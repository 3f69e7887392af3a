package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.plan.Finding;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the remedy of a fallout says is done to the script, and the finding is gone; done a little less, and it is still there. */
class FalloutCuresTest {
    private static final Pattern MOVE = Pattern.compile("move A (\\d+) m towards (\\d+)°, to \\(([-0-9.]+) m, ([-0-9.]+) m\\)");
    private static final Pattern WIND = Pattern.compile("clean up to (\\d+)\\.?(\\d?) m/s from 270°: fire it in no more");
    private static final Pattern TILT = Pattern.compile("tilt it by (\\d+) deg at most");
    private static final Pattern CALIBRE = Pattern.compile("use a shell of (\\d+) mm at most");
    private static final Pattern CLEAR = Pattern.compile("clear (\\d+) m more beyond the boundary");
    private static final String UPRIGHT = "at 0:10.000 A Peony";

    @TempDir
    private Path project;

    @BeforeEach
    void field() throws IOException {
        Files.copy(Fixture.ROOT.resolve("field.show"), project.resolve("field.show"));
    }

    @Test
    void theMoveIsEnoughAndAMetreLessIsNot() throws IOException {
        Matcher move = remedy(MOVE, outside(site("20 m, 0 m", 130, 3), UPRIGHT));
        int metres = Integer.parseInt(move.group(1));
        double bearing = Math.toRadians(Integer.parseInt(move.group(2)));
        assertThat(outside(site(move.group(3) + " m, " + move.group(4) + " m", 130, 3), UPRIGHT)).isEmpty();
        String less = String.format(Locale.ROOT, "%.1f m, %.1f m", 20 + (metres - 1) * Math.sin(bearing), (metres - 1) * Math.cos(bearing));
        assertThat(outside(site(less, 130, 3), UPRIGHT)).isNotEmpty();
    }

    @Test
    void theWindIsEnoughAndATenthMoreIsNot() throws IOException {
        Matcher wind = remedy(WIND, outside(site("20 m, 0 m", 130, 3), UPRIGHT));
        int tenths = Integer.parseInt(wind.group(1)) * 10 + (wind.group(2).isEmpty() ? 0 : Integer.parseInt(wind.group(2)));
        assertThat(outside(site("20 m, 0 m", 130, tenths / 10.0), UPRIGHT)).isEmpty();
        assertThat(outside(site("20 m, 0 m", 130, (tenths + 1) / 10.0), UPRIGHT)).isNotEmpty();
    }

    @Test
    void theLesserTiltIsEnoughAndADegreeMoreIsNot() throws IOException {
        String site = site("0 m, 0 m", 130, 2);
        Matcher tilt = remedy(TILT, outside(site, UPRIGHT + " tilt 15 deg toward 90 deg"));
        int degrees = Integer.parseInt(tilt.group(1));
        assertThat(outside(site, UPRIGHT + " tilt " + degrees + " deg toward 90 deg")).isEmpty();
        assertThat(outside(site, UPRIGHT + " tilt " + (degrees + 1) + " deg toward 90 deg")).isNotEmpty();
    }

    /** What is usual for a calibre is what is estimated where a script says nothing else. */
    @Test
    void theSmallerShellIsEnoughAndTheNextLargerIsNot() throws IOException {
        String site = site("50 m, 0 m", 130, 3);
        Matcher calibre = remedy(CALIBRE, outside(site, UPRIGHT));
        int mm = Integer.parseInt(calibre.group(1));
        String cue = "at 0:10.000 A Other";
        assertThat(outside(site + "shell Other { calibre " + mm + " mm }\n", cue)).isEmpty();
        assertThat(outside(site + "shell Other { calibre " + (mm + 5) + " mm }\n", cue)).isNotEmpty();
    }

    @Test
    void theWiderBoundaryIsEnoughAndAMetreLessIsNot() throws IOException {
        Matcher clear = remedy(CLEAR, outside(site("20 m, 0 m", 130, 3), UPRIGHT));
        int metres = Integer.parseInt(clear.group(1));
        assertThat(outside(site("20 m, 0 m", 130 + metres, 3), UPRIGHT)).isEmpty();
        assertThat(outside(site("20 m, 0 m", 130 + metres - 1, 3), UPRIGHT)).isNotEmpty();
    }

    /** At most one in a hundred may come down outside: five of the 500 that are computed are no finding, wherever the edge lies. */
    @Test
    void oneInAHundredIsAllowed() throws IOException {
        int metres = Integer.parseInt(remedy(CLEAR, outside(site("20 m, 0 m", 130, 3), UPRIGHT)).group(1));
        for (int tenths = -20; tenths < 20; tenths += 2) {
            assertThat(outside(site("20 m, 0 m", 130 + metres + tenths / 10.0, 3), UPRIGHT)).extracting(Finding::message)
                    .noneMatch(message -> message.contains(": 1 % of its"));
        }
    }

    /** A cure of one place does not spoil another: what would be nearest to mend the boundary lies on the other side of the store. */
    @Test
    void theMoveKeepsOffProtectedPlaces() throws IOException {
        String store = "protect Store circle (-40 m, 0 m) radius 15 m\n";
        String site = site("60 m, 0 m", 130, 3).replace("wind", store + "wind");
        Matcher move = remedy(MOVE, outside(site, UPRIGHT));
        String moved = site(move.group(3) + " m, " + move.group(4) + " m", 130, 3).replace("wind", store + "wind");
        assertThat(outside(moved, UPRIGHT)).isEmpty();
    }

    private static String site(String position, double eastEdge, double windMps) {
        return "site Pier {\nposition A at (" + position + ")\naudience Rail along (-50 m, -530 m) (50 m, -530 m)\n"
                + "boundary (-500 m, -500 m) (" + eastEdge + " m, -500 m) (" + eastEdge + " m, 500 m) (-500 m, 500 m)\n"
                + "wind from 270 deg at " + windMps + " m/s\nair 18 degC\n}\n";
    }

    private static Matcher remedy(Pattern cure, List<Finding> findings) {
        assertThat(findings).hasSize(1);
        Matcher matcher = cure.matcher(findings.get(0).remedy());
        assertThat(matcher.find()).as(findings.get(0).remedy()).isTrue();
        return matcher;
    }

    /** What is found about fallout. */
    private List<Finding> outside(String parts, String cue) throws IOException {
        Path script = project.resolve("evening.show");
        Files.writeString(script, "use \"field.show\"\n" + parts + "show Evening { on 2027-06-19  site Pier  separation by UsTable }\n"
                + "soundtrack Tides { length 1:00 }\nscore Tides in slot 0 { " + cue + " }\n", StandardCharsets.UTF_8);
        List<Finding> findings = Checking.findings(script, project);
        assertThat(findings).extracting(Finding::rule).as("that all was computed").doesNotContain("fallout-unchecked", "syntax");
        return findings.stream().filter(finding -> finding.rule().equals("fallout")).toList();
    }
}
