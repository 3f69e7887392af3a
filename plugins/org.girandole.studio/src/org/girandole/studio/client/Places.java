package org.girandole.studio.client;

import java.net.URI;
import java.util.Optional;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.core.filesystem.IFileStore;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IURIEditorInput;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;

/** Editors and the places in them. */
public final class Places {
    private Places() {
    }

    /** The workspace file of a URI; when several projects hold it, the innermost. */
    public static Optional<IFile> file(String uri) {
        try {
            IFile best = null;
            for (IFile file : ResourcesPlugin.getWorkspace().getRoot().findFilesForLocationURI(URI.create(uri))) {
                if (file.exists() && (best == null || file.getFullPath().segmentCount() < best.getFullPath().segmentCount())) {
                    best = file;
                }
            }
            return Optional.ofNullable(best);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The URI of an editor's script. */
    public static Optional<String> uri(IEditorInput input) {
        IFile file = Adapters.adapt(input, IFile.class);
        URI location = file != null ? file.getLocationURI() : input instanceof IURIEditorInput place ? place.getURI() : null;
        return OpenTexts.uri(location).filter(uri -> uri.endsWith("." + org.girandole.studio.StudioPlugin.EXTENSION));
    }

    static void reveal(String uri, int line, int column, int length) {
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
            IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
            if (window == null && PlatformUI.getWorkbench().getWorkbenchWindowCount() > 0) {
                window = PlatformUI.getWorkbench().getWorkbenchWindows()[0];
            }
            if (window != null && window.getActivePage() != null) {
                open(window.getActivePage(), uri).ifPresent(editor -> select(editor, line, column, length));
            }
        });
    }

    /** Opens the editor of a file. On the display's thread. */
    static Optional<ITextEditor> open(IWorkbenchPage page, String uri) {
        try {
            Optional<IFile> file = file(uri);
            IEditorPart part;
            if (file.isPresent()) {
                part = IDE.openEditor(page, file.get(), true);
            } else {
                IFileStore store = EFS.getStore(URI.create(uri));
                if (!store.fetchInfo().exists()) {
                    Tell.status(store.getName() + " is not there any more.");
                    return Optional.empty();
                }
                part = IDE.openEditorOnFileStore(page, store);
            }
            return Optional.ofNullable(Adapters.adapt(part, ITextEditor.class));
        } catch (CoreException | IllegalArgumentException e) {
            Tell.status("The file cannot be opened: " + e.getMessage());
            return Optional.empty();
        }
    }

    private static void select(ITextEditor editor, int line, int column, int length) {
        IDocument document = editor.getDocumentProvider().getDocument(editor.getEditorInput());
        try {
            int last = document.getNumberOfLines();
            int wanted = Math.max(1, Math.min(line, last)) - 1;
            int offset = Math.min(document.getLineOffset(wanted) + Math.max(0, column - 1), document.getLength());
            editor.selectAndReveal(offset, Math.max(0, Math.min(length, document.getLength() - offset)));
        } catch (BadLocationException e) {
            editor.selectAndReveal(document.getLength(), 0);
        }
    }
}
