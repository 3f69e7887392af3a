package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.diff.PlanListing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What git calls to turn a file into text that it can compare line by line. */
@Command(name = "git-text", mixinStandardHelpOptions = true, header = "Lists what a show becomes with one state of a file, for git's textconv.",
        description = {"", "Git gives a state of a file without its folder; the one file of the project with that name stands for it. The lines are the"
                + " cues by key and the findings. What cannot be planned is printed as it is.", ""},
        footer = {"", "Examples, for a show in night.show at the top of the repository:",
                "  git config diff.girandole.textconv 'girandole git-text night.show'",
                "  echo '*.show diff=girandole' >> .gitattributes", "  git log -p"})
final class GitTextCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Parameters(index = "1", paramLabel = "FILE", description = "The file that git names.")
    private Path file;

    /** Git takes any other exit code than 0 as a crash and stops. */
    @Override
    public Integer call() throws IOException {
        Quiet.libraries();
        PrintWriter out = spec.commandLine().getOut();
        Optional<CheckedPlan> plan = plan();
        if (plan.isPresent()) {
            PlanListing.write(plan.get(), out);
        } else {
            out.print(TextFile.read(file, "file"));
        }
        out.flush();
        return ExitCode.OK;
    }

    private Optional<CheckedPlan> plan() throws IOException {
        Scripts place = Scripts.of(script, null);
        try (ProjectCopy copy = ProjectCopy.of(place.root())) {
            List<Path> named = named(copy.folder());
            if (named.size() != 1) {
                return Optional.empty();
            }
            String path = copy.folder().relativize(named.get(0)).toString();
            String name = path.replace(copy.folder().getFileSystem().getSeparator(), "/");
            return copy.plan(place, path, file).filter(plan -> ProjectCopy.uses(plan, name));
        }
    }

    private List<Path> named(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(path -> Files.isRegularFile(path) && path.getFileName().equals(file.getFileName())).toList();
        }
    }
}
