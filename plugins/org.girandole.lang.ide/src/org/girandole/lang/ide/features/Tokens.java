package org.girandole.lang.ide.features;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokenModifiers;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.Named;

/** What each word is, for colouring: only token types that the protocol itself names, so that every client has a colour for them. */
public final class Tokens {
    private static final List<String> TYPES = List.of(SemanticTokenTypes.Keyword, SemanticTokenTypes.String, SemanticTokenTypes.Number,
            SemanticTokenTypes.Comment, SemanticTokenTypes.Class, SemanticTokenTypes.EnumMember, SemanticTokenTypes.Event,
            SemanticTokenTypes.Function, SemanticTokenTypes.Parameter, SemanticTokenTypes.Struct, SemanticTokenTypes.Namespace,
            SemanticTokenTypes.Type, SemanticTokenTypes.Operator);
    private static final List<String> MODIFIERS = List.of(SemanticTokenModifiers.Definition);
    private static final int DEFINITION = 1;

    private final ScriptView view;
    private final List<Integer> data = new ArrayList<>();
    private int lastLine;
    private int lastColumn;

    private Tokens(ScriptView view) {
        this.view = view;
    }

    public static SemanticTokensLegend legend() {
        return new SemanticTokensLegend(TYPES, MODIFIERS);
    }

    /** Tokens of the lines from {@code first} to {@code last}, both included. */
    public static SemanticTokens of(ScriptView view, int first, int last) {
        Tokens tokens = new Tokens(view);
        int from = view.lines().offset(new Position(first, 0));
        int to = view.lines().offset(new Position(last, Integer.MAX_VALUE));
        for (ILeafNode leaf : view.root().getLeafNodes()) {
            if (leaf.getEndOffset() > from && leaf.getOffset() < to) {
                tokens.leaf(leaf);
            }
        }
        return new SemanticTokens(tokens.data);
    }

    private void leaf(ILeafNode leaf) {
        String text = leaf.getText();
        if (leaf.isHidden()) {
            if (text.startsWith("//") || text.startsWith("/*")) {
                lines(leaf, SemanticTokenTypes.Comment);
            }
            return;
        }
        char first = text.charAt(0);
        if (first == '"') {
            lines(leaf, SemanticTokenTypes.String);
        } else if (Character.isDigit(first)) {
            add(leaf, SemanticTokenTypes.Number, 0);
        } else if (Character.isLetter(first) || first == '^' || first == '_') {
            word(leaf);
        }
    }

    private void word(ILeafNode leaf) {
        for (INode node = leaf; node != null; node = node.getParent()) {
            EObject element = node.getGrammarElement();
            if (element instanceof CrossReference reference) {
                EObject owner = NodeModelUtils.findActualSemanticObjectFor(node);
                EReference feature = owner == null ? null : GrammarUtil.getReference(reference, owner.eClass());
                Object target = feature == null ? null : owner.eGet(feature);
                (target instanceof Named named && !named.eIsProxy() ? Kind.of(named) : Optional.<Kind>empty())
                        .ifPresent(kind -> add(leaf, type(kind), 0));
                return;
            }
            if (element instanceof RuleCall call && GrammarUtil.containingAssignment(call) != null) {
                String feature = GrammarUtil.containingAssignment(call).getFeature();
                if (feature.equals(eINSTANCE.getNamed_Name().getName())) {
                    Kind.of(NodeModelUtils.findActualSemanticObjectFor(node)).ifPresent(kind -> add(leaf, type(kind), DEFINITION));
                    return;
                }
                if (feature.equals("unit") || feature.equals("toleranceUnit")) {
                    add(leaf, SemanticTokenTypes.Number, 0);
                    return;
                }
                if (feature.equals("rule")) {
                    add(leaf, SemanticTokenTypes.Type, 0);
                    return;
                }
            }
        }
        if (leaf.getGrammarElement() instanceof Keyword) {
            add(leaf, SemanticTokenTypes.Keyword, 0);
        }
    }

    private static String type(Kind kind) {
        return switch (kind) {
            case EFFECT, CHAIN -> SemanticTokenTypes.Class;
            case POSITION, GROUP, AREA -> SemanticTokenTypes.EnumMember;
            case MARK, CUE -> SemanticTokenTypes.Event;
            case FIGURE -> SemanticTokenTypes.Function;
            case PARAMETER -> SemanticTokenTypes.Parameter;
            case MODULE, MODULE_TYPE, RACK, FIRING_SYSTEM, IGNITER, WIRE, LOT -> SemanticTokenTypes.Struct;
            case SHOW, SOUNDTRACK, SECTION, SITE -> SemanticTokenTypes.Namespace;
            case DISTANCES, TABLE -> SemanticTokenTypes.Type;
        };
    }

    /** A token may not go over the end of a line. */
    private void lines(ILeafNode leaf, String type) {
        int from = leaf.getOffset();
        String text = leaf.getText();
        while (!text.isEmpty()) {
            int end = text.indexOf('\n');
            String line = end < 0 ? text : text.substring(0, end);
            if (!line.isBlank()) {
                add(from, line.stripTrailing().length(), type, 0);
            }
            from += line.length() + 1;
            text = end < 0 ? "" : text.substring(end + 1);
        }
    }

    private void add(ILeafNode leaf, String type, int modifiers) {
        add(leaf.getOffset(), leaf.getLength(), type, modifiers);
    }

    private void add(int offset, int length, String type, int modifiers) {
        Position at = view.lines().position(offset);
        data.add(at.getLine() - lastLine);
        data.add(at.getLine() == lastLine ? at.getCharacter() - lastColumn : at.getCharacter());
        data.add(length);
        data.add(TYPES.indexOf(type));
        data.add(modifiers);
        lastLine = at.getLine();
        lastColumn = at.getCharacter();
    }
}
