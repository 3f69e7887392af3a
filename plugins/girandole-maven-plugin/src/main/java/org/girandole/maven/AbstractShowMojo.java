package org.girandole.maven;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.maven.plugin.AbstractMojo;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.apache.maven.plugin.descriptor.PluginDescriptor;
import org.apache.maven.plugins.annotations.Parameter;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.sheets.findings.FindingReport;
import org.girandole.sheets.findings.FindingText;

/** Checks a script and tells the findings as warnings and errors of the build. */
abstract class AbstractShowMojo extends AbstractMojo {
    /** The script of the show. */
    @Parameter(property = "girandole.script", required = true)
    private File script;
    /** The project folder; scripts may use nothing outside of it. */
    @Parameter(property = "girandole.root", defaultValue = "${project.basedir}", required = true)
    private File root;
    /** The mildest severity that fails the build: {@code error}, {@code warning} or {@code info}. */
    @Parameter(property = "girandole.failOn", defaultValue = "error")
    private String failOn;
    @Parameter(defaultValue = "${plugin}", readonly = true, required = true)
    private PluginDescriptor plugin;

    /** The version as it stands in outputs. */
    final String toolVersion() {
        return plugin.getVersion();
    }

    /** The script, whether it is there or not. */
    final Path script() {
        return script.toPath().toAbsolutePath().normalize();
    }

    /** The project folder. */
    final Path root() {
        return root.toPath().toAbsolutePath().normalize();
    }

    /** Checks the script, tells what was found, and fails when something is too grave. */
    final CheckedShow check() throws MojoFailureException, MojoExecutionException {
        Severity limit = limit();
        Path file = script();
        Path project = root();
        if (!Files.isReadable(file) || !Files.isRegularFile(file)) {
            throw new MojoExecutionException("There is no script '" + script + "' that can be read. Set <script> to the file of the show.");
        }
        if (!file.startsWith(project)) {
            throw new MojoExecutionException("The script '" + script + "' lies outside of the project folder '" + root + "'.");
        }
        CheckedShow show = new ShowPipeline().check(file, project);
        UnaryOperator<String> path = name -> project.resolve(name).normalize().toString();
        FindingReport report = new FindingReport(show.findings(), 1, ShowPipeline.rules(), toolVersion(), path);
        report.findings().forEach(finding -> tell(finding, report));
        getLog().info(FindingText.summary(report));
        if (show.failsOn(limit)) {
            throw new MojoFailureException(script.getName() + " has findings of severity '" + limit.word()
                    + "' or graver that nobody has agreed to: see above.");
        }
        return show;
    }

    private void tell(Finding finding, FindingReport report) {
        String text = FindingText.headline(finding, report) + "\n" + FindingText.details(finding, "    ").stripTrailing();
        if (finding.waived() || finding.severity() == Severity.INFO) {
            getLog().info(text);
        } else if (finding.severity() == Severity.WARNING) {
            getLog().warn(text);
        } else {
            getLog().error(text);
        }
    }

    private Severity limit() throws MojoExecutionException {
        return List.of(Severity.values()).stream().filter(severity -> severity.word().equals(failOn)).findFirst()
                .orElseThrow(() -> new MojoExecutionException("<failOn> is '" + failOn + "'; it can be error, warning or info."));
    }
}
