package org.girandole.studio.editor;

import java.util.Optional;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.ITextViewerLifecycle;
import org.eclipse.jface.text.reconciler.DirtyRegion;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.reconciler.IReconcilingStrategyExtension;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.ShowListener;

/**
 * Something that the editor shows of the whole text: asked for after each pause of typing, and when a check has ended. Never waits: the
 * answer comes by itself, and is dropped when the text has moved on.
 */
abstract class ViewerStrategy implements IReconcilingStrategy, IReconcilingStrategyExtension, ITextViewerLifecycle, ShowListener {
    private ITextViewer viewer;
    private IDocument document;

    @Override
    public void install(ITextViewer textViewer) {
        viewer = textViewer;
        ShowClient.get().addListener(this);
    }

    @Override
    public void uninstall() {
        ShowClient.get().removeListener(this);
        viewer = null;
    }

    final ITextViewer viewer() {
        return viewer;
    }

    /** The script in the viewer; empty when it is none, or too long to be decorated. */
    final Optional<OpenText> text() {
        return ShowClient.get().text(document).filter(text -> !text.huge());
    }

    /** Asks the server, and shows its answer. */
    abstract void update(OpenText text);

    /** Runs on the display's thread, unless the text has moved on or the viewer is gone. */
    final void show(OpenText text, int version, Runnable action) {
        ITextViewer shown = viewer;
        if (shown == null || shown.getTextWidget() == null || shown.getTextWidget().isDisposed()) {
            return;
        }
        shown.getTextWidget().getDisplay().asyncExec(() -> {
            if (viewer == shown && shown.getDocument() == text.document() && text.version() == version
                    && shown.getTextWidget() != null && !shown.getTextWidget().isDisposed()) {
                action.run();
            }
        });
    }

    @Override
    public void checked(String uri) {
        text().filter(text -> text.uri().equals(uri)).ifPresent(this::update);
    }

    @Override
    public void setDocument(IDocument now) {
        document = now;
    }

    @Override
    public void initialReconcile() {
        text().ifPresent(this::update);
    }

    @Override
    public void reconcile(IRegion partition) {
        text().ifPresent(this::update);
    }

    @Override
    public void reconcile(DirtyRegion dirty, IRegion part) {
        text().ifPresent(this::update);
    }

    @Override
    public void setProgressMonitor(IProgressMonitor monitor) {
        // Nothing here takes long enough.
    }
}
