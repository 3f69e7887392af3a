package org.girandole.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.Comparison;
import org.girandole.plan.diff.Comparison.UnrelatedShowsException;
import org.girandole.sheets.diff.DiffFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What git calls for a changed file, so that it shows the change of the plan. */
@Command(name = "git-diff", mixinStandardHelpOptions = true, header = "Shows in 'git diff' what a changed file does to a show.",
        description = {"", "Git calls it for every changed file. The show is planned twice, with the old file and with the new one; all other files"
                + " are those that lie in the folder. What cannot be planned is shown as text.", ""},
        footer = {"", "Examples, for a show in night.show at the top of the repository:",
                "  git config diff.girandole.command 'girandole git-diff night.show'",
                "  echo '*.show diff=girandole' >> .gitattributes", "  git diff"})
final class GitDiffCommand implements Callable<Integer> {
    /** What git gives: path, old file, old hash, old mode, new file, new hash, new mode. */
    private static final int OLD = 1;
    private static final int NEW = 4;
    private static final int GIVEN = 7;

    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Parameters(index = "1..*", arity = "1..*", paramLabel = "FROM-GIT", description = "What git gives to an external diff driver.")
    private List<String> given;

    /** Git takes any other exit code than 0 as a crash and stops. */
    @Override
    public Integer call() {
        Quiet.libraries();
        PrintWriter out = spec.commandLine().getOut();
        String path = given.get(0);
        if (given.size() < GIVEN) {
            out.println(path + " is not merged yet; there are no two states to compare.");
            out.flush();
            return ExitCode.OK;
        }
        out.println("girandole: what " + path + " changes in " + script);
        try {
            Scripts place = Scripts.of(script, null);
            Optional<String> why = compare(place, place.root().relativize(Path.of(path).toAbsolutePath().normalize()).toString(), out);
            why.ifPresent(reason -> text(reason, out));
        } catch (UserException e) {
            text(e.getMessage(), out);
        } catch (IOException e) {
            text("the project could not be copied: " + e.getMessage(), out);
        }
        out.flush();
        return ExitCode.OK;
    }

    /** @return why there was nothing to compare, empty when it was done */
    private Optional<String> compare(Scripts place, String path, PrintWriter out) throws IOException {
        if (path.startsWith("..")) {
            return Optional.of("it lies outside of the project of " + script);
        }
        try (ProjectCopy copy = ProjectCopy.of(place.root())) {
            Optional<CheckedPlan> before = copy.plan(place, path, Path.of(given.get(OLD)));
            Optional<CheckedPlan> after = copy.plan(place, path, Path.of(given.get(NEW)));
            if (before.isEmpty() || after.isEmpty()) {
                return Optional.of("the show cannot be planned with the " + (before.isEmpty() ? "old" : "new") + " file alone");
            }
            String name = path.replace(place.root().getFileSystem().getSeparator(), "/");
            if (!ProjectCopy.uses(before.get(), name) && !ProjectCopy.uses(after.get(), name)) {
                return Optional.of(script + " does not use it");
            }
            DiffFormat.TEXT.write(Comparison.of(before.get(), after.get()).report(), out);
            return Optional.empty();
        } catch (UnrelatedShowsException e) {
            return Optional.of(e.getMessage());
        }
    }

    /** The lines as git itself would show them. */
    private void text(String why, PrintWriter out) {
        out.println("Shown as text: " + why + ".");
        try {
            Process git = new ProcessBuilder("git", "diff", "--no-index", "--no-ext-diff", "--no-textconv", "--", given.get(OLD), given.get(NEW))
                    .redirectErrorStream(true).start();
            git.getOutputStream().close();
            try (InputStream in = git.getInputStream()) {
                out.print(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
            git.waitFor();
        } catch (IOException e) {
            out.println("git could not show it: " + e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
