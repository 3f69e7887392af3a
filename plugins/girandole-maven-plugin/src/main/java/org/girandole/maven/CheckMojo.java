package org.girandole.maven;

import org.apache.maven.plugin.AbstractMojo;
import org.apache.maven.plugins.annotations.LifecyclePhase;
import org.apache.maven.plugins.annotations.Mojo;

/** Checks show scripts. */
@Mojo(name = "check", defaultPhase = LifecyclePhase.COMPILE, threadSafe = true)
public final class CheckMojo extends AbstractMojo {
    @Override
    public void execute() {
        getLog().info("check");
    }
}
