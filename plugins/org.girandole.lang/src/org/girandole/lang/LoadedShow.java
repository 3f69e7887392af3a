package org.girandole.lang;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.ShowScript;

/**
 * What came of reading a script.
 *
 * @param file the script, relative to the project root, with forward slashes
 * @param script empty when the script has no {@code show} block, or could not be read at all. When only parts are broken, those parts
 *        are left out and {@code problems} says so
 * @param problems everything the language itself found wrong, in order of file, line and column
 * @param inputs every file that was read, with its hash; used files first
 */
public record LoadedShow(String file, Optional<ShowScript> script, List<Finding> problems, List<InputFile> inputs) {
    public LoadedShow {
        problems = List.copyOf(problems);
        inputs = List.copyOf(inputs);
    }

    /** Whether any problem is an error. */
    public boolean hasErrors() {
        return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
    }
}
