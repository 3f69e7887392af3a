package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.sheets.findings.FindingReport;
import org.girandole.sheets.findings.FindingText;
import org.girandole.sheets.findings.FindingsJson;
import org.girandole.sheets.findings.FindingsSarif;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Looks for every mistake that can be found on paper. */
@Command(name = "check", mixinStandardHelpOptions = true, header = "Finds the mistakes of shows.",
        description = {"", "Prints what is wrong or doubtful, with the place, the value found, the value allowed, where the limit comes from"
                + " and what would mend it.", ""},
        footer = {"", "Examples:",
                "  girandole check my-show.show",
                "  girandole check --output sarif --fail-on warning shows/*.show",
                "", "How much wind a clean show bears says: girandole site SCRIPT",
                "Exit code 1 says that something was found at least as grave as --fail-on, and not waived."})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(arity = "1..*", paramLabel = "SCRIPT", description = "Scripts to check, each as a show of its own.")
    private List<Path> scripts;
    @Option(names = "--output", paramLabel = "FORM", defaultValue = "text",
            description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
    private Form form;
    @Option(names = "--fail-on", paramLabel = "SEVERITY", defaultValue = "error",
            description = "error or warning: what makes the exit code 1 (default: ${DEFAULT-VALUE}).")
    private FailOn failOn;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder; scripts may use nothing outside of it. Default: the nearest folder upward with a pom.xml,"
                    + " else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        List<Scripts> places = scripts.stream().map(script -> Scripts.of(script, root)).toList();
        Set<Finding> findings = new LinkedHashSet<>();
        boolean failed = false;
        ShowPipeline pipeline = new ShowPipeline();
        for (Scripts place : places) {
            CheckedShow show = pipeline.check(place.script(), place.root());
            failed |= show.failsOn(failOn.severity);
            UnaryOperator<String> display = place.display();
            show.findings().forEach(finding -> findings.add(Shown.at(finding, display)));
        }
        FindingReport report = new FindingReport(new ArrayList<>(findings), places.size(), ShowPipeline.rules(), Version.tool(),
                UnaryOperator.identity());
        print(report, spec.commandLine().getOut());
        return failed ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private void print(FindingReport report, PrintWriter out) {
        try {
            switch (form) {
                case text -> out.print(FindingText.of(report));
                case json -> FindingsJson.write(report, out);
                case sarif -> FindingsSarif.write(report, out);
            }
            out.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How findings are told; the names are the words of the command line. */
    enum Form {
        text, json, sarif
    }

    /** What is too grave; the names are the words of the command line. */
    enum FailOn {
        error(Severity.ERROR), warning(Severity.WARNING);

        private final Severity severity;

        FailOn(Severity severity) {
            this.severity = severity;
        }
    }
}
