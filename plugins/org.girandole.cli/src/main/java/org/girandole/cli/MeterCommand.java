package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Plan;
import org.girandole.plan.meter.MeterCheck;
import org.girandole.plan.meter.Reading;
import org.girandole.plan.meter.Readings;
import org.girandole.plan.meter.ReadingsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Holds the crew's continuity readings against what every pin should show. */
@Command(name = "meter", mixinStandardHelpOptions = true,
        header = "Compares continuity readings with what every pin should show, and lists the pins to walk to.",
        description = {"", "READINGS has three columns, module, pin and ohms, separated by commas, semicolons or tabs; 'open' or 'OL' for no path."
                + " A pin that was not measured is listed too.", ""},
        footer = {"", "Example:", "  girandole meter my-show.show readings.csv", "",
                "Exit code 1 says that there is a pin to walk to."})
final class MeterCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Parameters(index = "1", paramLabel = "READINGS", description = "The list of readings, UTF-8 text.")
    private Path readings;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Scripts place = Scripts.of(script, root);
        List<Reading> read = read();
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        Plan plan = show.plan().orElseThrow(() -> new UserException(ExitCode.ERRORS_FOUND, "'" + script
                + "' gives no plan, so there is nothing to compare with. Check it first: girandole check " + script)).plan();
        MeterCheck check = MeterCheck.of(plan, read);
        PrintWriter out = spec.commandLine().getOut();
        check.toWalk().forEach(line -> out.println(line.text()));
        long right = check.lines().size() - check.toWalk().size();
        out.println(check.lines().size() + " pins, " + right + " right, " + check.toWalk().size() + " to walk to.");
        out.flush();
        return check.allRight() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    private List<Reading> read() {
        try {
            return Readings.parse(TextFile.read(readings, "list of readings"));
        } catch (ReadingsException e) {
            throw new UserException(ExitCode.USAGE, "'" + readings + "' is no list of readings: " + e.getMessage() + ".");
        }
    }
}
