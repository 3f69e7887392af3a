package org.girandole.lang.ide.features;

import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.Range;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.ide.server.TextLines;
import org.girandole.lang.show.Script;

/**
 * One script while it is read.
 *
 * @param uri as the client names it
 */
public record ScriptView(String uri, XtextResource resource, TextLines lines) {
    /** The parsed script; empty when there is nothing in it. */
    public Optional<Script> script() {
        return !resource.getContents().isEmpty() && resource.getContents().get(0) instanceof Script script
                ? Optional.of(script) : Optional.empty();
    }

    ICompositeNode root() {
        return resource.getParseResult().getRootNode();
    }

    /** The token at an offset, or the one that ends there when the offset is behind a word. */
    Optional<ILeafNode> leaf(int offset) {
        ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(root(), offset);
        if ((leaf == null || leaf.isHidden() || !isWord(leaf)) && offset > 0) {
            ILeafNode before = NodeModelUtils.findLeafNodeAtOffset(root(), offset - 1);
            if (before != null && !before.isHidden() && isWord(before)) {
                return Optional.of(before);
            }
        }
        return Optional.ofNullable(leaf);
    }

    private static boolean isWord(ILeafNode leaf) {
        return Character.isJavaIdentifierPart(leaf.getText().charAt(leaf.getText().length() - 1));
    }

    Range range(INode node) {
        return lines.range(node.getOffset(), node.getEndOffset());
    }

    /** All that is written for an object, without the space before it. */
    Optional<Range> range(EObject object) {
        return Optional.ofNullable(NodeModelUtils.findActualNodeFor(object)).map(this::range);
    }

    /** The innermost object of a type around an offset. */
    <T extends EObject> Optional<T> around(int offset, Class<T> type) {
        EObject object = leaf(offset).map(NodeModelUtils::findActualSemanticObjectFor).orElse(null);
        while (object != null && !type.isInstance(object)) {
            object = object.eContainer();
        }
        return Optional.ofNullable(type.cast(object));
    }
}
