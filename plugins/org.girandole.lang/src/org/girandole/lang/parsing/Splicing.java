package org.girandole.lang.parsing;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.impl.AbstractNode;
import org.eclipse.xtext.nodemodel.impl.CompositeNodeWithSemanticElement;
import org.eclipse.xtext.nodemodel.impl.NodeModelBuilder;
import org.girandole.lang.show.Item;

/**
 * Puts a block that was parsed again into its place. All its lines that read as before stay the objects they were: they need not be linked
 * again.
 */
final class Splicing extends NodeModelBuilder {
    private static final String ITEMS = "items";

    /**
     * Replaces a block.
     *
     * @param again the root that the parser gave for the new one
     */
    void put(ICompositeNode oldNode, EObject oldBlock, ICompositeNode again, ICompositeNode newNode, EObject newBlock) {
        if (!keepLines(oldNode, oldBlock, newNode, newBlock)) {
            EcoreUtil.replace(oldBlock, newBlock);
        }
        replaceAndTransferLookAhead(oldNode, again);
    }

    /** Keeps the old block with all its lines at the beginning and at the end that read as before; false, with nothing changed, when it cannot. */
    @SuppressWarnings("unchecked")
    private boolean keepLines(ICompositeNode oldNode, EObject oldBlock, ICompositeNode newNode, EObject newBlock) {
        List<ICompositeNode> before = parts(oldNode);
        List<ICompositeNode> now = parts(newNode);
        SharedEnds ends = SharedEnds.of(before, now, Splicing::same);
        List<EObject> gone = items(ends.between(before), oldBlock);
        List<EObject> come = items(ends.between(now), newBlock);
        if (gone.size() != ends.between(before).size() || come.size() != ends.between(now).size()
                || !(oldNode instanceof CompositeNodeWithSemanticElement oldAdapter)
                || !(newNode instanceof CompositeNodeWithSemanticElement newAdapter)) {
            return false;
        }
        if (!gone.isEmpty() || !come.isEmpty()) {
            List<EObject> items = (List<EObject>) oldBlock.eGet(oldBlock.eClass().getEStructuralFeature(ITEMS));
            items.removeAll(gone);
            items.addAll(items(before.subList(0, ends.first()), oldBlock).size(), come);
        }
        for (int i = 0; i < ends.first(); i++) {
            replaceWithoutChildren((AbstractNode) now.get(i), (AbstractNode) before.get(i));
        }
        for (int i = 1; i <= ends.last(); i++) {
            replaceWithoutChildren((AbstractNode) now.get(now.size() - i), (AbstractNode) before.get(before.size() - i));
        }
        oldBlock.eAdapters().remove(oldAdapter);
        newBlock.eAdapters().remove(newAdapter);
        associateWithSemanticElement(newNode, oldBlock);
        return true;
    }

    private static List<ICompositeNode> parts(ICompositeNode block) {
        List<ICompositeNode> parts = new ArrayList<>();
        for (INode child : block.getChildren()) {
            if (child instanceof ICompositeNode part) {
                parts.add(part);
            }
        }
        return parts;
    }

    /** Those of the parts that are lines of the block. */
    private static List<EObject> items(List<ICompositeNode> parts, EObject block) {
        return parts.stream().map(Splicing::object).filter(object -> object instanceof Item && object.eContainer() == block).toList();
    }

    /** What a part means: rules that only call another have a node of their own around that. Null when it means nothing. */
    private static EObject object(ICompositeNode part) {
        ICompositeNode node = part;
        while (!node.hasDirectSemanticElement() && node.getFirstChild() instanceof ICompositeNode inner && !inner.hasNextSibling()) {
            node = inner;
        }
        return node.hasDirectSemanticElement() ? node.getSemanticElement() : null;
    }

    /** Whether two parts read the same, were read in the same way, and have nothing wrong in them. */
    private static boolean same(ICompositeNode one, ICompositeNode other) {
        if (!one.getText().equals(other.getText())) {
            return false;
        }
        Iterator<INode> others = other.getAsTreeIterable().iterator();
        for (INode node : one.getAsTreeIterable()) {
            if (!others.hasNext() || !alike(node, others.next())) {
                return false;
            }
        }
        return !others.hasNext();
    }

    private static boolean alike(INode one, INode other) {
        return one.getClass() == other.getClass() && one.getGrammarElement() == other.getGrammarElement()
                && one.getSyntaxErrorMessage() == null && other.getSyntaxErrorMessage() == null
                && (one instanceof ICompositeNode composite ? composite.getLookAhead() == ((ICompositeNode) other).getLookAhead()
                        : one.getTotalLength() == other.getTotalLength());
    }
}
