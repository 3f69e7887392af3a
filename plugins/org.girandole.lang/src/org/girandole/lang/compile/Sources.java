package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.util.LineAndColumn;
import org.girandole.lang.show.Named;
import org.girandole.plan.script.SourceRef;

/** Where things are written. */
public final class Sources {
    private final Function<URI, String> relative;
    private final Map<Resource, String> files = new IdentityHashMap<>();

    /** @param relative gives a file as the user knows it: relative to the project root */
    public Sources(Function<URI, String> relative) {
        this.relative = relative;
    }

    public String file(Resource resource) {
        return files.computeIfAbsent(resource, r -> relative.apply(r.getURI()));
    }

    /** The name of something that has one, else all of it. */
    public SourceRef of(EObject object) {
        return object instanceof Named named && named.getName() != null ? of(object, eINSTANCE.getNamed_Name()) : whole(object);
    }

    /** All of an object's text. */
    public SourceRef whole(EObject object) {
        ICompositeNode node = NodeModelUtils.findActualNodeFor(object);
        return node == null ? start(object.eResource()) : of(object.eResource(), node);
    }

    /** The text of a feature, or of the whole object when the feature is not written. */
    public SourceRef of(EObject object, EStructuralFeature feature) {
        return of(object, feature, 0);
    }

    public SourceRef of(EObject object, EStructuralFeature feature, int index) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(object, feature);
        return index < nodes.size() ? of(object.eResource(), nodes.get(index)) : whole(object);
    }

    /** From the start of an object to the end of one of its features; all of it when that is not written. */
    public SourceRef upTo(EObject object, EStructuralFeature feature) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(object, feature);
        ICompositeNode node = NodeModelUtils.findActualNodeFor(object);
        if (node == null || nodes.isEmpty()) {
            return whole(object);
        }
        return of(object.eResource(), node, node.getOffset(), nodes.get(nodes.size() - 1).getEndOffset());
    }

    public SourceRef of(Resource resource, INode node) {
        return of(resource, node, node.getOffset(), node.getEndOffset());
    }

    /** A stretch of text, given by its offsets. */
    public SourceRef of(Resource resource, INode anyNode, int from, int to) {
        LineAndColumn start = NodeModelUtils.getLineAndColumn(anyNode, from);
        return new SourceRef(file(resource), start.getLine(), start.getColumn(), Math.max(1, to - from));
    }

    /** The beginning of a file. */
    public SourceRef start(Resource resource) {
        return new SourceRef(file(resource), 1, 1, 1);
    }

    /** What is written for an object, to the letter. */
    public static String written(EObject object) {
        INode node = NodeModelUtils.findActualNodeFor(object);
        return node == null ? "" : node.getRootNode().getText().substring(node.getOffset(), node.getEndOffset());
    }

    /** What is written for an object, on one line. */
    public static String text(EObject object) {
        INode node = NodeModelUtils.findActualNodeFor(object);
        return node == null ? "" : Words.shown(NodeModelUtils.getTokenText(node));
    }

    /** All that is written for an object, on one line, however long. */
    public static String line(EObject object) {
        INode node = NodeModelUtils.findActualNodeFor(object);
        return node == null ? "" : NodeModelUtils.getTokenText(node).strip().replaceAll("\\s+", " ");
    }

    /** What is written for a feature, or an empty text. */
    public static String text(EObject object, EStructuralFeature feature) {
        return text(object, feature, 0);
    }

    /** The name written for a reference, without the sign that escapes it. */
    public static String name(EObject object, EStructuralFeature feature) {
        String text = text(object, feature);
        return text.startsWith("^") ? text.substring(1) : text;
    }

    public static String text(EObject object, EStructuralFeature feature, int index) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(object, feature);
        return index < nodes.size() ? NodeModelUtils.getTokenText(nodes.get(index)) : "";
    }
}
