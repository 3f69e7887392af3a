package org.girandole.maven;

import java.io.File;
import java.util.Optional;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.apache.maven.plugins.annotations.LifecyclePhase;
import org.apache.maven.plugins.annotations.Mojo;
import org.apache.maven.plugins.annotations.Parameter;
import org.girandole.lang.check.CheckedShow;
import org.girandole.sheets.release.Release;
import org.girandole.sheets.release.ReleaseException;
import org.girandole.sheets.release.ReleaseOrder;
import org.girandole.sheets.release.Releaser;

/** Writes the tables and sheets of a show into a folder, whole or not at all. */
@Mojo(name = "release", defaultPhase = LifecyclePhase.PACKAGE, threadSafe = true)
public final class ReleaseMojo extends AbstractShowMojo {
    /** A new or empty folder, or one with an older release. */
    @Parameter(property = "girandole.into", defaultValue = "${project.build.directory}/release", required = true)
    private File into;
    @Parameter(defaultValue = "${project.build.directory}", readonly = true, required = true)
    private File buildFolder;

    @Override
    public void execute() throws MojoFailureException, MojoExecutionException {
        CheckedShow show = check();
        if (show.plan().isEmpty()) {
            throw new MojoFailureException("Nothing was released: the script has no show block.");
        }
        try {
            // What lies in the build's own folder is made anew with every build, also by another version, and nobody works from it.
            boolean disposable = into.toPath().toAbsolutePath().normalize().startsWith(buildFolder.toPath().toAbsolutePath().normalize());
            Release release = Releaser.release(new ReleaseOrder(show.plan().get(), toolVersion(),
                    Optional.of(new ReleaseOrder.Origin(script(), root())), Optional.empty(), disposable), into.toPath());
            getLog().info("Released " + (release.files().size() + 1) + " files into " + into);
            release.leftOut().forEach(what -> getLog().warn("Not in this release, though the script asks for it: " + what));
        } catch (ReleaseException e) {
            throw new MojoFailureException(e.getMessage(), e);
        }
    }
}
