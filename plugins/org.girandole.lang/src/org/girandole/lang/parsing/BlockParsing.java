package org.girandole.lang.parsing;

import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.IParser;
import org.eclipse.xtext.parser.ParseException;
import org.eclipse.xtext.parser.impl.PartialParsingHelper;
import org.eclipse.xtext.util.ReplaceRegion;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Item;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.StrayElement;
import org.girandole.lang.show.StrayItem;

/**
 * Where a change leaves something that cannot be read, the platform parses the whole file again. Here only the block is, in which the change
 * stands, so long as the block still ends where it ended: then the parser comes out of it as it did before, whatever is wrong inside.
 */
public class BlockParsing extends PartialParsingHelper {
    private static final Set<Class<? extends EObject>> HOLDERS = Set.of(Script.class, ScoreDef.class, FigureDef.class, SectionDef.class,
            RepeatBlock.class);

    private final Splicing splicing = new Splicing();

    /** A block with its last brace. @param call what the grammar calls there @param depth how many blocks it stands in, itself counted */
    private record Block(ICompositeNode node, EObject object, RuleCall call, ILeafNode close, int depth) {
    }

    @Override
    public IParseResult reparse(IParser parser, IParseResult before, ReplaceRegion change) {
        // The platform parses less than a block where all is well and the line with the change stays that line; else it takes the block as new.
        return before.hasSyntaxErrors() || !isAfterFirstWord(before.getRootNode(), change) ? fullyReparse(parser, before, change)
                : super.reparse(parser, before, change);
    }

    /** Whether a change comes after the word that tells what a line is, and before the end of that line. */
    private static boolean isAfterFirstWord(ICompositeNode root, ReplaceRegion change) {
        EObject line = object(root, change);
        while (line != null && !(line instanceof Item) && !(line instanceof Element)) {
            line = line.eContainer();
        }
        ICompositeNode node = line == null ? null : NodeModelUtils.getNode(line);
        ILeafNode word = node == null ? null : firstWord(node);
        return word != null && word.getTotalEndOffset() < change.getOffset() && change.getEndOffset() <= node.getTotalEndOffset();
    }

    @Override
    protected IParseResult fullyReparse(IParser parser, IParseResult before, ReplaceRegion change) {
        return block(before, change).flatMap(block -> inBlock(parser, before, block, change))
                .orElseGet(() -> super.fullyReparse(parser, before, change));
    }

    /** The innermost block around a change, when nothing around it looks ahead into it. */
    private static Optional<Block> block(IParseResult before, ReplaceRegion change) {
        for (EObject object = object(before.getRootNode(), change); object != null; object = object.eContainer()) {
            if (object instanceof Element || object instanceof Item) {
                Optional<Block> block = block(object, change);
                if (block.isPresent()) {
                    return block;
                }
            }
        }
        return Optional.empty();
    }

    /** The innermost thing in which a change begins; null when there is none. */
    private static EObject object(ICompositeNode root, ReplaceRegion change) {
        ILeafNode leaf = change.getEndOffset() > root.getTotalLength() ? null : NodeModelUtils.findLeafNodeAtOffset(root, change.getOffset());
        return leaf == null ? null : NodeModelUtils.findActualSemanticObjectFor(leaf);
    }

    private static Optional<Block> block(EObject object, ReplaceRegion change) {
        int depth = 1;
        for (EObject holder = object.eContainer(); holder != null; holder = holder.eContainer()) {
            EObject tested = holder;
            if (HOLDERS.stream().noneMatch(type -> type.isInstance(tested))) {
                return Optional.empty();
            }
            depth++;
        }
        ICompositeNode node = NodeModelUtils.getNode(object);
        if (object instanceof StrayElement || object instanceof StrayItem || node == null || node.getParent() == null
                || !(node.getGrammarElement() instanceof RuleCall call)) {
            return Optional.empty();
        }
        ILeafNode open = open(node);
        ILeafNode close = close(node);
        boolean sound = open != null && close != null;
        return sound && open.getTotalEndOffset() <= change.getOffset() && change.getEndOffset() <= close.getTotalOffset()
                ? Optional.of(new Block(node, object, call, close, depth)) : Optional.empty();
    }

    private static boolean isKeyword(INode leaf) {
        return leaf.getGrammarElement() instanceof Keyword;
    }

    /**
     * The brace at the beginning of a block; null where there is none, and where anything is wrong before it: at its first word the parser says
     * what was missing before, and where it goes on after an error in its head hangs on all around the block.
     */
    private static ILeafNode open(ICompositeNode node) {
        for (ILeafNode leaf : node.getLeafNodes()) {
            if (leaf.getSyntaxErrorMessage() != null) {
                return null;
            }
            if (leaf.getParent() == node && isKeyword(leaf) && leaf.getText().equals("{")) {
                return leaf;
            }
        }
        return null;
    }

    /**
     * The brace at the end of a block; null where there is none, and where the parser came to it only by leaving out the word before it: then it
     * still counts as being in trouble after the block.
     */
    private static ILeafNode close(ICompositeNode node) {
        ILeafNode before = null;
        ILeafNode last = null;
        for (ILeafNode leaf : node.getLeafNodes()) {
            if (!leaf.isHidden()) {
                before = last;
                last = leaf;
            }
        }
        return before != null && before.getGrammarElement() instanceof AbstractElement && isKeyword(last) && last.getText().equals("}")
                && last.getParent() == node ? last : null;
    }

    /** Null when there is nothing but what is missing. */
    private static ILeafNode firstWord(ICompositeNode node) {
        for (ILeafNode leaf : node.getLeafNodes()) {
            if (!leaf.isHidden()) {
                return leaf;
            }
        }
        return null;
    }

    private Optional<IParseResult> inBlock(IParser parser, IParseResult before, Block block, ReplaceRegion change) {
        String text = insertChangeIntoReplaceRegion(block.node, change);
        if (text.chars().filter(sign -> sign == '{').count() + block.depth > DepthLexer.DEEPEST) {
            return Optional.empty();
        }
        ILeafNode next = Leaves.wordAfter(block.node);
        IParseResult parsed;
        try {
            parsed = ((PatientParser) parser).parse(block.call, text, block.node.getLookAhead(), next == null ? "" : next.getText());
        } catch (ParseException e) {
            // The platform's way, for a text that its parser cannot take in part.
            return Optional.empty();
        }
        if (!(parsed.getRootNode().getFirstChild() instanceof ICompositeNode node) || node.hasNextSibling() || !endsAsBefore(node, block)) {
            return Optional.empty();
        }
        EObject object = parsed.getRootASTElement();
        if (object == null || object.eClass() != block.object.eClass()) {
            return Optional.empty();
        }
        KnownErrors errors = KnownErrors.of(before, block.node, parsed);
        ICompositeNode root = before.getRootNode();
        String whole = insertChangeIntoReplaceRegion(root, change);
        splicing.put(block.node, block.object, parsed.getRootNode(), node, object);
        splicing.setCompleteContent(root, whole);
        return Optional.of(errors);
    }

    /** Whether the block ends with its own brace, and all other braces are in pairs. */
    private static boolean endsAsBefore(ICompositeNode node, Block block) {
        int braces = 0;
        for (ILeafNode leaf : node.getLeafNodes()) {
            if (!leaf.isHidden()) {
                braces += leaf.getText().equals("{") ? 1 : leaf.getText().equals("}") ? -1 : 0;
            }
        }
        ILeafNode close = close(node);
        return close != null && braces == 0 && close.getTotalEndOffset() == node.getTotalEndOffset()
                && close.getGrammarElement() == block.close.getGrammarElement();
    }
}
