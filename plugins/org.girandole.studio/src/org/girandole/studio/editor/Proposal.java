package org.girandole.studio.editor;

import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension6;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.Range;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoManager;
import org.girandole.studio.client.Positions;

/** One proposal: shown with its detail, inserted as one step of undo. */
final class Proposal implements ICompletionProposal, ICompletionProposalExtension2, ICompletionProposalExtension6 {
    private final CompletionItem item;
    private final int from;
    private final int askedAt;
    private final int replacedTo;
    private Point selection;

    Proposal(CompletionItem item, IDocument document, int offset) {
        this.item = item;
        this.askedAt = offset;
        Range range = item.getTextEdit() == null ? null
                : item.getTextEdit().isLeft() ? item.getTextEdit().getLeft().getRange() : item.getTextEdit().getRight().getReplace();
        if (range == null) {
            from = Completions.wordStart(document, offset);
            replacedTo = offset;
        } else {
            IRegion region = Positions.region(document, range);
            from = region.getOffset();
            replacedTo = region.getOffset() + region.getLength();
        }
    }

    String order() {
        return item.getSortText() == null ? item.getLabel() : item.getSortText();
    }

    private String inserted() {
        if (item.getTextEdit() != null) {
            return item.getTextEdit().isLeft() ? item.getTextEdit().getLeft().getNewText() : item.getTextEdit().getRight().getNewText();
        }
        return item.getInsertText() == null ? item.getLabel() : item.getInsertText();
    }

    /** Whether what was typed until here is the beginning of this proposal. */
    boolean fits(IDocument document, int offset) {
        try {
            String typed = offset > from ? document.get(from, offset - from) : "";
            return Completions.begins(item.getFilterText() == null ? item.getLabel() : item.getFilterText(), typed);
        } catch (BadLocationException e) {
            return false;
        }
    }

    @Override
    public boolean validate(IDocument document, int offset, DocumentEvent event) {
        return offset >= from && fits(document, offset);
    }

    @Override
    public void apply(ITextViewer viewer, char trigger, int stateMask, int offset) {
        IDocument document = viewer.getDocument();
        IDocumentUndoManager undo = DocumentUndoManagerRegistry.getDocumentUndoManager(document);
        if (undo != null) {
            undo.beginCompoundChange();
        }
        try {
            insert(document, offset, viewer);
        } catch (BadLocationException e) {
            // The text at this place is gone; there is nothing to insert into.
            selection = null;
        } finally {
            if (undo != null) {
                undo.endCompoundChange();
            }
        }
    }

    private void insert(IDocument document, int offset, ITextViewer viewer) throws BadLocationException {
        // What was typed since the question belongs to the word too.
        int to = Math.min(document.getLength(), Math.max(offset, replacedTo + (offset - askedAt)));
        boolean snippet = item.getInsertTextFormat() == InsertTextFormat.Snippet;
        Snippet text = snippet ? Snippet.parse(inserted(), indent(document)) : Snippet.plain(inserted());
        document.replace(from, to - from, text.text());
        selection = new Point(from + text.caret(), 0);
        if (viewer != null && text.hasStops()) {
            text.link(viewer, from).ifPresent(region -> selection = new Point(region.getOffset(), region.getLength()));
        }
    }

    /** Blanks at the beginning of the line: further lines of a snippet begin with them too. */
    private String indent(IDocument document) throws BadLocationException {
        int line = document.getLineOffset(document.getLineOfOffset(from));
        int end = line;
        while (end < from && (document.getChar(end) == ' ' || document.getChar(end) == '\t')) {
            end++;
        }
        return document.get(line, end - line);
    }

    @Override
    public void apply(IDocument document) {
        try {
            insert(document, askedAt, null);
        } catch (BadLocationException e) {
            // As above.
            selection = null;
        }
    }

    @Override
    public Point getSelection(IDocument document) {
        return selection;
    }

    @Override
    public String getDisplayString() {
        return item.getLabel();
    }

    @Override
    public StyledString getStyledDisplayString() {
        StyledString text = new StyledString(item.getLabel());
        if (item.getDetail() != null && !item.getDetail().isBlank()) {
            text.append("  " + item.getDetail(), Colours.DETAIL);
        }
        return text;
    }

    @Override
    public String getAdditionalProposalInfo() {
        if (item.getDocumentation() == null) {
            return null;
        }
        return Markdown.html(item.getDocumentation().isLeft() ? item.getDocumentation().getLeft()
                : item.getDocumentation().getRight().getValue());
    }

    @Override
    public Image getImage() {
        return null;
    }

    @Override
    public IContextInformation getContextInformation() {
        return null;
    }

    @Override
    public void selected(ITextViewer viewer, boolean smartToggle) {
        // Nothing is shown beforehand.
    }

    @Override
    public void unselected(ITextViewer viewer) {
        // As above.
    }
}
