package org.girandole.studio.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.core.runtime.Adapters;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;

/** A command on the script being edited. */
abstract class ShowHandler extends AbstractHandler {
    @Override
    public final Object execute(ExecutionEvent event) {
        IEditorPart part = HandlerUtil.getActiveEditor(event);
        ITextEditor editor = Adapters.adapt(part, ITextEditor.class);
        if (editor == null) {
            return null;
        }
        Optional<OpenText> text = ShowClient.get().text(editor.getDocumentProvider().getDocument(editor.getEditorInput()));
        if (text.isPresent() && editor.getSelectionProvider().getSelection() instanceof ITextSelection selection) {
            run(editor, text.get(), selection);
        }
        return null;
    }

    /** On the display's thread; must not wait. */
    abstract void run(ITextEditor editor, OpenText text, ITextSelection selection);
}
