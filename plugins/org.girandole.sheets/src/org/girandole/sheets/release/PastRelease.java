package org.girandole.sheets.release;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.script.InputFile;
import org.girandole.sheets.json.PlanJson;
import org.girandole.sheets.release.ReleaseException.Reason;
import org.girandole.sheets.release.ReleaseIndex.IndexException;

/** An earlier release that is whole and unaltered, and can be planned again from the scripts that it holds. */
public final class PastRelease {
    private final Path folder;
    private final ReleaseIndex index;

    private PastRelease(Path folder, ReleaseIndex index) {
        this.folder = folder;
        this.index = index;
    }

    /**
     * Opens a release.
     *
     * @throws ReleaseException when the folder is no release, is not whole, or holds no scripts
     */
    public static PastRelease open(Path folder) throws ReleaseException {
        Verification found = Verifier.verify(folder);
        if (!found.whole()) {
            throw new ReleaseException(Reason.FOLDER, "The release in '" + folder + "' is not whole: " + found.faults().get(0)
                    + ". Nothing can be compared with it.");
        }
        try {
            ReleaseIndex index = ReleaseIndex.read(folder);
            if (index.script().isEmpty()) {
                throw new ReleaseException(Reason.FOLDER, "The release in '" + folder + "' holds no scripts, so nothing can be compared with it."
                        + " Compare with the scripts that it was made from.");
            }
            return new PastRelease(folder, index);
        } catch (IndexException | IOException e) {
            throw new ReleaseException(Reason.FOLDER, "The folder '" + folder + "' cannot be read whole: " + e.getMessage(), e);
        }
    }

    /** Its stamp in full. */
    public String stamp() {
        return index.stamp();
    }

    /** Its stamp as it stands on its sheets. */
    public String stampPrinted() {
        return index.stampPrinted();
    }

    /** Version of the program that made it. */
    public String version() {
        return index.version();
    }

    /**
     * Lays its scripts out as a project again.
     *
     * @param into an empty folder
     * @param project where sound is taken from, which releases do not hold
     * @return the script to plan
     * @throws ReleaseException when a sound file is gone or is another
     */
    public Path unpack(Path into, Path project) throws ReleaseException {
        try {
            for (InputFile input : index.inputs()) {
                Path from = ScriptsPart.holds(input) ? folder.resolve(ScriptsPart.FOLDER + input.path()) : project.resolve(input.path());
                if (!Files.isRegularFile(from) || !Hashes.of(from).equals(input.sha256())) {
                    throw new ReleaseException(Reason.FOLDER, "Release " + stampPrinted() + " was made with another '" + input.path()
                            + "' than there is now, and sound is not kept in releases. Put the file back as it was, or compare with the scripts"
                            + " of then.");
                }
                Path to = into.resolve(input.path()).normalize();
                if (!to.startsWith(into)) {
                    throw new ReleaseException(Reason.FOLDER, "The release in '" + folder + "' names '" + input.path()
                            + "', which lies outside of a project.");
                }
                Files.createDirectories(to.getParent());
                Files.copy(from, to);
            }
            return into.resolve(index.script().orElseThrow());
        } catch (IOException e) {
            throw new ReleaseException(Reason.FOLDER, "The scripts of the release in '" + folder + "' could not be copied: " + e.getMessage(), e);
        }
    }

    /** Whether planning its scripts gives what was released, to the last byte; a later version of the program may plan otherwise. */
    public boolean isPlannedAs(CheckedPlan checked) throws IOException {
        StringWriter now = new StringWriter();
        PlanJson.write(checked, now);
        return Files.readString(folder.resolve(PlanPart.NAME), StandardCharsets.UTF_8).equals(now.toString());
    }
}
