package org.girandole.studio;

import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.ui.plugin.AbstractUIPlugin;
import org.girandole.studio.client.ShowClient;
import org.osgi.framework.BundleContext;

/** The bundle of the editor. */
public final class StudioPlugin extends AbstractUIPlugin {
    public static final String ID = "org.girandole.studio";
    /** Content type of a script. */
    public static final String CONTENT_TYPE = "org.girandole.studio.show";
    public static final String EXTENSION = "show";

    private static StudioPlugin instance;

    @Override
    public void start(BundleContext context) throws Exception {
        super.start(context);
        instance = this;
    }

    @Override
    public void stop(BundleContext context) throws Exception {
        ShowClient.stop();
        instance = null;
        super.stop(context);
    }

    public static StudioPlugin get() {
        return instance;
    }

    /** For what is wrong in the program, not in the user's script. */
    public static void log(String message, Throwable cause) {
        StudioPlugin plugin = instance;
        if (plugin != null) {
            plugin.getLog().log(new Status(IStatus.ERROR, ID, message, cause));
        }
    }
}
