package org.girandole.studio.client;

import java.net.URI;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.IFileBuffer;
import org.eclipse.core.filebuffers.IFileBufferListener;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.IDocument;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.TextDocumentItem;
import org.girandole.studio.StudioPlugin;

/** All scripts that are open, wherever their files are. */
final class OpenTexts implements IFileBufferListener {
    private final ServerLink link;
    private final Map<IDocument, OpenText> byDocument = new ConcurrentHashMap<>();
    private final Map<String, OpenText> byUri = new ConcurrentHashMap<>();

    OpenTexts(ServerLink link) {
        this.link = link;
    }

    void listen() {
        FileBuffers.getTextFileBufferManager().addFileBufferListener(this);
        for (IFileBuffer buffer : FileBuffers.getTextFileBufferManager().getFileBuffers()) {
            bufferCreated(buffer);
        }
        for (IFileBuffer buffer : FileBuffers.getTextFileBufferManager().getFileStoreFileBuffers()) {
            bufferCreated(buffer);
        }
    }

    void ignore() {
        FileBuffers.getTextFileBufferManager().removeFileBufferListener(this);
        byDocument.values().forEach(text -> text.document().removePrenotifiedDocumentListener(text));
    }

    Optional<OpenText> of(IDocument document) {
        return document == null ? Optional.empty() : Optional.ofNullable(byDocument.get(document));
    }

    Optional<OpenText> of(String uri) {
        return Optional.ofNullable(byUri.get(uri));
    }

    Collection<OpenText> all() {
        return List.copyOf(byUri.values());
    }

    /** The URI of a file buffer as the protocol writes it; empty when it is no script or no file of the file system. */
    static Optional<String> uri(IFileBuffer buffer) {
        if (buffer.getFileStore() == null || !buffer.getFileStore().getName().endsWith("." + StudioPlugin.EXTENSION)) {
            return Optional.empty();
        }
        return uri(buffer.getFileStore().toURI());
    }

    static Optional<String> uri(URI location) {
        return location != null && "file".equals(location.getScheme()) ? Optional.of(Path.of(location).toUri().toString()) : Optional.empty();
    }

    @Override
    public void bufferCreated(IFileBuffer buffer) {
        if (!(buffer instanceof ITextFileBuffer text)) {
            return;
        }
        uri(buffer).ifPresent(uri -> {
            IDocument document = text.getDocument();
            OpenText opened = new OpenText(uri, document, link);
            if (byDocument.putIfAbsent(document, opened) == null) {
                byUri.put(uri, opened);
                String now = document.get();
                link.send(server -> server.getTextDocumentService().didOpen(
                        new DidOpenTextDocumentParams(new TextDocumentItem(uri, StudioPlugin.EXTENSION, opened.version(), now))));
                document.addPrenotifiedDocumentListener(opened);
            }
        });
    }

    @Override
    public void bufferDisposed(IFileBuffer buffer) {
        if (buffer instanceof ITextFileBuffer text) {
            OpenText closed = byDocument.remove(text.getDocument());
            if (closed != null) {
                byUri.remove(closed.uri(), closed);
                closed.document().removePrenotifiedDocumentListener(closed);
                link.send(server -> server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(closed.id())));
            }
        }
    }

    @Override
    public void bufferContentAboutToBeReplaced(IFileBuffer buffer) {
        // The document says so itself.
    }

    @Override
    public void bufferContentReplaced(IFileBuffer buffer) {
        // The document says so itself.
    }

    @Override
    public void stateChanging(IFileBuffer buffer) {
        // Saving changes nothing for the server: it knows the text already.
    }

    @Override
    public void dirtyStateChanged(IFileBuffer buffer, boolean dirty) {
        // As above.
    }

    @Override
    public void stateValidationChanged(IFileBuffer buffer, boolean validated) {
        // As above.
    }

    @Override
    public void underlyingFileMoved(IFileBuffer buffer, IPath path) {
        // The editor opens a new buffer and lets the old one go.
    }

    @Override
    public void underlyingFileDeleted(IFileBuffer buffer) {
        // The text is still there to be saved elsewhere.
    }

    @Override
    public void stateChangeFailed(IFileBuffer buffer) {
        // The workbench has told the user.
    }
}
