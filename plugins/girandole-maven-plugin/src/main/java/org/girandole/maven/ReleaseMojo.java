package org.girandole.maven;

import java.io.File;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.apache.maven.plugins.annotations.LifecyclePhase;
import org.apache.maven.plugins.annotations.Mojo;
import org.apache.maven.plugins.annotations.Parameter;
import org.girandole.lang.check.CheckedShow;
import org.girandole.sheets.release.Release;
import org.girandole.sheets.release.ReleaseException;
import org.girandole.sheets.release.Releaser;

/** Writes the tables and sheets of a show into a folder, whole or not at all. */
@Mojo(name = "release", defaultPhase = LifecyclePhase.PACKAGE, threadSafe = true)
public final class ReleaseMojo extends AbstractShowMojo {
    /** A new or empty folder, or one with an older release. */
    @Parameter(property = "girandole.into", defaultValue = "${project.build.directory}/release", required = true)
    private File into;

    @Override
    public void execute() throws MojoFailureException, MojoExecutionException {
        CheckedShow show = check();
        if (show.plan().isEmpty()) {
            throw new MojoFailureException("Nothing was released: the script has no show block.");
        }
        try {
            Release release = Releaser.release(show.plan().get(), into.toPath(), toolVersion());
            getLog().info("Released " + (release.files().size() + 1) + " files into " + into);
            release.leftOut().forEach(what -> getLog().warn("Not in this release, though the script asks for it: " + what));
        } catch (ReleaseException e) {
            throw new MojoFailureException(e.getMessage(), e);
        }
    }
}
