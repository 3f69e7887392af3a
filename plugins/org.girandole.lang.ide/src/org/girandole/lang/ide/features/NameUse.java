package org.girandole.lang.ide.features;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.show.Named;

/**
 * A place where a name is written: where the thing is defined, or where it is used.
 *
 * @param target what the name stands for
 * @param node the name
 */
record NameUse(Named target, INode node, boolean definition) {
    /** The name at an offset; empty when there is none, or none that leads anywhere. */
    static Optional<NameUse> at(ScriptView view, int offset) {
        INode node = view.leaf(offset).orElse(null);
        for (INode n = node; n != null; n = n.getParent()) {
            if (n.getGrammarElement() instanceof CrossReference reference) {
                EObject owner = NodeModelUtils.findActualSemanticObjectFor(n);
                EReference feature = owner == null ? null : GrammarUtil.getReference(reference, owner.eClass());
                return feature != null && owner.eGet(feature) instanceof Named target && !target.eIsProxy()
                        ? Optional.of(new NameUse(target, n, false)) : Optional.empty();
            }
            if (n.getGrammarElement() instanceof RuleCall call && definesName(call)
                    && NodeModelUtils.findActualSemanticObjectFor(n) instanceof Named named) {
                return named.getName() == null ? Optional.empty() : Optional.of(new NameUse(named, n, true));
            }
        }
        return Optional.empty();
    }

    private static boolean definesName(RuleCall call) {
        Assignment assignment = GrammarUtil.containingAssignment(call);
        return assignment != null && assignment.getFeature().equals(eINSTANCE.getNamed_Name().getName());
    }

    /** Where a thing's name is defined. */
    static Optional<INode> definition(Named target) {
        return NodeModelUtils.findNodesForFeature(target, nameFeature(target)).stream().findFirst();
    }

    private static EStructuralFeature nameFeature(Named target) {
        return target.eClass().getEStructuralFeature(eINSTANCE.getNamed_Name().getName());
    }

    /** All uses of a thing in some scripts, without its definition, in the order of the text of each. */
    static List<Found> uses(Named target, Collection<XtextResource> scripts) {
        List<Found> found = new ArrayList<>();
        for (XtextResource script : scripts) {
            for (Iterator<EObject> all = script.getAllContents(); all.hasNext();) {
                EObject object = all.next();
                for (EReference reference : object.eClass().getEAllReferences()) {
                    if (!reference.isContainment() && !reference.isContainer() && object.eGet(reference) == target) {
                        NodeModelUtils.findNodesForFeature(object, reference).stream().findFirst()
                                .ifPresent(node -> found.add(new Found(script, node)));
                    }
                }
            }
        }
        return found;
    }

    /** A use, and the script that it is in. */
    record Found(XtextResource script, INode node) {
    }
}
