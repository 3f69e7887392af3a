package org.girandole.studio.project;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.compare.IEncodedStreamContentAccessor;
import org.eclipse.compare.IStreamContentAccessor;
import org.eclipse.compare.structuremergeviewer.DocumentRangeNode;
import org.eclipse.compare.structuremergeviewer.IStructureComparator;
import org.eclipse.compare.structuremergeviewer.IStructureCreator;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.Document;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.girandole.studio.StudioPlugin;

/**
 * Compares two versions of a script by sections and cues. Reads lines, not the language: either version may be unfinished. A cue is the
 * same in both when it has the same name, or the same places and effect in the same order, so that one whose time has changed is one
 * that changed and not one that went and another that came.
 */
public final class ShowStructure implements IStructureCreator {
    private static final int BLOCK = 1;
    private static final int CUE = 2;
    private static final Pattern HEAD = Pattern.compile("^\\s*([A-Za-z][^{\"]*).*\\{.*");
    private static final Pattern CUE_LINE = Pattern.compile("^\\s*(?:cue\\s+(\\w+)\\s+)?at\\s+(.+?)\\s{2,}(.+?)\\s*$");

    @Override
    public String getName() {
        return "Sections and Cues";
    }

    @Override
    public IStructureComparator getStructure(Object input) {
        if (!(input instanceof IStreamContentAccessor stream)) {
            return null;
        }
        try {
            return of(text(stream));
        } catch (CoreException | IOException e) {
            StudioPlugin.log("A version of the script cannot be read.", e);
            return null;
        }
    }

    private static String text(IStreamContentAccessor stream) throws CoreException, IOException {
        String charset = stream instanceof IEncodedStreamContentAccessor encoded ? encoded.getCharset() : null;
        try (InputStream in = stream.getContents()) {
            return in == null ? "" : new String(in.readAllBytes(), charset == null ? StandardCharsets.UTF_8 : Charset.forName(charset));
        }
    }

    /** The tree of a text. */
    static DocumentRangeNode of(String text) {
        IDocument document = new Document(text);
        ShowNode root = new ShowNode(null, BLOCK, "", "", document, 0, document.getLength());
        try {
            read(document, root);
        } catch (BadLocationException e) {
            StudioPlugin.log("A version of the script changed while it was read.", e);
        }
        return root;
    }

    private static void read(IDocument document, ShowNode root) throws BadLocationException {
        ShowNode block = root;
        int depth = 0;
        for (int number = 0; number < document.getNumberOfLines(); number++) {
            IRegion region = document.getLineInformation(number);
            String line = withoutComment(document.get(region.getOffset(), region.getLength()));
            int opened = count(line, '{');
            int closed = count(line, '}');
            Matcher cue = CUE_LINE.matcher(line);
            Matcher head = HEAD.matcher(line);
            if (cue.matches() && opened <= closed) {
                block.cue(cue.group(1), cue.group(2), cue.group(3), document, region);
            } else if (opened > closed && head.matches()) {
                depth += opened - closed;
                block = block.block(title(head.group(1)), document, region, depth);
                continue;
            }
            depth += opened - closed;
            while (block.parent != null && depth < block.depth) {
                block.setLength(region.getOffset() + region.getLength() - block.getRange().getOffset());
                block = block.parent;
            }
        }
    }

    /** The first two words: {@code section Opening}, {@code score Tides}, {@code repeat 4}. */
    private static String title(String head) {
        String[] words = head.strip().split("[\\s(]+");
        return words.length > 1 ? words[0] + " " + words[1] : words[0];
    }

    private static String withoutComment(String line) {
        int comment = line.indexOf("//");
        return comment < 0 || count(line.substring(0, comment), '"') % 2 == 1 ? line : line.substring(0, comment);
    }

    private static int count(String line, char wanted) {
        return (int) line.chars().filter(c -> c == wanted).count();
    }

    @Override
    public IStructureComparator locate(Object path, Object input) {
        return null;
    }

    @Override
    public String getContents(Object node, boolean ignoreWhitespace) {
        if (!(node instanceof ShowNode show)) {
            return null;
        }
        String text = show.text();
        return ignoreWhitespace ? text.replaceAll("\\s+", " ").strip() : text;
    }

    @Override
    public void save(IStructureComparator node, Object input) {
        // Texts are merged in the text comparison.
    }

    /** A block or a cue. */
    static final class ShowNode extends DocumentRangeNode implements org.eclipse.compare.ITypedElement {
        private final ShowNode parent;
        private final String label;
        private final Map<String, Integer> seen = new HashMap<>();
        private final int depth;
        private String at = "";
        private String what = "";

        ShowNode(ShowNode parent, int type, String id, String label, IDocument document, int start, int length) {
            this(parent, type, id, label, document, start, length, 0);
        }

        private ShowNode(ShowNode parent, int type, String id, String label, IDocument document, int start, int length, int depth) {
            super(type, id, document, start, length);
            this.parent = parent;
            this.label = label;
            this.depth = depth;
        }

        private String unique(String key) {
            int number = seen.merge(key, 1, Integer::sum);
            return number == 1 ? key : key + " #" + number;
        }

        void cue(String name, String at, String rest, IDocument document, IRegion line) {
            String what = rest.replaceAll("\\s+", " ");
            String id = unique(name == null ? what : name);
            String called = name == null ? "" : name + "  ";
            ShowNode cue = new ShowNode(this, CUE, id, called + "at " + at.strip() + "   " + what, document, line.getOffset(), line.getLength());
            cue.at = at.strip();
            cue.what = called + what;
            addChild(cue);
        }

        /** When a cue is; empty for a block. */
        String at() {
            return at;
        }

        /** Its name, if it has one, places and effect; empty for a block. */
        String what() {
            return what;
        }

        ShowNode block(String title, IDocument document, IRegion line, int inside) {
            ShowNode block = new ShowNode(this, BLOCK, unique(title), title, document, line.getOffset(), line.getLength(), inside);
            addChild(block);
            return block;
        }

        String text() {
            try {
                return getDocument().get(getRange().getOffset(), getRange().getLength());
            } catch (BadLocationException e) {
                return "";
            }
        }

        @Override
        public String getName() {
            return label;
        }

        @Override
        public String getType() {
            return getTypeCode() == CUE ? "cue" : "block";
        }

        @Override
        public org.eclipse.swt.graphics.Image getImage() {
            return null;
        }
    }
}
