package org.girandole.maven;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.apache.maven.plugins.annotations.Mojo;
import org.apache.maven.plugins.annotations.Parameter;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.GitRevision;
import org.girandole.lang.check.GitRevision.RevisionException;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.Comparison;
import org.girandole.plan.diff.Comparison.UnrelatedShowsException;
import org.girandole.plan.diff.DiffReport;
import org.girandole.sheets.diff.DiffFormat;

/** Says what changed in the plan since a revision of git. */
@Mojo(name = "diff", threadSafe = true)
public final class DiffMojo extends AbstractShowMojo {
    /** Commit, branch or tag to compare with. */
    @Parameter(property = "girandole.revision", defaultValue = "HEAD", required = true)
    private String revision;
    /** Where the difference is written: Markdown for a pull request, to read and to print. */
    @Parameter(property = "girandole.diffInto", defaultValue = "${project.build.directory}/girandole-diff", required = true)
    private File diffInto;
    /** Whether a difference that bears on safety fails the build. */
    @Parameter(property = "girandole.failOnSafety", defaultValue = "false")
    private boolean failOnSafety;

    @Override
    public void execute() throws MojoFailureException, MojoExecutionException {
        ShowPipeline pipeline = new ShowPipeline();
        CheckedPlan after = plan(pipeline, script(), root(), "the script '" + script() + "'");
        CheckedPlan before;
        try (GitRevision old = GitRevision.of(root(), revision)) {
            String name = root().relativize(script()).toString();
            before = plan(pipeline, old.folder().resolve(name), old.folder(), "'" + name + "' as it was in revision '" + revision + "'");
        } catch (RevisionException e) {
            throw new MojoExecutionException(e.getMessage(), e);
        }
        Comparison compared = compared(before, after);
        text(compared.report(), DiffFormat.TEXT).lines().forEach(getLog()::info);
        write(compared.report(), "diff.md", DiffFormat.MARKDOWN);
        write(compared.report(), "diff.html", DiffFormat.HTML);
        write(compared.report(), "diff.json", DiffFormat.JSON);
        if (failOnSafety && compared.diff().touchesSafety()) {
            throw new MojoFailureException("Something that bears on safety changed since '" + revision + "': see above.");
        }
    }

    private static CheckedPlan plan(ShowPipeline pipeline, Path script, Path root, String what) throws MojoFailureException {
        if (!Files.isRegularFile(script)) {
            throw new MojoFailureException("There is nothing to compare: " + what + " is not there.");
        }
        CheckedShow show = pipeline.check(script, root);
        return show.wholePlan().orElseThrow(() -> new MojoFailureException("There is nothing to compare: " + what + " cannot be read whole"
                + show.tornBy().map(why -> ": " + why).orElse("") + ". Mend it, or set <revision> to one that can be read."));
    }

    private static Comparison compared(CheckedPlan before, CheckedPlan after) throws MojoFailureException {
        try {
            return Comparison.of(before, after);
        } catch (UnrelatedShowsException e) {
            throw new MojoFailureException("There is nothing to compare: " + e.getMessage() + ".", e);
        }
    }

    private void write(DiffReport report, String name, DiffFormat format) throws MojoExecutionException {
        try {
            Files.createDirectories(diffInto.toPath());
            Files.writeString(diffInto.toPath().resolve(name), text(report, format));
        } catch (IOException e) {
            throw new MojoExecutionException("'" + diffInto + "' could not be written: " + e.getMessage(), e);
        }
    }

    private static String text(DiffReport report, DiffFormat format) throws MojoExecutionException {
        StringWriter text = new StringWriter();
        try {
            format.write(report, text);
        } catch (IOException e) {
            throw new MojoExecutionException(e.getMessage(), e);
        }
        return text.toString();
    }
}
