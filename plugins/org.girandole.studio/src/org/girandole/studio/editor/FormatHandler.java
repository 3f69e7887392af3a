package org.girandole.studio.editor;

import java.util.List;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.ITextEditorExtension2;
import org.girandole.studio.client.Edits;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.PlaceQuestion;
import org.girandole.studio.client.Tell;

/** Gives the script its canonical form, or the selected lines. */
public final class FormatHandler extends ShowHandler {
    private static final int INDENT = 2;

    @Override
    void run(ITextEditor editor, OpenText text, ITextSelection selection) {
        if (editor instanceof ITextEditorExtension2 input && !input.validateEditorInputState()) {
            Tell.status("The file is read-only; nothing was formatted.");
            return;
        }
        FormattingOptions options = new FormattingOptions(INDENT, true);
        PlaceQuestion.<List<? extends TextEdit>>of(text, selection.getOffset(), selection.getLength(), (server, place) -> selection.getLength() == 0
                ? server.getTextDocumentService().formatting(new DocumentFormattingParams(text.id(), options))
                : server.getTextDocumentService().rangeFormatting(new DocumentRangeFormattingParams(text.id(), options, place)))
                .ask((edits, asked) -> {
                    if (edits != null && !edits.isEmpty()) {
                        Edits.apply(text, asked, edits);
                    }
                }, Tell::status);
    }
}
