package org.girandole.lang.ide.fixes;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.ide.completion.Free;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.CheckedText;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.Script;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;

/** A finding in the text that it was found in. */
record Case(ScriptView view, CheckedScript checked, Finding finding) {
    Optional<String> data(String key) {
        return Optional.ofNullable(finding.data().get(key));
    }

    Optional<Long> number(String key) {
        return data(key).map(Long::valueOf);
    }

    Optional<Plan> plan() {
        return checked.plan();
    }

    Optional<Free> free() {
        return plan().map(Free::new);
    }

    /** Whether another finding stands in the text that is looked at, unchanged since the check. */
    boolean isInView(Finding other) {
        CheckedText text = checked.texts().get(other.source().file());
        return text != null && text.uri().equals(view.uri()) && text.lines().text().equals(view.lines().text());
    }

    Range range() {
        return view.lines().range(finding.source());
    }

    String text() {
        int from = view.lines().offset(range().getStart());
        return view.lines().text().substring(from, view.lines().offset(range().getEnd()));
    }

    /** The innermost object of a type at the beginning of the finding. */
    <T extends EObject> Optional<T> at(Class<T> type) {
        ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(view.resource().getParseResult().getRootNode(),
                view.lines().offset(range().getStart()));
        EObject object = leaf == null ? null : NodeModelUtils.findActualSemanticObjectFor(leaf);
        while (object != null && !type.isInstance(object)) {
            object = object.eContainer();
        }
        return Optional.ofNullable(type.cast(object));
    }

    /** Everything of a kind that the script and the files it uses define. */
    <T extends Element> Stream<T> defined(Class<T> type) {
        return view.resource().getResourceSet().getResources().stream().flatMap(resource -> resource.getContents().stream())
                .filter(Script.class::isInstance).flatMap(script -> ((Script) script).getElements().stream()).filter(type::isInstance).map(type::cast);
    }

    /** The text of the file that something is written in, which need not be that of the finding; empty when it has changed since the check. */
    Optional<CheckedText> textOf(INode node) {
        String root = node.getRootNode().getText();
        return checked.texts().values().stream().filter(text -> text.lines().text().equals(root)).findFirst();
    }

    Fix fix(String title, TextEdit... edits) {
        return new Fix(title, Map.of(view.uri(), java.util.List.of(edits)));
    }

    TextEdit replace(String text) {
        return new TextEdit(range(), text);
    }

    TextEdit replace(INode node, String text) {
        return new TextEdit(view.lines().range(node.getOffset(), node.getEndOffset()), text);
    }

    TextEdit insert(int offset, String text) {
        Position at = view.lines().position(offset);
        return new TextEdit(new Range(at, at), text);
    }

    /** A line of its own at the end of the script. */
    TextEdit append(String line) {
        String text = view.lines().text();
        return insert(text.length(), (text.isEmpty() || text.endsWith("\n") ? "" : "\n") + line + "\n");
    }

    /** Takes something out, with its line when nothing else stands there. */
    TextEdit remove(INode node) {
        String text = view.lines().text();
        int from = node.getOffset();
        int to = node.getEndOffset();
        int lineStart = text.lastIndexOf('\n', from - 1) + 1;
        int lineEnd = text.indexOf('\n', to);
        lineEnd = lineEnd < 0 ? text.length() : lineEnd + 1;
        if (text.substring(lineStart, from).isBlank() && text.substring(to, lineEnd).isBlank()) {
            return new TextEdit(view.lines().range(lineStart, lineEnd), "");
        }
        while (from > lineStart && text.charAt(from - 1) == ' ') {
            from--;
        }
        return new TextEdit(view.lines().range(from, to), "");
    }
}
