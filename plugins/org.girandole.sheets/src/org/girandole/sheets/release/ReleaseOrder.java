package org.girandole.sheets.release;

import java.nio.file.Path;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.diff.Since;

/**
 * What is to be released.
 *
 * @param origin where the plan was read from; without it the release holds no scripts and cannot be named as a predecessor
 * @param since what changed since the predecessor, printed as a sheet of its own
 * @param disposable the folder is made anew with every build, and nobody works from it: its stamp may be given again, also to other content
 */
public record ReleaseOrder(CheckedPlan checked, String toolVersion, Optional<Origin> origin, Optional<Since> since, boolean disposable) {

    /**
     * The files of the show.
     *
     * @param script the script that was planned
     * @param root the project folder, to which paths of inputs are relative
     */
    public record Origin(Path script, Path root) {
        /** The script's path in the project, with slashes. */
        String path() {
            return root.relativize(script).toString().replace(root.getFileSystem().getSeparator(), "/");
        }
    }
}
