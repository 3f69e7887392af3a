package org.girandole.studio.client;

import java.util.Optional;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.custom.CaretListener;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWindowListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;

/** Which script is looked at, and where in it the caret is. On the display's thread. */
final class EditorWatch implements IPartListener2, IWindowListener {
    private final ShowClient client;
    private String uri;
    private StyledText text;
    private ITextViewer viewer;
    private int line;
    private final CaretListener caret = event -> caretAt(event.caretOffset);

    EditorWatch(ShowClient client) {
        this.client = client;
    }

    void install() {
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        PlatformUI.getWorkbench().addWindowListener(this);
        for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
            windowOpened(window);
        }
    }

    void uninstall() {
        if (PlatformUI.isWorkbenchRunning()) {
            PlatformUI.getWorkbench().removeWindowListener(this);
            for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
                windowClosed(window);
            }
        }
    }

    Optional<String> active() {
        return Optional.ofNullable(uri);
    }

    @Override
    public void windowOpened(IWorkbenchWindow window) {
        window.getPartService().addPartListener(this);
        IWorkbenchPage page = window.getActivePage();
        if (page != null && page.getActiveEditor() != null) {
            watch(page.getActiveEditor());
        }
    }

    @Override
    public void windowClosed(IWorkbenchWindow window) {
        window.getPartService().removePartListener(this);
    }

    @Override
    public void windowActivated(IWorkbenchWindow window) {
        IWorkbenchPage page = window.getActivePage();
        if (page != null && page.getActiveEditor() != null) {
            watch(page.getActiveEditor());
        }
    }

    @Override
    public void windowDeactivated(IWorkbenchWindow window) {
        // The script stays the one that is looked at.
    }

    @Override
    public void partActivated(IWorkbenchPartReference reference) {
        if (reference.getPart(false) instanceof IEditorPart editor) {
            watch(editor);
        }
    }

    @Override
    public void partBroughtToTop(IWorkbenchPartReference reference) {
        partActivated(reference);
    }

    @Override
    public void partInputChanged(IWorkbenchPartReference reference) {
        partActivated(reference);
    }

    @Override
    public void partClosed(IWorkbenchPartReference reference) {
        IWorkbenchPage page = reference.getPage();
        if (page != null && page.getActiveEditor() == null) {
            leave();
            tell(null);
        }
    }

    private void watch(IEditorPart editor) {
        Optional<String> now = Places.uri(editor.getEditorInput());
        leave();
        now.ifPresent(script -> {
            viewer = Adapters.adapt(editor, ITextViewer.class);
            text = viewer == null ? null : viewer.getTextWidget();
            if (text != null) {
                text.addCaretListener(caret);
            }
        });
        tell(now.orElse(null));
    }

    private void leave() {
        if (text != null && !text.isDisposed()) {
            text.removeCaretListener(caret);
        }
        text = null;
        viewer = null;
        line = 0;
    }

    private void tell(String now) {
        if (now == null ? uri != null : !now.equals(uri)) {
            uri = now;
            client.tellEditor(active());
        }
    }

    private void caretAt(int widgetOffset) {
        if (text == null || uri == null || viewer.getDocument() == null) {
            return;
        }
        int offset = viewer instanceof org.eclipse.jface.text.ITextViewerExtension5 folding
                ? folding.widgetOffset2ModelOffset(widgetOffset) : widgetOffset;
        int now = Positions.position(viewer.getDocument(), offset).getLine() + 1;
        if (now != line) {
            line = now;
            client.tellCaret(uri, now);
        }
    }
}
