package org.girandole.studio.views.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Base64;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.part.ViewPart;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.SheetFile;
import org.girandole.protocol.SheetFileParams;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.girandole.protocol.SheetPageParams;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.SheetPane;

/** The sheets of the show in the active editor. */
public final class SheetsPart extends ViewPart {
    private static final String TITLE = "Save sheet";

    private final Stage.Listener shows = this::changed;
    private ShowHub hub;
    private SheetPane pane;
    private boolean stale = true;
    private Question<String, SheetList> lists;
    private Question<SheetPageParams, SheetPage> pages;

    @Override
    public void createPartControl(Composite parent) {
        hub = ShowHub.get(parent.getDisplay());
        pane = new SheetPane(parent, this::askPage, this::export);
        lists = new Question<>(parent.getDisplay(), uri -> hub.requests().sheets(new ScriptParams(uri)), list -> {
            if (!pane.isDisposed()) {
                pane.list(list);
            }
        });
        pages = new Question<>(parent.getDisplay(), hub.requests()::sheetPage, page -> {
            if (!pane.isDisposed()) {
                pane.page(page);
            }
        });
        hub.stage().listen(shows);
        pane.canvas().addListener(SWT.Paint, event -> askList());
    }

    /** Sheets are costly to lay out: they wait until somebody looks at them. */
    private void changed(Stage.Change change) {
        if (change == Stage.Change.SHOW) {
            stale = true;
            String nothing = hub.stage().plan().nothing();
            if (nothing != null) {
                // Else the sheets of another show would stay.
                pane.list(SheetList.nothing(hub.stage().plan().uri(), nothing));
            }
            pane.canvas().redraw();
        }
    }

    private void askList() {
        if (stale && hub.stage().plan().nothing() == null) {
            stale = false;
            if (pane.state().list().nothing() != null) {
                pane.list(SheetList.nothing(hub.stage().plan().uri(), "The sheets are being laid out\u2026"));
            }
            lists.ask(hub.stage().plan().uri());
        }
    }

    private void askPage() {
        pane.state().chosen().ifPresent(entry -> pages.ask(new SheetPageParams(hub.stage().plan().uri(), entry.id(), pane.state().wantedPage(),
                pane.canvas().wantedWidthPx())));
    }

    private void export(String format) {
        pane.state().chosen().ifPresent(entry -> {
            FileDialog dialog = new FileDialog(pane.getShell(), SWT.SAVE);
            dialog.setText(TITLE);
            dialog.setFileName(entry.fileName() + "." + format);
            dialog.setOverwrite(true);
            String chosen = dialog.open();
            if (chosen != null) {
                hub.requests().sheetFile(new SheetFileParams(hub.stage().plan().uri(), entry.id(), format))
                        .thenAccept(file -> save(file, Path.of(chosen)));
            }
        });
    }

    /** The file is whole or not there. */
    private void save(SheetFile file, Path target) {
        if (file == null || file.nothing() != null) {
            tell(file == null ? "The text has changed meanwhile. Save the sheet again." : file.nothing());
            return;
        }
        try {
            Path part = Files.createTempFile(target.toAbsolutePath().getParent(), ".sheet", ".part");
            try {
                Files.write(part, Base64.getDecoder().decode(file.content()));
                Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            tell("'" + target + "' could not be written. Choose a folder that is yours, with room on its disk.");
        }
    }

    private void tell(String message) {
        pane.getDisplay().asyncExec(() -> MessageDialog.openError(pane.getShell(), TITLE, message));
    }

    @Override
    public void dispose() {
        if (hub != null) {
            hub.stage().unlisten(shows);
        }
        super.dispose();
    }

    @Override
    public void setFocus() {
        pane.setFocus();
    }
}
