package org.girandole.studio.editor;

import java.util.List;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.ListViewer;
import org.eclipse.lsp4j.Location;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.girandole.studio.client.ShowClient;

/** Where a name is used; Enter or a double click goes there. */
public final class ReferencesView extends ViewPart {
    public static final String ID = "org.girandole.studio.references";

    private ListViewer list;

    @Override
    public void createPartControl(Composite parent) {
        list = new ListViewer(parent);
        list.setContentProvider(ArrayContentProvider.getInstance());
        list.setLabelProvider(new LabelProvider() {
            @Override
            public String getText(Object element) {
                return label((Location) element);
            }
        });
        list.addOpenListener(event -> {
            if (((IStructuredSelection) event.getSelection()).getFirstElement() instanceof Location location) {
                Links.reveal(location.getUri(), location.getRange());
            }
        });
        setContentDescription("Put the caret on a name and choose Find References.");
    }

    /** Shows what was found. */
    void show(String name, List<? extends Location> found) {
        setContentDescription(found.size() + (found.size() == 1 ? " place with " : " places with ") + name);
        list.setInput(found.toArray());
    }

    /** File and line; with the line's text when the file is open. */
    private static String label(Location location) {
        String file = location.getUri().substring(location.getUri().lastIndexOf('/') + 1);
        int line = location.getRange().getStart().getLine();
        String text = ShowClient.get().text(location.getUri()).map(open -> {
            try {
                var region = open.document().getLineInformation(line);
                return "   " + open.document().get(region.getOffset(), region.getLength()).strip();
            } catch (org.eclipse.jface.text.BadLocationException e) {
                return "";
            }
        }).orElse("");
        return file + ":" + (line + 1) + text;
    }

    @Override
    public void setFocus() {
        list.getControl().setFocus();
    }
}
