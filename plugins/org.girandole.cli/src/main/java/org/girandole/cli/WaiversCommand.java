package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.sheets.findings.WaiverList;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists what somebody agreed to live with. */
@Command(name = "waivers", mixinStandardHelpOptions = true, header = "Lists what somebody agreed in writing to live with.",
        description = {"", "Rule, what and where, why, who, until when, and how many findings each waiver covers. 'expired' does not reach to the"
                + " day of the show; 'unused' fits nothing that was found; 'doubled' stands behind another waiver for the same.", ""},
        footer = {"", "Example:", "  girandole waivers my-show.show", "", "Exit code 1 says that a waiver has expired."})
final class WaiversCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = "--output", paramLabel = "FORM", defaultValue = "text",
            description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
    private Form form;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Scripts place = Scripts.of(script, root);
        WaiverList list = WaiverList.of(WholeShow.plan(new ShowPipeline(), place, "what its waivers cover is not known"));
        PrintWriter out = spec.commandLine().getOut();
        try {
            switch (form) {
                case text -> list.writeText(place.display(), out);
                case json -> list.writeJson(place.display(), out);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.flush();
        return list.count(WaiverList.State.EXPIRED) > 0 ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    /** How the list is told; the names are the words of the command line. */
    enum Form {
        text, json
    }
}
