package org.girandole.studio.tests;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;

/** The widgets of a window, as somebody sees and uses them. */
final class Widgets {
    private Widgets() {
    }

    /** All controls of a kind, in the order of their making. */
    static <T extends Control> List<T> all(Composite in, Class<T> kind) {
        List<T> found = new ArrayList<>();
        for (Control child : in.getChildren()) {
            if (kind.isInstance(child)) {
                found.add(kind.cast(child));
            }
            if (child instanceof Composite composite) {
                found.addAll(all(composite, kind));
            }
        }
        return found;
    }

    /** The button of a name, whatever its mnemonic. */
    static Optional<Button> button(Composite in, String name) {
        return all(in, Button.class).stream().filter(button -> button.getText().replace("&", "").equals(name)).findFirst();
    }

    static void press(Button button) {
        button.notifyListeners(SWT.Selection, new Event());
    }

    /** The title and all that can be read. */
    static String texts(Shell shell) {
        return shell.getText() + "\n" + all(shell, Label.class).stream().map(Label::getText).collect(Collectors.joining("\n")) + "\n"
                + all(shell, Text.class).stream().map(Text::getText).collect(Collectors.joining("\n")) + "\n"
                + all(shell, Button.class).stream().map(Button::getText).collect(Collectors.joining("\n"));
    }

    /** The names of a tree's items, a line each, children indented; what is folded is unfolded. */
    static String texts(Tree tree) {
        StringBuilder texts = new StringBuilder();
        for (TreeItem item : tree.getItems()) {
            add(item, texts, "");
        }
        return texts.toString();
    }

    private static void add(TreeItem item, StringBuilder texts, String indent) {
        texts.append(indent).append(item.getText()).append('\n');
        Event expand = new Event();
        expand.item = item;
        item.getParent().notifyListeners(SWT.Expand, expand);
        for (TreeItem child : item.getItems()) {
            add(child, texts, indent + "  ");
        }
    }
}
