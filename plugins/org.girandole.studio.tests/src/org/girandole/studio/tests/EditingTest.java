package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.eclipse.core.resources.IMarker;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A script in its editor, from opening to findings that come and go. */
class EditingTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @Test
    void opensInTheTextEditorOfThePlatform() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        assertThat(editor.getSite().getId()).isEqualTo("org.eclipse.ui.genericeditor.GenericEditor");
        assertThat(shows.show().getContentDescription().getContentType().getId()).isEqualTo("org.girandole.studio.show");
    }

    @Test
    void markersComeAndGoWithTheText() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        int at = document.get().indexOf("RedPeony75");
        document.replace(at, "RedPeony75".length(), "BluePeony75");
        IMarker marker = Ui.marker(shows.show(), "unresolved-name");
        assertThat(document.get(marker.getAttribute(IMarker.CHAR_START, -1), "BluePeony75".length())).isEqualTo("BluePeony75");
        assertThat(marker.getAttribute(IMarker.SEVERITY, -1)).isEqualTo(IMarker.SEVERITY_ERROR);
        document.replace(at, "BluePeony75".length(), "RedPeony75");
        Ui.until("the finding goes", () -> !Ui.hasMarker(shows.show(), "unresolved-name"));
    }
}
