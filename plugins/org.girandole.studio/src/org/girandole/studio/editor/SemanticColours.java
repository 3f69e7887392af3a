package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextPresentationListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.ITextViewerExtension2;
import org.eclipse.jface.text.ITextViewerExtension4;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.swt.custom.StyleRange;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;

/** Colours by what a word is: effect, place, mark, … The last answer moves along with the text until there is a new one. */
public final class SemanticColours extends ViewerStrategy implements ITextPresentationListener, IDocumentListener {
    /** So many characters are coloured at once; a long script would hold up the display. */
    private static final int PIECE = 20_000;

    private final List<Token> tokens = new ArrayList<>();
    private IDocument listened;
    /** What has still to be coloured: from, and up to; on the display's thread. */
    private int from;
    private int to;
    /** While a piece is coloured, which may be longer than it should: it is whole lines. */
    private boolean own;

    /** A word and what it is. */
    private record Token(int offset, int length, String type) {
    }

    @Override
    public void install(ITextViewer viewer) {
        super.install(viewer);
        if (viewer instanceof ITextViewerExtension4 extension) {
            extension.addTextPresentationListener(this);
        }
    }

    @Override
    public void uninstall() {
        if (viewer() instanceof ITextViewerExtension4 extension) {
            extension.removeTextPresentationListener(this);
        }
        if (listened != null) {
            listened.removeDocumentListener(this);
            listened = null;
        }
        super.uninstall();
    }

    @Override
    public void setDocument(IDocument document) {
        super.setDocument(document);
        if (listened != null) {
            listened.removeDocumentListener(this);
        }
        listened = document;
        if (document != null) {
            document.addDocumentListener(this);
        }
    }

    @Override
    void update(OpenText text) {
        int version = text.version();
        ShowClient.get().legend().thenAccept(legend -> ShowClient.get().ask(server -> server.getTextDocumentService()
                .semanticTokensFull(new SemanticTokensParams(text.id()))).thenAccept(answer -> {
                    if (answer != null) {
                        show(text, version, () -> take(text.document(), answer.getData(), legend));
                    }
                }));
    }

    /** Five numbers a token: lines and characters since the last one, length, type, modifiers (LSP 3.17, textDocument/semanticTokens). */
    private void take(IDocument document, List<Integer> data, List<String> legend) {
        List<Token> now = new ArrayList<>();
        int line = 0;
        int column = 0;
        try {
            int start = document.getLineOffset(0);
            for (int i = 0; i + 4 < data.size(); i += 5) {
                if (data.get(i) > 0) {
                    line += data.get(i);
                    column = 0;
                    start = document.getLineOffset(line);
                }
                column += data.get(i + 1);
                int type = data.get(i + 3);
                if (type < legend.size()) {
                    now.add(new Token(start + column, data.get(i + 2), legend.get(type)));
                }
            }
        } catch (BadLocationException e) {
            // The text has moved on in this very moment.
            return;
        }
        List<Token> before;
        synchronized (tokens) {
            before = List.copyOf(tokens);
            tokens.clear();
            tokens.addAll(now);
        }
        colour(before, now);
    }

    /** Colours anew what lies between the first and the last word that is another than before. */
    private void colour(List<Token> before, List<Token> now) {
        int most = Math.min(before.size(), now.size());
        int first = 0;
        while (first < most && before.get(first).equals(now.get(first))) {
            first++;
        }
        int last = 0;
        while (last < most - first && before.get(before.size() - 1 - last).equals(now.get(now.size() - 1 - last))) {
            last++;
        }
        int begin = Integer.MAX_VALUE;
        int end = 0;
        for (List<Token> other : List.of(before.subList(first, before.size() - last), now.subList(first, now.size() - last))) {
            if (!other.isEmpty()) {
                Token ending = other.get(other.size() - 1);
                begin = Math.min(begin, other.get(0).offset);
                end = Math.max(end, ending.offset + ending.length);
            }
        }
        if (begin < end) {
            colour(viewer(), begin, end);
        }
    }

    /** What is seen first, the rest piece by piece. */
    private void colour(ITextViewer shown, int begin, int end) {
        if (viewer() != shown || shown.getTextWidget() == null || shown.getTextWidget().isDisposed()) {
            return;
        }
        boolean waiting = from < to;
        from = waiting ? Math.min(from, begin) : begin;
        to = waiting ? Math.max(to, end) : end;
        int seen = Math.max(from, shown.getTopIndexStartOffset());
        invalidate(seen, Math.min(to, shown.getBottomIndexEndOffset() + 1) - seen);
        if (!waiting) {
            piece(shown);
        }
    }

    private void piece(ITextViewer shown) {
        if (viewer() != shown || shown.getTextWidget() == null || shown.getTextWidget().isDisposed()) {
            from = to;
            return;
        }
        int length = Math.min(PIECE, to - from);
        invalidate(from, length);
        from += length;
        if (from < to) {
            shown.getTextWidget().getDisplay().asyncExec(() -> piece(shown));
        }
    }

    private void invalidate(int offset, int length) {
        int within = Math.min(length, viewer().getDocument().getLength() - offset);
        if (within > 0 && viewer() instanceof ITextViewerExtension2 extension) {
            own = true;
            try {
                extension.invalidateTextPresentation(offset, within);
            } finally {
                own = false;
            }
        }
    }

    @Override
    public void applyTextPresentation(TextPresentation presentation) {
        IRegion extent = presentation.getExtent();
        int end = extent.getOffset() + extent.getLength();
        ITextViewer shown = viewer();
        if (extent.getLength() > 2 * PIECE && !own) {
            // The platform presents the whole text anew, as when folding begins.
            shown.getTextWidget().getDisplay().asyncExec(() -> colour(shown, extent.getOffset(), end));
            return;
        }
        List<StyleRange> styles = new ArrayList<>();
        synchronized (tokens) {
            int found = Collections.binarySearch(tokens, new Token(extent.getOffset(), 0, ""), Comparator.comparingInt(Token::offset));
            for (int i = found < 0 ? -found - 1 : found; i < tokens.size() && tokens.get(i).offset < end; i++) {
                Token token = tokens.get(i);
                if (token.offset + token.length <= end) {
                    StyleRange style = Colours.style(token.type, token.offset, token.length);
                    if (style != null) {
                        styles.add(style);
                    }
                }
            }
        }
        presentation.mergeStyleRanges(styles.toArray(StyleRange[]::new));
    }

    @Override
    public void documentAboutToBeChanged(DocumentEvent event) {
        int end = event.getOffset() + event.getLength();
        int moved = (event.getText() == null ? 0 : event.getText().length()) - event.getLength();
        if (from < to) {
            from = Math.min(from, event.getOffset());
            to = Math.max(event.getOffset(), to + moved);
        }
        synchronized (tokens) {
            tokens.removeIf(token -> token.offset < end && token.offset + token.length > event.getOffset());
            tokens.replaceAll(token -> token.offset >= end ? new Token(token.offset + moved, token.length, token.type) : token);
        }
    }

    @Override
    public void documentChanged(DocumentEvent event) {
        // All was done before.
    }
}
