package org.girandole.lang.ide.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.girandole.lang.parsing.SharedEnds;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SectionDef;

/**
 * The blocks of a score in which a text is about to be changed, with what stands in them.
 *
 * @param levels from the innermost outwards
 */
record EditedBlock(List<Level> levels) {
    /** A block with all that stands in it, in order. */
    record Level(EObject block, List<EObject> content) {
    }

    /** No level when the change is in no score. */
    static EditedBlock at(IParseResult before, int offset) {
        List<Level> levels = new ArrayList<>();
        for (EObject object = before == null ? null : object(before.getRootNode(), offset); object != null; object = object.eContainer()) {
            if (object instanceof SectionDef || object instanceof RepeatBlock || object instanceof ScoreDef || object instanceof FigureDef) {
                levels.add(new Level(object, List.copyOf(object.eContents())));
            }
        }
        return new EditedBlock(levels);
    }

    private static EObject object(ICompositeNode root, int offset) {
        ILeafNode leaf = root == null || offset >= root.getTotalEndOffset() ? null : NodeModelUtils.findLeafNodeAtOffset(root, offset);
        return leaf == null ? null : NodeModelUtils.findActualSemanticObjectFor(leaf);
    }

    /** What was parsed again, when that is nothing but lines of one block, and none with a name that others may refer to. */
    Optional<List<EObject>> parsedAgain(IParseResult after) {
        return levels.stream().filter(level -> EcoreUtil.getRootContainer(level.block) == after.getRootASTElement()).findFirst()
                .flatMap(level -> changed(level.content, List.copyOf(level.block.eContents())));
    }

    private static Optional<List<EObject>> changed(List<EObject> before, List<EObject> now) {
        SharedEnds ends = SharedEnds.of(before, now, (one, other) -> one == other);
        List<EObject> gone = ends.between(before);
        List<EObject> come = ends.between(now);
        return gone.stream().allMatch(EditedBlock::nameless) && come.stream().allMatch(EditedBlock::nameless) ? Optional.of(come)
                : Optional.empty();
    }

    private static boolean nameless(EObject line) {
        if (line instanceof Named named && named.getName() != null) {
            return false;
        }
        for (TreeIterator<EObject> inside = line.eAllContents(); inside.hasNext();) {
            if (inside.next() instanceof Named named && named.getName() != null) {
                return false;
            }
        }
        return true;
    }
}
