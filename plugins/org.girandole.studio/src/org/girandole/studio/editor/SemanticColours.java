package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextPresentationListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.ITextViewerExtension4;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.swt.custom.StyleRange;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;

/** Colours by what a word is: effect, place, mark, … The last answer moves along with the text until there is a new one. */
public final class SemanticColours extends ViewerStrategy implements ITextPresentationListener, IDocumentListener {
    private final List<Token> tokens = new ArrayList<>();
    private IDocument listened;

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
            for (int i = 0; i + 4 < data.size(); i += 5) {
                column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
                line += data.get(i);
                int type = data.get(i + 3);
                if (type < legend.size()) {
                    now.add(new Token(document.getLineOffset(line) + column, data.get(i + 2), legend.get(type)));
                }
            }
        } catch (BadLocationException e) {
            // The text has moved on in this very moment.
            return;
        }
        boolean same;
        synchronized (tokens) {
            same = tokens.equals(now);
            tokens.clear();
            tokens.addAll(now);
        }
        if (!same) {
            viewer().invalidateTextPresentation();
        }
    }

    @Override
    public void applyTextPresentation(TextPresentation presentation) {
        IRegion extent = presentation.getExtent();
        int end = extent.getOffset() + extent.getLength();
        List<StyleRange> styles = new ArrayList<>();
        synchronized (tokens) {
            for (Token token : tokens) {
                if (token.offset >= extent.getOffset() && token.offset + token.length <= end) {
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
