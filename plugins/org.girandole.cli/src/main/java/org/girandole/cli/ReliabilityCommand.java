package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.girandole.plan.account.Account;
import org.girandole.plan.account.Reliability;
import org.girandole.sheets.account.ReliabilityText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** How often lots and modules failed, over several shows. */
@Command(name = "reliability", mixinStandardHelpOptions = true, header = "Counts how often lots and modules failed, over several shows.",
        description = {"", "Lots and modules of the same name count together. Only cues that were sent current count.", ""},
        footer = {"", "Example:", "  girandole reliability june/my-show.show june/log.csv july/my-show.show july/log.csv"})
final class ReliabilityCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT LOG", arity = "2..*", description = "The script of each show and its log; see account.")
    private List<Path> files;

    @Override
    public Integer call() {
        Quiet.libraries();
        if (files.size() % 2 != 0) {
            throw new UserException(ExitCode.USAGE, "Found " + files.size() + " files, expected pairs of a script and its log; '"
                    + files.get(files.size() - 1) + "' has no partner.");
        }
        List<Account> shows = new ArrayList<>();
        for (int i = 0; i < files.size(); i += 2) {
            Path log = files.get(i + 1);
            String written = TextFile.read(log, "log");
            shows.add(Accounts.of(Accounts.plan(Scripts.of(files.get(i), null)).plan(), log, written));
        }
        PrintWriter out = spec.commandLine().getOut();
        try {
            ReliabilityText.write(Reliability.of(shows), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.flush();
        return ExitCode.OK;
    }
}
