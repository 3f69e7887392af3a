package org.girandole.maven;

import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.apache.maven.plugins.annotations.LifecyclePhase;
import org.apache.maven.plugins.annotations.Mojo;

/** Finds the mistakes of a show; they appear as warnings and errors of the build. */
@Mojo(name = "check", defaultPhase = LifecyclePhase.VALIDATE, threadSafe = true)
public final class CheckMojo extends AbstractShowMojo {
    @Override
    public void execute() throws MojoFailureException, MojoExecutionException {
        check();
    }
}
