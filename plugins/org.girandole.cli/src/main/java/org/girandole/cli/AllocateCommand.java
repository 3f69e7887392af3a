package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.allocate.LockException;
import org.girandole.plan.allocate.LockFile;
import org.girandole.plan.allocate.LockFile.Change;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.schedule.Troubles;
import org.girandole.sheets.findings.FindingReport;
import org.girandole.sheets.findings.FindingText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Brings the lock file beside a script up to date. */
@Command(name = "allocate", mixinStandardHelpOptions = true,
        header = "Gives every cue its tube and its pin, and remembers them in the lock file beside the script.",
        description = {"", "What the lock file remembers stays as it is as long as that is possible; what has to move is listed. Tubes and pins"
                + " written in the script are law. Nothing is written when a cue gets no place, or when the script has errors that leave cues"
                + " out.", ""},
        footer = {"", "Examples:",
                "  girandole allocate my-show.show --dry-run      see what would change",
                "  girandole allocate my-show.show                write my-show.lock",
                "  girandole allocate my-show.show --fresh        begin anew, for a field that nobody has wired yet"})
final class AllocateCommand implements Callable<Integer> {
    /** What shows that a cue has no place, or that hand-written places clash. */
    private static final Set<String> NO_PLACE = Set.of("no-pin", "no-tube", "pin-taken", "pin-out-of-range", "too-many-igniters",
            "module-elsewhere", "tube-taken", "tube-out-of-range", "tube-calibre", "tube-tilt", "rack-elsewhere", "hand-surplus");

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = "--dry-run", description = "Say what would change, and write nothing.")
    private boolean dryRun;
    @Option(names = "--fresh", description = "Remember nothing: fewest modules and shortest leads, whatever has to be rewired.")
    private boolean fresh;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Scripts place = Scripts.of(script, root);
        Path path = LockFile.pathBeside(place.script());
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        refuseIfIncomplete(show, place);
        Optional<LockFile> before = read(path, show);
        Plan plan = show.plan().orElseThrow().plan();
        CheckedPlan checked = fresh ? Checker.check(Planner.fresh().plan(plan.script())) : show.plan().get();
        List<Finding> noPlace = checked.findings().stream()
                .filter(f -> NO_PLACE.contains(f.rule()) && f.severity() == Severity.ERROR && !f.waived()).toList();
        if (!noPlace.isEmpty()) {
            print(noPlace, place);
            throw new UserException(ExitCode.ERRORS_FOUND, "not every cue has a tube and a pin of its own; the lock file was not written.");
        }
        write(before, LockFile.of(checked.plan()), path, place);
        return ExitCode.OK;
    }

    /** A cue that was left out would lose its line, and with it its place in the field. */
    private void refuseIfIncomplete(CheckedShow show, Scripts place) {
        if (show.plan().isEmpty() && !show.loaded().hasErrors()) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' has no show block, so there is nothing to allocate.");
        }
        Predicate<Finding> leavesOut = finding -> finding.severity() == Severity.ERROR
                && (show.loaded().problems().contains(finding) || Troubles.all().stream().anyMatch(info -> info.id().equals(finding.rule())))
                && !NO_PLACE.contains(finding.rule()) && !finding.rule().equals(Troubles.LOCK_BROKEN.id());
        List<Finding> errors = show.findings().stream().filter(leavesOut).toList();
        if (!errors.isEmpty()) {
            print(errors, place);
            throw new UserException(ExitCode.ERRORS_FOUND, "the script or its lock file has errors; the lock file was not written.");
        }
    }

    private static Optional<LockFile> read(Path path, CheckedShow show) {
        try {
            return Files.exists(path)
                    ? Optional.of(LockFile.read(path).requireShow(show.plan().orElseThrow().plan().script().show().name())) : Optional.empty();
        } catch (IOException | LockException e) {
            throw new UserException(ExitCode.USAGE, "the lock file '" + path.getFileName() + "' cannot be used: " + e.getMessage());
        }
    }

    private void write(Optional<LockFile> before, LockFile after, Path path, Scripts place) {
        PrintWriter out = spec.commandLine().getOut();
        String shown = place.display().apply(place.root().relativize(path).toString());
        List<Change> changes = before.map(lock -> lock.changesTo(after)).orElse(List.of());
        List<Change> moved = changes.stream().filter(Change::moved).toList();
        if (before.isEmpty()) {
            out.println((dryRun ? "Would write " : "Wrote ") + shown + ": " + count(after.lines().size(), "line") + ".");
        } else if (changes.isEmpty()) {
            out.println(shown + " is up to date: " + count(after.lines().size(), "line") + ".");
        } else {
            changes.forEach(change -> out.println((change.moved() ? "move " : change.before().isEmpty() ? "add  " : "drop ") + change.text()));
            long added = changes.stream().filter(change -> change.before().isEmpty()).count();
            out.println((dryRun ? "Would change " : "Changed ") + shown + ": " + added + " added, " + (changes.size() - added - moved.size())
                    + " dropped, " + moved.size() + " moved"
                    + (moved.isEmpty() ? "; nothing has to be rewired." : ": rewire or reload these before the show."));
        }
        out.flush();
        if (!dryRun && (before.isEmpty() || !changes.isEmpty())) {
            try {
                after.write(path);
            } catch (IOException e) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + shown + "' could not be written (" + e.getMessage()
                        + "); the old lock file is as it was. Check the folder's permissions and free space.");
            }
        }
    }

    private void print(List<Finding> findings, Scripts place) {
        PrintWriter out = spec.commandLine().getOut();
        out.print(FindingText.of(new FindingReport(findings, 1, ShowPipeline.rules(), Version.tool(), place.display())));
        out.flush();
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
