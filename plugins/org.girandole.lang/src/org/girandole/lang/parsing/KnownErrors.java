package org.girandole.lang.parsing;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.ParseResult;

/** A parsed text of which it is known where it cannot be read: to look for that anew goes through all of it. */
final class KnownErrors extends ParseResult {
    private final List<INode> errors;

    private KnownErrors(EObject object, ICompositeNode root, List<INode> errors) {
        super(object, root, !errors.isEmpty());
        this.errors = List.copyOf(errors);
    }

    /**
     * The errors of a text of which one block was parsed again.
     *
     * @param block as it was before, still in its place
     * @param again the block as it is now
     */
    static KnownErrors of(IParseResult before, ICompositeNode block, IParseResult again) {
        List<INode> errors = new ArrayList<>();
        List<INode> after = new ArrayList<>();
        for (INode error : before.getSyntaxErrors()) {
            if (!isIn(block, error)) {
                (error.getTotalEndOffset() > block.getTotalOffset() && !isIn(error, block) ? after : errors).add(error);
            }
        }
        again.getSyntaxErrors().forEach(errors::add);
        errors.addAll(after);
        return new KnownErrors(before.getRootASTElement(), before.getRootNode(), errors);
    }

    private static boolean isIn(INode around, INode inside) {
        for (INode node = inside; node != null; node = node.getParent()) {
            if (node == around) {
                return true;
            }
        }
        return false;
    }

    @Override
    public Iterable<INode> getSyntaxErrors() {
        return errors;
    }
}
