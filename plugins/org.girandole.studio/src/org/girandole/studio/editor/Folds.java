package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;

/** Folding of blocks and comments. What is folded stays folded. */
public final class Folds extends ViewerStrategy {
    @Override
    void update(OpenText text) {
        int version = text.version();
        ShowClient.get().ask(server -> server.getTextDocumentService().foldingRange(new FoldingRangeRequestParams(text.id())))
                .thenAccept(ranges -> {
                    if (ranges != null) {
                        show(text, version, () -> take(text.document(), ranges));
                    }
                });
    }

    private void take(IDocument document, List<FoldingRange> ranges) {
        ProjectionAnnotationModel model = viewer() instanceof ProjectionViewer folding ? folding.getProjectionAnnotationModel() : null;
        if (model == null) {
            return;
        }
        Map<Annotation, Position> wanted = new HashMap<>();
        for (FoldingRange range : ranges) {
            try {
                int from = document.getLineOffset(range.getStartLine());
                int last = Math.min(range.getEndLine(), document.getNumberOfLines() - 1);
                int to = document.getLineOffset(last) + document.getLineLength(last);
                wanted.put(new ProjectionAnnotation(), new Position(from, to - from));
            } catch (BadLocationException e) {
                // A range of a text that is gone.
                continue;
            }
        }
        List<Annotation> gone = new ArrayList<>();
        model.getAnnotationIterator().forEachRemaining(annotation -> {
            Position there = model.getPosition(annotation);
            if (!wanted.values().remove(there)) {
                gone.add(annotation);
            }
        });
        if (!gone.isEmpty() || !wanted.isEmpty()) {
            model.modifyAnnotations(gone.toArray(Annotation[]::new), wanted, null);
        }
    }
}
