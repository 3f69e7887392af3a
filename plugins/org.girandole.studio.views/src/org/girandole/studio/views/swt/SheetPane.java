package org.girandole.studio.views.swt;

import java.io.ByteArrayInputStream;
import java.util.Base64;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.List;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.girandole.studio.views.sheets.SheetsState;

/** The list of sheets beside a page of one of them. */
public final class SheetPane extends Composite {
    private static final int[] SHARES = {1, 3};

    private final SheetsState state;
    private final List list;
    private final PageCanvas page;
    private final Label words;

    /**
     * @param ask asks for the page that is wanted now
     * @param export is told {@code pdf} or {@code html}
     */
    public SheetPane(Composite parent, Runnable ask, Consumer<String> export) {
        super(parent, SWT.NONE);
        state = new SheetsState(ask);
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        setLayout(layout);
        Composite bar = new Composite(this, SWT.NONE);
        // In a narrow view the buttons take two lines.
        bar.setLayout(new RowLayout(SWT.HORIZONTAL));
        bar.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        button(bar, "Page before", () -> state.step(-1));
        button(bar, "Next page", () -> state.step(1));
        button(bar, "Smaller", () -> state.zoom(-1));
        button(bar, "Larger", () -> state.zoom(1));
        button(bar, "Save as PDF\u2026", () -> export.accept("pdf"));
        button(bar, "Save as HTML\u2026", () -> export.accept("html"));
        words = new Label(this, SWT.WRAP);
        words.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        SashForm sash = new SashForm(this, SWT.HORIZONTAL);
        sash.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        list = new List(sash, SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL | SWT.BORDER);
        list.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = "Sheets of the show";
            }
        });
        list.addListener(SWT.Selection, event -> {
            state.choose(list.getSelectionIndex());
            refresh();
        });
        page = new PageCanvas(sash, state, this::refresh);
        sash.setWeights(SHARES);
        refresh();
    }

    private void button(Composite bar, String text, Runnable action) {
        Button button = new Button(bar, SWT.PUSH);
        button.setText(text);
        button.addListener(SWT.Selection, (Event event) -> {
            action.run();
            refresh();
        });
    }

    public SheetsState state() {
        return state;
    }

    /** The canvas with the page. */
    public PageCanvas canvas() {
        return page;
    }

    /** Another list has come. */
    public void list(SheetList sheets) {
        state.list(sheets);
        list.setItems(state.names().toArray(String[]::new));
        refresh();
    }

    /** A page has come. */
    public void page(SheetPage come) {
        if (state.page(come)) {
            page.picture(come.nothing() == null ? new Image(getDisplay(), new ByteArrayInputStream(Base64.getDecoder().decode(come.png()))) : null);
        }
        refresh();
    }

    private void refresh() {
        if (!state.names().isEmpty()) {
            list.setSelection(state.selected());
        }
        if (!words.getText().equals(state.words())) {
            words.setText(state.words());
            // It may have become longer than a line.
            layout();
        }
        page.redraw();
    }

    @Override
    public boolean setFocus() {
        return list.setFocus();
    }
}
