package org.girandole.studio.editor;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.jface.text.AbstractReusableInformationControlCreator;
import org.eclipse.jface.text.DefaultInformationControl;
import org.eclipse.jface.text.IInformationControl;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.ITextHoverExtension;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.MarkedString;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.editors.text.EditorsUI;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Waiting;

/** What is known of the word under the pointer, with the derivation of its numbers. The editor asks on a thread of its own. */
public final class Hovers implements ITextHover, ITextHoverExtension {
    @Override
    public String getHoverInfo(ITextViewer viewer, IRegion region) {
        Optional<OpenText> text = ShowClient.get().text(viewer.getDocument());
        if (text.isEmpty()) {
            return null;
        }
        HoverParams params = new HoverParams(text.get().id(), Positions.position(viewer.getDocument(), region.getOffset()));
        return Waiting.of(ShowClient.get().ask(server -> server.getTextDocumentService().hover(params)), Waiting.LONG_MS)
                .map(Hovers::html).filter(html -> !html.isBlank()).orElse(null);
    }

    /** Else the platform would show the tags too where the tooltip is asked for by its key. */
    @Override
    public IInformationControlCreator getHoverControlCreator() {
        return new AbstractReusableInformationControlCreator() {
            @Override
            protected IInformationControl doCreateInformationControl(Shell parent) {
                return new DefaultInformationControl(parent, EditorsUI.getTooltipAffordanceString());
            }
        };
    }

    private static String html(Hover hover) {
        if (hover.getContents() == null) {
            return "";
        }
        if (hover.getContents().isRight()) {
            return Markdown.html(hover.getContents().getRight().getValue());
        }
        List<Either<String, MarkedString>> parts = hover.getContents().getLeft();
        return Markdown.html(parts.stream().map(part -> part.isLeft() ? part.getLeft() : part.getRight().getValue())
                .collect(Collectors.joining("\n\n")));
    }

    @Override
    public IRegion getHoverRegion(ITextViewer viewer, int offset) {
        return Positions.word(viewer.getDocument(), offset).orElse(new Region(offset, 0));
    }
}
