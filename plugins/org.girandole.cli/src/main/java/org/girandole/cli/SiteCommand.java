package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.rules.distance.SiteInWind;
import org.girandole.plan.script.Site;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.PdfWriter;
import org.girandole.sheets.print.SiteDrawing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Distances and fallout of a show, in the wind it was planned for or in tonight's. */
@Command(name = "site", mixinStandardHelpOptions = true, header = "Says what is far enough, where it comes down, and in which wind.",
        description = {"", "For each position: what is there and what the distance table asks, where unburst shells and debris come down, and"
                + " whether that is clean. Then how much wind from that direction the show bears, and a table of wind speeds.", ""},
        footer = {"", "Examples:", "  girandole site my-show.show", "  girandole site my-show.show --wind \"9 m/s from 200 deg\" --pdf tonight.pdf --svg tonight.svg",
                "", "Exit code 1 says that something is not clean in that wind, or could not be checked."})
final class SiteCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = "--wind", paramLabel = "WIND", description = "Asks what would be in this wind, such as \"9 m/s from 200 deg gusting 12 m/s\"."
            + " Default: the wind of the site.")
    private String wind;
    @Option(names = "--svg", paramLabel = "FILE", description = "Draws the site to scale, in that wind.")
    private Path svg;
    @Option(names = "--pdf", paramLabel = "FILE", description = "Writes the site sheet for that wind: the drawing, the wind that each position"
            + " bears, distances and what is found.")
    private Path pdf;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Optional<Site.Wind> asked = Optional.ofNullable(wind).map(WindOption::parse);
        Scripts place = Scripts.of(script, root);
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        Plan planned = show.plan().orElseThrow(() -> new UserException(ExitCode.ERRORS_FOUND, "'" + script
                + "' gives no plan, so there are no distances. Check it first: girandole check " + script)).plan();
        if (planned.script().site().isEmpty()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "'" + script + "' has no site, so there are no distances. Write a site block with"
                    + " positions, audience and boundary.");
        }
        Plan plan = asked.isPresent() ? planned.inWind(asked) : planned;
        Workings workings = new Workings(plan, new FlightMemory());
        SiteInWind site = SiteInWind.of(workings);
        PrintWriter out = spec.commandLine().getOut();
        new SiteText(workings, site, out).print();
        out.flush();
        if (svg != null || pdf != null) {
            draw(Checker.check(plan), asked.isPresent());
        }
        boolean wrong = !show.loaded().problems().isEmpty();
        if (wrong) {
            spec.commandLine().getErr().println("The script has mistakes, and what they concern is left out above. Check it: girandole check " + script);
        }
        boolean clean = SiteInWind.positions(plan).stream().map(site::state)
                .allMatch(state -> state == SiteInWind.State.CLEAN || state == SiteInWind.State.WAIVED);
        return clean && !wrong && site.unchecked().isEmpty() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    private void draw(CheckedPlan checked, boolean otherWind) {
        if (svg != null) {
            String drawing = SiteDrawing.svg(checked);
            OutputFile.write(svg, file -> file.write(drawing.getBytes(StandardCharsets.UTF_8)));
        }
        if (pdf != null) {
            PaperSize paper = PaperSize.of(checked.plan().script());
            String sheet = SiteDrawing.sheet(checked, paper, Version.tool(), otherWind).orElseThrow();
            OutputFile.write(pdf, file -> PdfWriter.write(sheet, file));
        }
    }
}
