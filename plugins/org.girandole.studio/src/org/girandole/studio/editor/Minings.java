package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.codemining.AbstractCodeMiningProvider;
import org.eclipse.jface.text.codemining.ICodeMining;
import org.eclipse.jface.text.codemining.ICodeMiningProvider;
import org.eclipse.jface.text.codemining.LineEndCodeMining;
import org.eclipse.jface.text.codemining.LineHeaderCodeMining;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintLabelPart;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;

/** Fire times at the ends of lines, and sums above sections: shown, never part of the text. */
public final class Minings extends AbstractCodeMiningProvider {
    /** The platform places each of them anew at every check, on the display's thread: in a longer script only those near what is seen are made. */
    private static final int MOST_LINES = 2_000;
    /** So many lines above and below what is seen. */
    static final int NEAR_LINES = 400;

    @Override
    public CompletableFuture<List<? extends ICodeMining>> provideCodeMinings(ITextViewer viewer, IProgressMonitor monitor) {
        IDocument document = viewer.getDocument();
        OpenText text = ShowClient.get().text(document).filter(open -> !open.huge()).orElse(null);
        StyledText widget = viewer.getTextWidget();
        if (text == null || widget == null || widget.isDisposed()) {
            return CompletableFuture.completedFuture(List.of());
        }
        int version = text.version();
        CompletableFuture<List<InlayHint>> hints = range(viewer, document).thenCompose(range -> ShowClient.get()
                .ask(server -> server.getTextDocumentService().inlayHint(new InlayHintParams(text.id(), range))));
        CompletableFuture<List<? extends CodeLens>> lenses = ShowClient.get()
                .ask(server -> server.getTextDocumentService().codeLens(new CodeLensParams(text.id())));
        // The platform takes the answer on the thread that it comes on, and draws it on that of the display: only there is it safe.
        return hints.thenCombineAsync(lenses, (ends, heads) -> text.version() == version ? minings(document, ends, heads) : List.of(),
                widget.getDisplay()::asyncExec);
    }

    /** What is seen is known on the display's thread only; the platform asks on others too. */
    private static CompletableFuture<Range> range(ITextViewer viewer, IDocument document) {
        int lines = document.getNumberOfLines();
        Range all = new Range(new Position(0, 0), new Position(lines, 0));
        if (lines <= MOST_LINES) {
            return CompletableFuture.completedFuture(all);
        }
        return CompletableFuture.supplyAsync(() -> {
            if (viewer.getTextWidget() == null || viewer.getTextWidget().isDisposed()) {
                return all;
            }
            int from = Positions.position(document, Math.max(0, viewer.getTopIndexStartOffset())).getLine();
            int to = Positions.position(document, Math.max(0, viewer.getBottomIndexEndOffset())).getLine();
            return new Range(new Position(Math.max(0, from - NEAR_LINES), 0), new Position(Math.min(lines, to + NEAR_LINES), 0));
        }, viewer.getTextWidget().getDisplay()::asyncExec);
    }

    private List<ICodeMining> minings(IDocument document, List<InlayHint> ends, List<? extends CodeLens> heads) {
        List<ICodeMining> minings = new ArrayList<>();
        try {
            for (InlayHint hint : ends == null ? List.<InlayHint>of() : ends) {
                minings.add(new Hint(document, hint.getPosition().getLine(), label(hint), this));
            }
            for (CodeLens lens : heads == null ? List.<CodeLens>of() : heads) {
                if (lens.getCommand() != null) {
                    minings.add(new Lens(document, lens.getRange().getStart().getLine(), lens.getCommand().getTitle(), this));
                }
            }
        } catch (BadLocationException e) {
            // Of a text that is gone.
            return List.of();
        }
        return minings;
    }

    private static String label(InlayHint hint) {
        String label = hint.getLabel().isLeft() ? hint.getLabel().getLeft()
                : hint.getLabel().getRight().stream().map(InlayHintLabelPart::getValue).collect(Collectors.joining());
        return "   " + label;
    }

    /** The platform's grey is hard to read; the colour of comments is not, in light and dark. */
    private static GC inked(GC gc) {
        Color comment = Colours.get(Colours.COMMENT);
        if (comment != null) {
            gc.setForeground(comment);
        }
        return gc;
    }

    /** Shown only while its line says what it said when it was asked about: the time of a cue that has been changed is none. */
    private static final class Hint extends LineEndCodeMining {
        private final String line;

        Hint(IDocument document, int line, String label, ICodeMiningProvider provider) throws BadLocationException {
            super(document, line, provider);
            this.line = document.get(document.getLineOffset(line), document.getLineLength(line)).strip();
            setLabel(label);
        }

        @Override
        public Point draw(GC gc, StyledText text, Color platform, int x, int y) {
            boolean holds = text.getLine(text.getLineIndex(y)).strip().equals(line);
            return holds ? super.draw(inked(gc), text, platform, x, y) : new Point(0, 0);
        }
    }

    private static final class Lens extends LineHeaderCodeMining {
        Lens(IDocument document, int line, String label, ICodeMiningProvider provider) throws BadLocationException {
            super(line, document, provider);
            setLabel(label);
        }

        @Override
        public Point draw(GC gc, StyledText text, Color platform, int x, int y) {
            return super.draw(inked(gc), text, platform, x, y);
        }
    }
}
