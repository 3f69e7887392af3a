package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.TextSelection;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.viewers.IPostSelectionProvider;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;

/** Marks every place where the name at the caret is used. */
public final class Occurrences extends ViewerStrategy {
    /** Annotation type, the platform's own. */
    public static final String TYPE = "org.eclipse.ui.genericeditor.text";

    private final ISelectionChangedListener carets = event -> {
        if (event.getSelection() instanceof TextSelection) {
            text().ifPresent(this::update);
        }
    };

    @Override
    public void install(ITextViewer viewer) {
        super.install(viewer);
        if (viewer instanceof IPostSelectionProvider selections) {
            selections.addPostSelectionChangedListener(carets);
        }
    }

    @Override
    public void uninstall() {
        if (viewer() instanceof IPostSelectionProvider selections) {
            selections.removePostSelectionChangedListener(carets);
        }
        super.uninstall();
    }

    @Override
    void update(OpenText text) {
        int version = text.version();
        show(text, version, () -> {
            int offset = viewer().getSelectedRange().x;
            var params = new DocumentHighlightParams(text.id(), Positions.position(text.document(), offset));
            ShowClient.get().insist(server -> server.getTextDocumentService().documentHighlight(params), () -> text.version() == version).thenAccept(answer -> {
                if (answer != null) {
                    List<? extends DocumentHighlight> found = answer;
                    show(text, version, () -> {
                        if (viewer().getSelectedRange().x == offset) {
                            take(text.document(), found);
                        }
                    });
                }
            });
        });
    }

    private void take(IDocument document, List<? extends DocumentHighlight> found) {
        IAnnotationModel model = viewer() instanceof ISourceViewer source ? source.getAnnotationModel() : null;
        if (!(model instanceof IAnnotationModelExtension editable)) {
            return;
        }
        List<Annotation> old = new ArrayList<>();
        model.getAnnotationIterator().forEachRemaining(annotation -> {
            if (annotation instanceof Occurrence) {
                old.add(annotation);
            }
        });
        Map<Annotation, Position> now = new LinkedHashMap<>();
        for (DocumentHighlight highlight : found) {
            IRegion region = Positions.region(document, highlight.getRange());
            now.put(new Occurrence(), new Position(region.getOffset(), region.getLength()));
        }
        if (!old.isEmpty() || !now.isEmpty()) {
            editable.replaceAnnotations(old.toArray(Annotation[]::new), now);
        }
    }

    /** One use of the name. */
    private static final class Occurrence extends Annotation {
        Occurrence() {
            super(TYPE, false, "");
        }
    }
}
