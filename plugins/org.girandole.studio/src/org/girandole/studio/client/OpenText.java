package org.girandole.studio.client;

import java.util.List;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;

/** A script that is open in the workbench. Tells the server of each change, in their order. */
public final class OpenText implements IDocumentListener {
    /** Longer scripts are not coloured, folded or annotated: the text itself must stay quick to edit. */
    public static final int HUGE = 4_000_000;
    /** The version of a text that nobody has changed since it was opened. */
    static final int AS_OPENED = 1;

    private final String uri;
    private final IDocument document;
    private final ServerLink link;
    private volatile int version = AS_OPENED;
    private Range replaced;

    OpenText(String uri, IDocument document, ServerLink link) {
        this.uri = uri;
        this.document = document;
        this.link = link;
    }

    public String uri() {
        return uri;
    }

    public IDocument document() {
        return document;
    }

    /** Grows with each change. */
    public int version() {
        return version;
    }

    public TextDocumentIdentifier id() {
        return new TextDocumentIdentifier(uri);
    }

    public boolean huge() {
        return document.getLength() > HUGE;
    }

    @Override
    public void documentAboutToBeChanged(DocumentEvent event) {
        replaced = Positions.range(event.getDocument(), event.getOffset(), event.getLength());
    }

    @Override
    public void documentChanged(DocumentEvent event) {
        version++;
        TextDocumentContentChangeEvent change = new TextDocumentContentChangeEvent(replaced, event.getText() == null ? "" : event.getText());
        DidChangeTextDocumentParams params = new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, version), List.of(change));
        link.send(server -> server.getTextDocumentService().didChange(params));
    }
}
