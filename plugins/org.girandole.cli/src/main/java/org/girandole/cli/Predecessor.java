package org.girandole.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.Comparison;
import org.girandole.plan.diff.Comparison.UnrelatedShowsException;
import org.girandole.sheets.diff.Since;
import org.girandole.sheets.release.PastRelease;
import org.girandole.sheets.release.ReleaseException;

/** An earlier release, planned again from the scripts in its folder. */
record Predecessor(PastRelease release, CheckedPlan plan, boolean plannedAsThen) {
    /**
     * Opens a release.
     *
     * @param project where sound is taken from, which releases do not hold
     * @throws UserException when it is no release, is not whole, or cannot be planned any more
     */
    static Predecessor of(ShowPipeline pipeline, Path folder, Path project) {
        try (TemporaryFolder copy = TemporaryFolder.create()) {
            PastRelease release = PastRelease.open(folder);
            Path script = release.unpack(copy.path(), project);
            CheckedPlan plan = pipeline.check(script, copy.path()).wholePlan().orElseThrow(() -> new UserException(ExitCode.USAGE,
                    "the scripts of release " + release.stampPrinted() + " cannot be planned by this version, " + Version.tool()
                            + "; it was made by version " + release.version() + "."));
            return new Predecessor(release, plan, release.isPlannedAs(plan));
        } catch (ReleaseException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage());
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "the release in '" + folder + "' cannot be read: " + e.getMessage());
        }
    }

    /** What changed since, for the printed set. */
    Since until(CheckedPlan now) {
        if (release.stamp().equals(now.plan().stamp().full())) {
            throw new UserException(ExitCode.USAGE, "nothing was released: release " + release.stampPrinted()
                    + " was made from the same scripts, so nothing has changed since.");
        }
        try {
            return new Since(release.stamp(), release.stampPrinted(), Comparison.of(plan, now).report(), caution());
        } catch (UnrelatedShowsException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage() + ".");
        }
    }

    /** What must be known before a comparison is believed. */
    Optional<String> caution() {
        return plannedAsThen ? Optional.empty() : Optional.of("Release " + release.stampPrinted() + " was made by version " + release.version()
                + ", and this version, " + Version.tool() + ", plans the same scripts otherwise. What is said here compares two plans of this"
                + " version; the sheets of then may differ in more.");
    }
}
