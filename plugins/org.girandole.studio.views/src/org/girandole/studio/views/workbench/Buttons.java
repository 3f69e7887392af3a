package org.girandole.studio.views.workbench;

import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.ui.IViewSite;

/** Buttons of a view, in its tool bar and in its menu, in words. */
final class Buttons {
    private final IViewSite site;

    Buttons(IViewSite site) {
        this.site = site;
    }

    Buttons add(String text, String tip, Runnable run) {
        Action action = new Action(text, IAction.AS_PUSH_BUTTON) {
            @Override
            public void run() {
                run.run();
            }
        };
        action.setToolTipText(tip);
        site.getActionBars().getToolBarManager().add(action);
        site.getActionBars().getMenuManager().add(action);
        return this;
    }
}
