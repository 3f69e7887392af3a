package org.girandole.studio.editor;

import org.eclipse.jface.text.source.ISourceViewerExtension5;
import org.girandole.studio.client.OpenText;

/** Times beside cues are known only when a check has ended: asks for them then. */
public final class MiningUpdates extends ViewerStrategy {
    @Override
    void update(OpenText text) {
        show(text, text.version(), () -> {
            if (viewer() instanceof ISourceViewerExtension5 minings) {
                minings.updateCodeMinings();
            }
        });
    }
}
