package org.girandole.lang.parsing;

import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/** The words around a node, from neighbour to neighbour: to look for a place in the whole text goes through much of it each time. */
final class Leaves {
    private Leaves() {
    }

    /** The last leaf before a node that is neither space nor comment; null when there is none. */
    static ILeafNode wordBefore(INode node) {
        INode at = before(node);
        while (at != null && !(at instanceof ILeafNode leaf && !leaf.isHidden())) {
            at = before(at);
        }
        return (ILeafNode) at;
    }

    /** The first such leaf after a node; null when there is none. */
    static ILeafNode wordAfter(INode node) {
        INode at = after(node);
        while (at != null && !(at instanceof ILeafNode leaf && !leaf.isHidden())) {
            at = after(at);
        }
        return (ILeafNode) at;
    }

    /** The nearest node without children before this one. */
    private static INode before(INode node) {
        INode at = node;
        while (at != null && !at.hasPreviousSibling()) {
            at = at.getParent();
        }
        at = at == null ? null : at.getPreviousSibling();
        while (at instanceof ICompositeNode composite && composite.hasChildren()) {
            at = composite.getLastChild();
        }
        return at;
    }

    private static INode after(INode node) {
        INode at = node;
        while (at != null && !at.hasNextSibling()) {
            at = at.getParent();
        }
        at = at == null ? null : at.getNextSibling();
        while (at instanceof ICompositeNode composite && composite.hasChildren()) {
            at = composite.getFirstChild();
        }
        return at;
    }
}
