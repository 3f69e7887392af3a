package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.explain.Explanations;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints how a cue's moment comes about. */
@Command(name = "explain", mixinStandardHelpOptions = true,
        header = "Shows how the moment of a cue comes about, to be followed with a pocket calculator.",
        footer = {"", "Examples:", "  girandole explain my-show.show Hero            the cue of that name",
                "  girandole explain my-show.show 17              the cue of that number in the firing table",
                "  girandole explain my-show.show RedPeony75      every cue that fires it"})
final class ExplainCommand implements Callable<Integer> {
    /** More are rarely read; the rest is counted. */
    private static final int MOST = 12;

    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Parameters(index = "1", paramLabel = "CUE", description = "Key, number or name of a cue, or what it fires.")
    private String cue;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Scripts place = Scripts.of(script, root);
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        Plan plan = show.plan().orElseThrow(() -> new UserException(ExitCode.ERRORS_FOUND, "'" + script
                + "' gives no plan, so there is nothing to explain. Check it first: girandole check " + script)).plan();
        List<PlannedCue> cues = Explanations.find(plan, cue);
        if (cues.isEmpty()) {
            throw new UserException(ExitCode.USAGE, "no cue has the key, number or name '" + cue + "', and none fires it. " + named(plan));
        }
        print(new Explanations(plan), cues);
        if (show.failsOn(Severity.ERROR)) {
            spec.commandLine().getErr().println("girandole: the show has errors; what is explained here may change when they are mended.");
        }
        return ExitCode.OK;
    }

    private void print(Explanations explanations, List<PlannedCue> cues) {
        PrintWriter out = spec.commandLine().getOut();
        cues.stream().limit(MOST).forEach(one -> out.println(explanations.of(one).text()));
        if (cues.size() > MOST) {
            out.println("And " + (cues.size() - MOST) + " more; name one by its number in the firing table.");
        }
        out.flush();
    }

    private static String named(Plan plan) {
        String names = plan.cues().stream().flatMap(c -> c.cueName().stream()).distinct().limit(MOST).collect(Collectors.joining(", "));
        return plan.cues().isEmpty() ? "The show has no cues."
                : "Cues are numbered 1 to " + plan.cues().size() + (names.isEmpty() ? "." : "; some have names: " + names + ".");
    }
}
