package org.girandole.lang.check;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.plan.Finding;
import org.girandole.plan.Subject;
import org.girandole.plan.allocate.LockException;
import org.girandole.plan.allocate.LockFile;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.schedule.Troubles;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.ShowHeader;

/**
 * The lock file beside a script.
 *
 * @param file empty when there is none, or none that can be used
 * @param input the file for the stamp, whenever there is one: pins and tubes come from it
 * @param trouble why it cannot be used
 */
public record LockBeside(Optional<LockFile> file, Optional<InputFile> input, Optional<Finding> trouble) {
    /** As if there were none. */
    public static final LockBeside NONE = new LockBeside(Optional.empty(), Optional.empty(), Optional.empty());

    /** Reads the lock file beside a script of this show, if there is one. */
    static LockBeside of(Path script, Path root, ShowHeader show) {
        Path path = LockFile.pathBeside(script);
        if (!Files.exists(path)) {
            return NONE;
        }
        String shown = ProjectRoot.relative(root.toAbsolutePath().normalize(), path.toAbsolutePath().normalize());
        try {
            InputFile input = new InputFile(shown, DiskFile.sha256(path));
            try {
                return new LockBeside(Optional.of(LockFile.read(path).requireShow(show.name())), Optional.of(input), Optional.empty());
            } catch (LockException e) {
                return new LockBeside(Optional.empty(), Optional.of(input), Optional.of(trouble(show, shown, e.getMessage())));
            }
        } catch (IOException e) {
            return new LockBeside(Optional.empty(), Optional.empty(), Optional.of(trouble(show, shown, "it cannot be read; check its permissions")));
        }
    }

    private static Finding trouble(ShowHeader show, String file, String why) {
        RuleInfo rule = Troubles.LOCK_UNUSABLE;
        return new Finding(rule.id(), rule.severity(), "The lock file " + file + " cannot be used: " + why, "a file that is no lock file of this show",
                "a lock file of this show, or none", rule.basis(),
                "restore it from version control, or take it away and run 'girandole allocate'", show.source(), Subject.SHOW, Map.of(), Optional.empty());
    }
}
