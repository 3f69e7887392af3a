package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Distances and fallout in tonight's wind, as a user asks for them. */
class SiteCommandTest {
    private static final Path EXAMPLE = Path.of("../../examples/harbour-night").toAbsolutePath().normalize();

    @TempDir
    private Path temp;

    @Test
    void saysWhatIsThereWhatIsAskedAndWhetherItIsMet() throws Exception {
        String out = Cli.in(EXAMPLE).run("site", "harbour.show").exits(0).out();
        // Oregon OAR 837-012-0840 (3)(a): 70 ft per inch of shell; a 100 mm shell asks for 84 m, a 150 mm shell for 126 m.
        assertThat(out).contains("audience Promenade: 233 m there, 84 m asked, met", "audience Promenade: 246 m there, 126 m asked, met")
                .contains("(NFPA 1123 family), (3)(a) (text read)").contains("waived, fallout: Hero").contains("That is no permission.");
        assertThat(out).containsPattern("unburst shells: 50 % within \\d+ m, 90 % within \\d+ m, 99 % within \\d+ m")
                .containsPattern("debris: 50 % within \\d+ m, 90 % within \\d+ m, 99 % within \\d+ m");
        assertThat(out).contains("from 240°     A         B").containsPattern("clean up to   \\d+(\\.\\d)? m/s");
    }

    @Test
    void writesTheSheetForTheWindAskedFor() throws Exception {
        Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "3 m/s from 200 deg", "--pdf", temp.resolve("site.pdf").toString()).exits(0);
        assertThat(Files.readAllBytes(temp.resolve("site.pdf"))).startsWith("%PDF-".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    }

    /** 1. SprengV annex 6 no. 3.3.2: max(0.8 * 120 m, 0.8 m per mm * 100 mm) = 96 m; no. 3.4.3: tilted 10 deg, 40 % more = 134.4 m. */
    @Test
    void aHundredMillimetresBurstingAtAHundredAndTwentyMetres() throws Exception {
        assertThat(hundred("GermanTable", "").exits(1).out()).contains("audience Rail: 90 m there, 96 m asked, NOT met")
                .contains("move it 6 m farther from Rail");
        assertThat(hundred("GermanTable", "tilt 10 deg toward audience").exits(1).out()).contains("90 m there, 134.4 m asked, NOT met");
        assertThat(hundred("GermanTable", "tilt 25 deg toward audience").exits(1).out())
                .contains("90 m there, no number: a tilt above 20 deg needs an individual assessment");
        // Oregon OAR 837-012-0840 (3)(a): 100 / 25.4 * 70 ft = 84 m.
        assertThat(hundred("UsTable", "").exits(0).out()).contains("audience Rail: 90 m there, 84 m asked, met");
    }

    private Cli.Run hundred(String table, String tilt) throws Exception {
        Files.writeString(temp.resolve("hundred.show"), "show Hundred { on 2027-06-19  site Field  separation by " + table + " }\n"
                + "site Field {\n  position A at (0 m, 0 m)\n  audience Rail along (-50 m, -90 m) (50 m, -90 m)\n"
                + "  boundary (-300 m, -90 m) (300 m, -90 m) (300 m, 300 m) (-300 m, 300 m)\n  wind from 180 deg at 2 m/s\n}\n"
                + "soundtrack Tides { length 1:00 }\nshell Big { calibre 100 mm  rise 3.3 s  apex 120 m  spread 90 m }\n"
                + "score Tides in slot 0 { at 0:10 A Big " + tilt + " }\n");
        return Cli.in(temp).run("site", "hundred.show");
    }

    @Test
    void theWindItSaysIsCleanIsCleanAndTheNextTenthIsNot() throws Exception {
        String out = Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "9 m/s from 200 deg").exits(1).out();
        assertThat(out).contains("Not clean in this wind: ").contains("F: NOT clean").contains("come down outside of the boundary");
        Matcher critical = Pattern.compile("Clean up to (\\d+)\\.(\\d) m/s from 200°; in stronger wind no longer, first because of fallout at ([A-G])").matcher(out);
        assertThat(critical.find()).isTrue();
        int tenths = Integer.parseInt(critical.group(1)) * 10 + Integer.parseInt(critical.group(2));
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", tenths / 10 + "." + tenths % 10 + " m/s from 200 deg").exits(0).out())
                .contains("Every position is clean in this wind");
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", (tenths + 1) / 10 + "." + (tenths + 1) % 10 + " m/s from 200 deg")
                .exits(1).out()).contains("Not clean in this wind: " + critical.group(3));
    }

    @Test
    void drawsTheSiteToScale() throws Exception {
        Cli.in(EXAMPLE).run("site", "harbour.show", "--svg", temp.resolve("site.svg").toString()).exits(0);
        Element svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(temp.resolve("site.svg").toFile()).getDocumentElement();
        List<Double> spots = new ArrayList<>();
        NodeList circles = svg.getElementsByTagName("circle");
        for (int i = 0; i < circles.getLength(); i++) {
            if (((Element) circles.item(i)).getAttribute("r").equals("1.1")) {
                spots.add(Double.parseDouble(((Element) circles.item(i)).getAttribute("cx")));
            }
        }
        Matcher scale = Pattern.compile("scale 1 : (\\d+) ").matcher(svg.getTextContent());
        assertThat(scale.find()).isTrue();
        double farthestM = (spots.get(spots.size() - 1) - spots.get(0)) * Integer.parseInt(scale.group(1)) / 1000;
        // As quay.show says it: A at -90 m, G at 90 m.
        assertThat(farthestM).isCloseTo(180, within(0.5));
        assertThat(svg.getTextContent()).contains("audience: Promenade").contains("FuelDock").contains("wind from 240");
    }

    @Test
    void windsThatCannotBeMeantAreTold() throws Exception {
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "9 m/s").exits(2).err()).contains("does not say where the wind comes from");
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "from 200 deg").exits(2).err()).contains("is no wind");
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "9 bft from 200 deg").exits(2).err()).contains("'bft'").contains("m/s");
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "9 m/s from 400 deg").exits(2).err()).contains("cannot be a wind");
        assertThat(Cli.in(EXAMPLE).run("site", "harbour.show", "--wind", "9 m/s from 20 deg gusting 5 m/s").exits(2).err()).contains("slower");
    }

    @Test
    void withoutAudienceOrBoundaryNothingIsCalledClean() throws Exception {
        String out = site("separation by UsTable", "");
        assertThat(out).contains("NOT CHECKED: The distances from what is fired to the audience were not checked: site Quay does not say where the"
                + " audience is").contains("NOT CHECKED: Where unburst shells and debris come down was not checked: site Quay has no boundary")
                .contains("Not known to be clean: A.").contains("How much wind it bears is not known").doesNotContain("A: clean");
    }

    @Test
    void withoutATableNothingIsCalledClean() throws Exception {
        String out = site("", "audience Rail along (-50 m, -200 m) (50 m, -200 m)  wind from 180 deg at 2 m/s\n"
                + "boundary (-400 m, -400 m) (400 m, -400 m) (400 m, 400 m) (-400 m, 400 m)");
        assertThat(out).contains("Distances by no table").contains("no distance table is named").contains("Not known to be clean: A.")
                .contains("How much wind the show bears is not known: not everything could be checked at A.").doesNotContain("A: clean");
    }

    /** What makes no sense is not taken for what is not there: no number stands on it, and nothing looks clean by it. */
    @Test
    void nothingIsComputedFromNonsense() throws Exception {
        String good = "audience Rail along (-50 m, -200 m) (50 m, -200 m)\nboundary (-400 m, -190 m) (400 m, -190 m) (400 m, 400 m) (-400 m, 400 m)\n";
        String wind = site("separation by GermanTable", good + "wind at 9 m/s");
        assertThat(wind).contains("wind not known: what is written of it makes no sense", "No distance on site Quay was computed")
                .contains("Where shells on site Quay come down was not computed", "A: not known to be clean").doesNotContain("asked, met", "99 %");
        String outside = site("separation by UsTable", good.replace("-190 m", "10 m") + "wind from 180 deg at 2 m/s");
        assertThat(outside).contains("No distance from A was computed: position A lies 10 m outside of the boundary")
                .contains("A: not known to be clean", "How much wind the show bears is not known").doesNotContain("asked, met", "99 %", "clean up to");
        String mass = site("separation by UsTable", good + "wind from 180 deg at 2 m/s", "0 g");
        assertThat(mass).contains("Where shells of Peony come down was not computed: the mass that is written makes no sense")
                .contains("A: not known to be clean", "63 m asked, met").doesNotContain("99 %", "clean up to");
    }

    private String site(String header, String place) throws IOException, InterruptedException {
        return site(header, place, "190 g");
    }

    private String site(String header, String place, String mass) throws IOException, InterruptedException {
        Files.writeString(temp.resolve("bare.show"), "show Bare { on 2027-06-19  site Quay  " + header + " }\nsite Quay { position A at (0 m, 0 m)\n"
                + place + "\n}\nsoundtrack Tides { length 1:00 }\n"
                + "shell Peony { calibre 75 mm  rise 2.4 s  apex 105 m  spread 70 m  mass " + mass + " }\nscore Tides in slot 0 { at 0:10 A Peony }\n");
        return Cli.in(temp).run("site", "bare.show").exits(1).out();
    }
}
