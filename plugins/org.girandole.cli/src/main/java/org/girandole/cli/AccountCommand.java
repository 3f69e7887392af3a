package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.account.Account;
import org.girandole.sheets.account.AccountHtml;
import org.girandole.sheets.account.AccountText;
import org.girandole.sheets.account.LogForm;
import org.girandole.sheets.account.StockPatch;
import org.girandole.sheets.print.PaperSize;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Accounts for every piece after the show. */
@Command(name = "account", mixinStandardHelpOptions = true, header = "Accounts for every piece after the show.",
        description = {"", "LOG has the titles cue, outcome, time, note and where, and a row for each cue, separated by commas, semicolons or"
                + " tabs. cue is its number or key; outcome is fired, misfired, not-fired, dud or returned; time (22:34 or 22:34:10) and note may"
                + " be empty; where is not read. A cue without an outcome counts as live in its tube. --form writes such a log to fill in,"
                + " in the order of a walk through the field.", ""},
        footer = {"", "Examples:",
                "  girandole account my-show.show --form log.csv",
                "  girandole account my-show.show log.csv",
                "  girandole account my-show.show log.csv --stamp 7C29-C124 --report report.html --stock-patch stock.patch",
                "", "Exit code 1 says that something is live in the field or unaccounted for."})
final class AccountCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show that was fired.")
    private Path script;
    @Parameters(index = "1", arity = "0..1", paramLabel = "LOG", description = "What the crew wrote down, UTF-8 text.")
    private Path log;
    @Option(names = "--form", paramLabel = "FILE", description = "Write a log to fill in, and nothing else.")
    private Path form;
    @Option(names = "--stamp", paramLabel = "STAMP", description = "The stamp on the sheets that the show was fired from; a script with another is"
            + " refused.")
    private String stamp;
    @Option(names = "--report", paramLabel = "FILE", description = "Write the report as a page to print and sign, HTML.")
    private Path report;
    @Option(names = "--stock-patch", paramLabel = "FILE", description = "Write the new counts of the lots as a patch to the scripts.")
    private Path stockPatch;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        if ((log == null) == (form == null)) {
            throw new UserException(ExitCode.USAGE, "Name the log that was filled in, or with --form the one to write.");
        }
        Scripts place = Scripts.of(script, root);
        if (form != null) {
            String empty = LogForm.of(plan(place).plan());
            OutputFile.write(form, file -> file.write(empty.getBytes(StandardCharsets.UTF_8)));
            return ExitCode.OK;
        }
        String written = TextFile.read(log, "log");
        CheckedPlan checked = plan(place);
        Account account = Accounts.of(checked.plan(), log, written);
        PrintWriter out = spec.commandLine().getOut();
        try {
            AccountText.write(account, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (report != null) {
            PaperSize paper = PaperSize.of(checked.plan().script());
            String html = AccountHtml.of(checked, account, paper, Version.tool());
            OutputFile.write(report, file -> file.write(html.getBytes(StandardCharsets.UTF_8)));
        }
        if (stockPatch != null) {
            patch(account, place, out);
        }
        out.flush();
        return account.live().isEmpty() ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    private CheckedPlan plan(Scripts place) {
        CheckedPlan plan = Accounts.plan(place);
        String now = plan.plan().stamp().printed();
        if (stamp != null && !now.equals(stamp.toUpperCase(Locale.ROOT))) {
            throw new UserException(ExitCode.USAGE, "the script has stamp " + now + ", not " + stamp + ": it is not the release that was fired."
                    + " Take the scripts as they were when it was made.");
        }
        return plan;
    }

    private void patch(Account account, Scripts place, PrintWriter out) {
        StockPatch patch = StockPatch.of(account, path -> text(place.root().resolve(path)));
        patch.leftOut().forEach(what -> out.println("Not in the stock patch: " + what + "."));
        OutputFile.write(stockPatch, file -> file.write(patch.text().getBytes(StandardCharsets.UTF_8)));
    }

    private static Optional<String> text(Path file) {
        return Files.isRegularFile(file) ? Optional.of(TextFile.read(file, "script")) : Optional.empty();
    }
}
