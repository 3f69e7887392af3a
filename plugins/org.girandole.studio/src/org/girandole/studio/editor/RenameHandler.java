package org.girandole.studio.editor;

import java.util.Optional;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.client.Edits;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.PlaceQuestion;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.Tell;

/** Renames what is under the caret in every file that uses it; one step of undo takes it all back. */
public final class RenameHandler extends ShowHandler {
    @Override
    void run(ITextEditor editor, OpenText text, ITextSelection selection) {
        Optional<IRegion> word = Positions.word(text.document(), selection.getOffset());
        if (word.isEmpty()) {
            Tell.status("Put the caret on a name to rename it.");
            return;
        }
        String old = Positions.text(text.document(), word.get());
        InputDialog dialog = new InputDialog(editor.getSite().getShell(), "Rename", "New name of " + old + ", in every file that uses it:", old,
                RenameHandler::wrong);
        if (dialog.open() == Window.OK && !dialog.getValue().equals(old)) {
            rename(text, word.get().getOffset(), old, dialog.getValue());
        }
    }

    /** Why a name is none; null when it is one. */
    private static String wrong(String name) {
        return name.matches("[A-Za-z_][A-Za-z0-9_]*") ? null : "A name begins with a letter and has letters, digits and _.";
    }

    /**
     * Asks for the rename and does it when the answer is there. On the display's thread.
     *
     * @param offset where the old name begins
     */
    public static void rename(OpenText text, int offset, String old, String name) {
        PlaceQuestion.ofName(text, offset, old.length(),
                (server, place) -> server.getTextDocumentService().rename(new RenameParams(text.id(), place.getStart(), name)))
                .ask((edit, asked) -> {
                    if (edit == null) {
                        Tell.status(old + " cannot be renamed: it is no name of this show.");
                    } else {
                        Edits.apply("Rename " + old + " to " + name, edit, asked);
                    }
                }, why -> Tell.status(old + " was not renamed. " + why));
    }
}
