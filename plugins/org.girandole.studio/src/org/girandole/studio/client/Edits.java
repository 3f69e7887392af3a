package org.girandole.studio.client;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.Document;
import org.eclipse.jface.text.IDocument;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.ltk.core.refactoring.CompositeChange;
import org.eclipse.ltk.core.refactoring.PerformChangeOperation;
import org.eclipse.ltk.core.refactoring.RefactoringCore;
import org.eclipse.ltk.core.refactoring.TextFileChange;
import org.eclipse.text.edits.MalformedTreeException;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoManager;
import org.girandole.studio.StudioPlugin;

/** Changes of texts that the server proposes. Each is one step of undo, also when it touches several files. On the display's thread. */
public final class Edits {
    private Edits() {
    }

    /** Changes one open text; says so in the status line when a text has moved on. Whether it was changed. */
    public static boolean apply(OpenText text, KnownTexts asked, List<? extends TextEdit> edits) {
        return isStill(asked) && change(text.document(), edits);
    }

    /**
     * Changes all texts of an edit, or none; says why in the status line.
     *
     * @param name of the step, as the menu shows it
     * @param asked the texts that the edit was made for
     */
    public static boolean apply(String name, WorkspaceEdit edit, KnownTexts asked) {
        Map<String, List<TextEdit>> byFile = byFile(edit);
        if (byFile.isEmpty()) {
            Tell.status(name + ": there is nothing to change.");
            return false;
        }
        if (!isStill(asked)) {
            return false;
        }
        Optional<String> readOnly = byFile.keySet().stream().filter(Edits::readOnly).findFirst();
        if (readOnly.isPresent()) {
            String file = readOnly.get();
            Tell.status(file.substring(file.lastIndexOf('/') + 1) + " is read-only; nothing was done. Make it writable and try again.");
            return false;
        }
        if (byFile.size() == 1) {
            String uri = byFile.keySet().iterator().next();
            Optional<OpenText> open = ShowClient.get().text(uri);
            if (open.isPresent()) {
                return change(open.get().document(), byFile.get(uri));
            }
        }
        return changeFiles(name, byFile);
    }

    private static boolean isStill(KnownTexts asked) {
        boolean still = asked.isStill();
        if (!still) {
            Tell.status("The text has changed meanwhile; nothing was done. Try again.");
        }
        return still;
    }

    private static Map<String, List<TextEdit>> byFile(WorkspaceEdit edit) {
        Map<String, List<TextEdit>> byFile = new LinkedHashMap<>();
        if (edit.getChanges() != null) {
            edit.getChanges().forEach((uri, edits) -> byFile.computeIfAbsent(uri, key -> new ArrayList<>()).addAll(edits));
        }
        if (edit.getDocumentChanges() != null) {
            for (Either<TextDocumentEdit, ?> change : edit.getDocumentChanges()) {
                if (change.isLeft()) {
                    List<TextEdit> into = byFile.computeIfAbsent(change.getLeft().getTextDocument().getUri(), key -> new ArrayList<>());
                    change.getLeft().getEdits().forEach(one -> {
                        if (one.isLeft()) {
                            into.add(one.getLeft());
                        }
                    });
                }
            }
        }
        byFile.values().removeIf(List::isEmpty);
        return byFile;
    }

    private static boolean readOnly(String uri) {
        return Places.file(uri).map(IFile::isReadOnly).orElse(false);
    }

    private static boolean change(IDocument document, List<? extends TextEdit> edits) {
        IDocumentUndoManager undo = DocumentUndoManagerRegistry.getDocumentUndoManager(document);
        if (undo != null) {
            undo.beginCompoundChange();
        }
        try {
            tree(document, edits).apply(document);
            return true;
        } catch (BadLocationException | MalformedTreeException e) {
            StudioPlugin.log("The language server proposed a change that does not fit the text.", e);
            return false;
        } finally {
            if (undo != null) {
                undo.endCompoundChange();
            }
        }
    }

    private static MultiTextEdit tree(IDocument document, List<? extends TextEdit> edits) {
        MultiTextEdit tree = new MultiTextEdit();
        for (TextEdit edit : edits) {
            var region = Positions.region(document, edit.getRange());
            tree.addChild(new ReplaceEdit(region.getOffset(), region.getLength(), edit.getNewText()));
        }
        return tree;
    }

    private static boolean changeFiles(String name, Map<String, List<TextEdit>> byFile) {
        CompositeChange all = new CompositeChange(name);
        for (Map.Entry<String, List<TextEdit>> entry : byFile.entrySet()) {
            Optional<IFile> file = Places.file(entry.getKey());
            if (file.isEmpty()) {
                Tell.status(name + " would change " + entry.getKey() + ", which is in no open project; nothing was done.");
                return false;
            }
            Optional<OpenText> open = ShowClient.get().text(entry.getKey());
            try {
                TextFileChange change = new TextFileChange(file.get().getName(), file.get());
                change.setSaveMode(open.isPresent() ? TextFileChange.LEAVE_DIRTY : TextFileChange.FORCE_SAVE);
                IDocument document = open.isPresent() ? open.get().document() : new Document(file.get().readString());
                change.setEdit(tree(document, entry.getValue()));
                all.add(change);
            } catch (CoreException | MalformedTreeException e) {
                Tell.status(name + ": " + file.get().getName() + " cannot be read; nothing was done.");
                return false;
            }
        }
        return perform(name, all);
    }

    private static boolean perform(String name, CompositeChange all) {
        all.initializeValidationData(new NullProgressMonitor());
        PerformChangeOperation operation = new PerformChangeOperation(all);
        operation.setUndoManager(RefactoringCore.getUndoManager(), name);
        try {
            ResourcesPlugin.getWorkspace().run(operation, new NullProgressMonitor());
        } catch (CoreException e) {
            StudioPlugin.log(name + " failed.", e);
            return false;
        }
        if (!operation.changeExecuted()) {
            String why = operation.getValidationStatus() == null ? "" : " " + operation.getValidationStatus().getMessageMatchingSeverity(
                    operation.getValidationStatus().getSeverity());
            Tell.status(name + ": nothing was done." + why);
        }
        return operation.changeExecuted();
    }
}
