package org.girandole.studio.editor;

import java.util.List;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.Region;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.StudioPlugin;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.PlaceQuestion;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.Tell;

/** Lists every place where a name is used, in all files of the show. */
public final class ReferencesHandler extends ShowHandler {
    @Override
    void run(ITextEditor editor, OpenText text, ITextSelection selection) {
        IRegion word = Positions.word(text.document(), selection.getOffset()).orElse(new Region(selection.getOffset(), 0));
        String name = Positions.text(text.document(), word);
        PlaceQuestion.<List<? extends Location>>ofName(text, word.getOffset(), word.getLength(), (server, place) -> server.getTextDocumentService()
                .references(new ReferenceParams(text.id(), place.getStart(), new ReferenceContext(true))))
                .ask((found, asked) -> show(editor, name, found), Tell::status);
    }

    private static void show(ITextEditor editor, String name, List<? extends Location> found) {
        if (found == null || found.isEmpty()) {
            Tell.status("Nothing is known to use " + (name.isEmpty() ? "what is here." : name + "."));
            return;
        }
        try {
            if (editor.getSite().getPage().showView(ReferencesView.ID) instanceof ReferencesView view) {
                view.show(name, found);
            }
        } catch (PartInitException e) {
            StudioPlugin.log("The view of references cannot be shown.", e);
        }
    }
}
