package org.girandole.studio.editor;

import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DefaultIndentLineAutoEditStrategy;
import org.eclipse.jface.text.DocumentCommand;
import org.eclipse.jface.text.IDocument;

/** A new line begins where the last one began; after an opening brace, two blanks further in. */
public final class IndentEdit extends DefaultIndentLineAutoEditStrategy {
    private static final String STEP = "  ";

    @Override
    public void customizeDocumentCommand(IDocument document, DocumentCommand command) {
        boolean newLine = command.length == 0 && command.text != null && ("\n".equals(command.text) || "\r\n".equals(command.text));
        super.customizeDocumentCommand(document, command);
        try {
            if (newLine && command.offset > 0 && document.getChar(command.offset - 1) == '{') {
                command.text += STEP;
            }
        } catch (BadLocationException e) {
            // The caret is at no place of the text; there is nothing to add.
            return;
        }
    }
}
