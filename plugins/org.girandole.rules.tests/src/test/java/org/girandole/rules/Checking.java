package org.girandole.rules;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.ShowLoader;
import org.girandole.plan.Finding;
import org.girandole.plan.allocate.LockException;
import org.girandole.plan.allocate.LockFile;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.schedule.Planner;

/** From script to findings, the way every tool goes. */
final class Checking {
    private static final ShowLoader LOADER = new ShowLoader();

    private Checking() {
    }

    /** Everything that the language, the planner and the rules have to say about a script. */
    static List<Finding> findings(Path script, Path root) {
        LoadedShow loaded = LOADER.load(script, root);
        List<Finding> findings = new ArrayList<>(loaded.problems());
        loaded.script().ifPresent(show -> findings.addAll(Checker.check(new Planner().plan(show, lock(script))).findings()));
        return findings;
    }

    private static Optional<LockFile> lock(Path script) {
        try {
            return LockFile.beside(script);
        } catch (IOException | LockException e) {
            throw new AssertionError("The lock file beside " + script + " cannot be used", e);
        }
    }
}
