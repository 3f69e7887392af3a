package org.girandole.studio.client;

import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;

/** Tells the user something without getting in the way: in the status line of the editor. */
public final class Tell {
    private static volatile String last = "";

    private Tell() {
    }

    /** From any thread. */
    public static void status(String message) {
        last = message;
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        Display display = PlatformUI.getWorkbench().getDisplay();
        display.asyncExec(() -> {
            IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
            IEditorPart editor = window == null || window.getActivePage() == null ? null : window.getActivePage().getActiveEditor();
            if (editor != null) {
                editor.getEditorSite().getActionBars().getStatusLineManager().setErrorMessage(message);
                display.beep();
            }
        });
    }

    /** What was told last. */
    public static String last() {
        return last;
    }
}
