package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Severity;
import org.girandole.sheets.diff.Since;
import org.girandole.sheets.findings.FindingReport;
import org.girandole.sheets.findings.FindingText;
import org.girandole.sheets.release.Release;
import org.girandole.sheets.release.ReleaseException;
import org.girandole.sheets.release.ReleaseOrder;
import org.girandole.sheets.release.Releaser;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes everything that a show is fired from. */
@Command(name = "release", mixinStandardHelpOptions = true, header = "Writes tables and sheets of a show into a folder.",
        description = {"", "Checks the show first and prints what is found. A show with errors that nobody has agreed to is not released."
                + " The folder is written whole or not at all; an older release in it is replaced, anything else is left alone. A stamp that"
                + " stands on a release there or in a folder beside it is never given to other content.", ""},
        footer = {"", "Examples:", "  girandole release my-show.show --into release",
                "  girandole release my-show.show --into second --since release"})
final class ReleaseCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = "--into", paramLabel = "FOLDER",
            description = "A new or empty folder, or one with an older release. Default: release, beside the script.")
    private Path into;
    @Option(names = "--since", paramLabel = "RELEASE", description = "The folder of the release before this one: what changed since becomes a"
            + " sheet of its own, to be signed by whoever reviews it.")
    private Path since;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder; scripts may use nothing outside of it. Default: the nearest folder upward with a pom.xml,"
                    + " else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        PrintWriter out = spec.commandLine().getOut();
        Scripts place = Scripts.of(script, root);
        ShowPipeline pipeline = new ShowPipeline();
        CheckedShow show = pipeline.check(place.script(), place.root());
        out.print(FindingText.of(new FindingReport(show.findings(), 1, ShowPipeline.rules(), Version.tool(), place.display())));
        out.flush();
        if (show.plan().isEmpty()) {
            if (show.failsOn(Severity.ERROR)) {
                throw new UserException(ExitCode.ERRORS_FOUND, "nothing was released: the script could not be read whole.");
            }
            throw new UserException(ExitCode.USAGE, "nothing was released: '" + script + "' has no show block.");
        }
        Path folder = into == null ? place.script().resolveSibling("release") : into;
        CheckedPlan plan = show.plan().get();
        Optional<Since> earlier = Optional.ofNullable(since).map(release -> Predecessor.of(pipeline, release, place.root()).until(plan));
        ReleaseOrder order = new ReleaseOrder(plan, Version.tool(), Optional.of(new ReleaseOrder.Origin(place.script(), place.root())), earlier,
                false);
        report(release(order, folder), folder, out);
        return ExitCode.OK;
    }

    private static Release release(ReleaseOrder order, Path folder) {
        try {
            return Releaser.release(order, folder);
        } catch (ReleaseException e) {
            throw new UserException(switch (e.reason()) {
                case NOT_CLEAN, SCRIPT -> ExitCode.ERRORS_FOUND;
                case FOLDER -> ExitCode.NOT_WRITTEN;
            }, e.getMessage());
        }
    }

    private static void report(Release release, Path folder, PrintWriter out) {
        out.println("Released " + (release.files().size() + 1) + " files into " + folder
                + (release.replaced() ? ", in place of an older release." : "."));
        release.leftOut().forEach(what -> out.println("Not in this release, though the script asks for it: " + what + "."));
        out.flush();
    }
}
