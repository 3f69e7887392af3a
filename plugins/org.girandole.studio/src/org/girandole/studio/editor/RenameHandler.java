package org.girandole.studio.editor;

import java.util.Optional;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.client.Edits;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
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
        String old = word(text, word.get());
        InputDialog dialog = new InputDialog(editor.getSite().getShell(), "Rename", "New name of " + old + ", in every file that uses it:", old,
                RenameHandler::wrong);
        if (dialog.open() == Window.OK && !dialog.getValue().equals(old)) {
            rename(text, word.get().getOffset(), old, dialog.getValue());
        }
    }

    private static String word(OpenText text, IRegion region) {
        try {
            return text.document().get(region.getOffset(), region.getLength());
        } catch (BadLocationException e) {
            return "";
        }
    }

    /** Why a name is none; null when it is one. */
    private static String wrong(String name) {
        return name.matches("[A-Za-z_][A-Za-z0-9_]*") ? null : "A name begins with a letter and has letters, digits and _.";
    }

    /** Asks for the rename and does it when the answer is there. On the display's thread. */
    public static void rename(OpenText text, int offset, String old, String name) {
        Position position = Positions.position(text.document(), offset);
        Edits.Asked asked = Edits.Asked.now(text);
        Display display = Display.getCurrent();
        ShowClient.get().ask(server -> server.getTextDocumentService().rename(new RenameParams(text.id(), position, name)))
                .thenAccept(edit -> display.asyncExec(() -> {
                    if (edit == null) {
                        Tell.status(old + " cannot be renamed: it is no name of this show, or the text has changed meanwhile.");
                    } else {
                        Edits.apply("Rename " + old + " to " + name, edit, asked);
                    }
                }));
    }
}
