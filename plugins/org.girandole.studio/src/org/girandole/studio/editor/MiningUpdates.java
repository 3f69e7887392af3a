package org.girandole.studio.editor;

import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.IViewportListener;
import org.eclipse.jface.text.source.ISourceViewerExtension5;
import org.girandole.studio.client.OpenText;

/** Times beside cues are known only when a check has ended: asks for them then; in a long script also when others come into view. */
public final class MiningUpdates extends ViewerStrategy {
    private final IViewportListener scrolled = offset -> scrolled();
    private int asked;

    @Override
    public void install(ITextViewer viewer) {
        super.install(viewer);
        viewer.addViewportListener(scrolled);
    }

    @Override
    public void uninstall() {
        viewer().removeViewportListener(scrolled);
        super.uninstall();
    }

    @Override
    void update(OpenText text) {
        show(text, text.version(), this::ask);
    }

    private void ask() {
        if (viewer() instanceof ISourceViewerExtension5 minings) {
            asked = viewer().getTopIndex();
            minings.updateCodeMinings();
        }
    }

    private void scrolled() {
        if (Math.abs(viewer().getTopIndex() - asked) > Minings.NEAR_LINES / 2) {
            text().ifPresent(text -> ask());
        }
    }
}
