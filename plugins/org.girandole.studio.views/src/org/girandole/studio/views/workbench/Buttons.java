package org.girandole.studio.views.workbench;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.ui.IViewSite;

/** Buttons of a view, in its tool bar and in its menu, in words. */
final class Buttons {
    private final IViewSite site;

    Buttons(IViewSite site) {
        this.site = site;
    }

    Buttons add(String text, String tip, Runnable run) {
        Action action = action(text, run);
        action.setToolTipText(tip);
        add(action);
        site.getActionBars().getMenuManager().add(action);
        return this;
    }

    /** What is wanted too seldom for a button. */
    Buttons inMenu(String text, Runnable run) {
        site.getActionBars().getMenuManager().add(action(text, run));
        return this;
    }

    private static Action action(String text, Runnable run) {
        return new Action(text, IAction.AS_PUSH_BUTTON) {
            @Override
            public void run() {
                run.run();
            }
        };
    }

    /**
     * A button that opens a menu to choose one of several names, or none.
     *
     * @param chosen the name that is chosen now, empty for none
     * @param choose takes a name, empty for none
     */
    Buttons choice(String text, String tip, Supplier<List<String>> names, Supplier<String> chosen, Consumer<String> choose) {
        MenuManager dropped = menu(text, names, chosen, choose);
        Action action = new Action(text, IAction.AS_PUSH_BUTTON) {
            @Override
            public void run() {
                dropped.createContextMenu(site.getShell()).setVisible(true);
            }
        };
        action.setToolTipText(tip);
        add(action);
        site.getActionBars().getMenuManager().add(menu(text, names, chosen, choose));
        return this;
    }

    private static MenuManager menu(String text, Supplier<List<String>> names, Supplier<String> chosen, Consumer<String> choose) {
        MenuManager menu = new MenuManager(text);
        menu.setRemoveAllWhenShown(true);
        menu.addMenuListener(shown -> {
            item(menu, "None", "", chosen.get(), choose);
            names.get().forEach(name -> item(menu, name, name, chosen.get(), choose));
        });
        // What is filled only when it is shown must not be empty before, or it is not shown at all.
        menu.add(new Separator());
        return menu;
    }

    private static void item(MenuManager menu, String text, String name, String chosen, Consumer<String> choose) {
        Action item = new Action(text, IAction.AS_RADIO_BUTTON) {
            @Override
            public void run() {
                if (isChecked()) {
                    choose.accept(name);
                }
            }
        };
        item.setChecked(name.equals(chosen));
        menu.add(item);
    }

    private void add(Action action) {
        if (site.getActionBars().getToolBarManager().getItems().length > 0) {
            // Words side by side would read as a sentence.
            site.getActionBars().getToolBarManager().add(new Separator());
        }
        site.getActionBars().getToolBarManager().add(action);
    }
}
