package org.girandole.lang.ide.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.girandole.lang.show.CueLine;

/**
 * The cue line in which a text is about to be changed, with the lines around it. A change that touches its ends may be parsed as one of its
 * neighbours.
 *
 * @param block what the line stands in
 * @param siblings all that stands in it
 * @param first which of these is the first that may be parsed again
 * @param last which is the last
 */
record EditedLine(EObject block, List<EObject> siblings, int first, int last) {

    /** Empty when the change is in no cue line. */
    static Optional<EditedLine> at(IParseResult before, int offset, int length) {
        if (before == null || before.getRootNode() == null) {
            return Optional.empty();
        }
        return line(before.getRootNode(), offset).or(() -> line(before.getRootNode(), offset - 1)).flatMap(cue -> {
            ICompositeNode node = NodeModelUtils.findActualNodeFor(cue);
            EObject block = cue.eContainer();
            if (node == null || block == null || offset < node.getTotalOffset() || offset + length > node.getEndOffset()) {
                return Optional.empty();
            }
            List<EObject> siblings = List.copyOf(block.eContents());
            int index = siblings.indexOf(cue);
            return Optional.of(new EditedLine(block, siblings, offset > node.getOffset() ? index : index - 1,
                    offset + length < node.getEndOffset() ? index : index + 1));
        });
    }

    private static Optional<CueLine> line(ICompositeNode root, int offset) {
        ILeafNode leaf = offset < 0 ? null : NodeModelUtils.findLeafNodeAtOffset(root, offset);
        return leaf == null ? Optional.empty()
                : Optional.ofNullable(EcoreUtil2.getContainerOfType(NodeModelUtils.findActualSemanticObjectFor(leaf), CueLine.class));
    }

    /** The lines that may have been parsed again; empty when more was, or when a line has a name that others may refer to. */
    Optional<List<CueLine>> parsedAgain(IParseResult after) {
        List<EObject> now = List.copyOf(block.eContents());
        if (EcoreUtil.getRootContainer(block) != after.getRootASTElement() || now.size() != siblings.size()) {
            return Optional.empty();
        }
        List<CueLine> lines = new ArrayList<>();
        for (int i = 0; i < now.size(); i++) {
            boolean near = first <= i && i <= last;
            if (near && unnamed(now.get(i)) && unnamed(siblings.get(i))) {
                lines.add((CueLine) now.get(i));
            } else if (near || now.get(i) != siblings.get(i)) {
                return Optional.empty();
            }
        }
        return Optional.of(lines);
    }

    private static boolean unnamed(EObject line) {
        return line instanceof CueLine cue && cue.getName() == null;
    }
}
