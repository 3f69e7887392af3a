package org.girandole.studio.editor;

import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.AbstractHyperlinkDetector;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Tell;

/**
 * From a name to its definition, from a file name to the file. The editor asks on the display's thread whether something is a link, so
 * any word is one, and the server is asked when the user follows it.
 */
public final class Links extends AbstractHyperlinkDetector {
    @Override
    public IHyperlink[] detectHyperlinks(ITextViewer viewer, IRegion region, boolean several) {
        IDocument document = viewer.getDocument();
        return ShowClient.get().text(document)
                .map(text -> string(document, region.getOffset()).or(() -> Positions.word(document, region.getOffset())).map(word ->
                        new IHyperlink[] {new Link(text, word, region.getOffset())}).orElse(null)).orElse(null);
    }

    /** The string around an offset, when it is in a line that begins with the name of a file: one that names another file. */
    private static java.util.Optional<IRegion> string(IDocument document, int offset) {
        try {
            IRegion line = document.getLineInformationOfOffset(offset);
            String text = document.get(line.getOffset(), line.getLength());
            int at = offset - line.getOffset();
            int open = text.indexOf('"');
            int close = open < 0 ? -1 : text.indexOf('"', open + 1);
            return open >= 0 && open <= at && at <= close
                    ? java.util.Optional.of(new Region(line.getOffset() + open + 1, Math.max(0, close - open - 1))) : java.util.Optional.empty();
        } catch (BadLocationException e) {
            return java.util.Optional.empty();
        }
    }

    private record Link(OpenText text, IRegion region, int offset) implements IHyperlink {
        @Override
        public IRegion getHyperlinkRegion() {
            return region;
        }

        @Override
        public String getTypeLabel() {
            return "Girandole";
        }

        @Override
        public String getHyperlinkText() {
            return "Open Definition";
        }

        @Override
        public void open() {
            Position position = Positions.position(text.document(), offset);
            ShowClient client = ShowClient.get();
            client.insist(server -> server.getTextDocumentService().documentLink(new DocumentLinkParams(text.id()))).thenAccept(links -> {
                DocumentLink file = links == null ? null : links.stream().filter(link -> inside(link.getRange(), position)
                        && link.getTarget() != null).findFirst().orElse(null);
                if (file != null) {
                    client.reveal(file.getTarget(), 1, 1, 0);
                } else {
                    client.insist(server -> server.getTextDocumentService().definition(new DefinitionParams(text.id(), position)))
                            .thenAccept(Link::go);
                }
            });
        }

        private static void go(Either<List<? extends Location>, List<? extends LocationLink>> found) {
            if (found != null && found.isLeft() && !found.getLeft().isEmpty()) {
                Location location = found.getLeft().get(0);
                reveal(location.getUri(), location.getRange());
            } else if (found != null && found.isRight() && !found.getRight().isEmpty()) {
                LocationLink link = found.getRight().get(0);
                reveal(link.getTargetUri(), link.getTargetSelectionRange());
            } else {
                Tell.status("Nothing is defined under this word.");
            }
        }
    }

    static boolean inside(Range range, Position position) {
        return range.getStart().getLine() == position.getLine() && range.getStart().getCharacter() <= position.getCharacter()
                && position.getCharacter() <= range.getEnd().getCharacter();
    }

    static void reveal(String uri, Range range) {
        int length = range.getStart().getLine() == range.getEnd().getLine() ? range.getEnd().getCharacter() - range.getStart().getCharacter() : 0;
        ShowClient.get().reveal(uri, range.getStart().getLine() + 1, range.getStart().getCharacter() + 1, length);
    }
}
