package org.girandole.studio.views.workbench;

import java.util.function.Consumer;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;

/**
 * The first check of a large show takes seconds, in which no findings may not be taken for a clean show: the views and <em>Progress</em> say
 * that it is being checked. On the display's thread.
 */
public final class FirstCheck {
    /** An answer that comes sooner is no reason to blink. */
    private static final int PATIENCE_MS = 300;

    private final Display display;
    private final Consumer<String> say;
    private String awaited = "";
    private Checking job;

    /** @param say tells the views why they are empty */
    public FirstCheck(Display display, Consumer<String> say) {
        this.display = display;
        this.say = say;
    }

    /** A script is looked at of which nothing is known yet. */
    public void begins(String uri) {
        if (isOf(uri)) {
            return;
        }
        ends();
        awaited = uri;
        display.timerExec(PATIENCE_MS, () -> {
            if (isOf(uri) && job == null) {
                String name = uri.substring(uri.lastIndexOf('/') + 1);
                say.accept(name + " is being checked. What it means is shown here when that is done; until then there are no findings either.");
                job = new Checking(name);
                job.schedule();
            }
        });
    }

    /** Whether this script is waited for. */
    public boolean isOf(String uri) {
        return uri.equals(awaited);
    }

    /** It is known what the script that is looked at means, or another one is looked at that is known. */
    public void ends() {
        awaited = "";
        if (job != null) {
            job.end();
            job = null;
        }
    }

    /** Stands in the status line as long as the check takes. It is the server that works: this holds no thread. */
    private static final class Checking extends Job {
        private boolean over;
        private boolean running;

        Checking(String name) {
            super("Checking " + name);
            setPriority(DECORATE);
        }

        @Override
        protected synchronized IStatus run(IProgressMonitor monitor) {
            if (over) {
                return Status.OK_STATUS;
            }
            monitor.beginTask(getName(), IProgressMonitor.UNKNOWN);
            running = true;
            return ASYNC_FINISH;
        }

        @Override
        protected void canceling() {
            end();
        }

        synchronized void end() {
            if (running && !over) {
                done(Status.OK_STATUS);
            }
            over = true;
        }
    }
}
