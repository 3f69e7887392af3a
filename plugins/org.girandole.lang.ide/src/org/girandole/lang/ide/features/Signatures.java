package org.girandole.lang.ide.features;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;

/** What a figure wants, while its values are written. Goes by the words before the caret: a half-written line may have no model yet. */
public final class Signatures {
    private Signatures() {
    }

    public static Optional<SignatureHelp> at(ScriptView view, Lookup lookup, Position caret) {
        int offset = view.lines().offset(caret);
        List<ILeafNode> before = new ArrayList<>();
        for (ILeafNode leaf : view.root().getLeafNodes()) {
            if (leaf.getOffset() >= offset) {
                break;
            }
            if (!leaf.isHidden()) {
                before.add(leaf);
            }
        }
        for (int i = before.size() - 1; i >= 2; i--) {
            String word = before.get(i).getText();
            if (word.equals("(") && before.get(i - 2).getText().equals("play")) {
                return view.script().flatMap(script -> figure(lookup.names(script).in(Space.FIGURE).get(name(before))))
                        .map(figure -> help(figure, commas(before)));
            } else if (word.equals(")") || word.equals("{") || word.equals("}")) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private static String name(List<ILeafNode> before) {
        int i = before.size() - 1;
        while (!before.get(i).getText().equals("(")) {
            i--;
        }
        String name = before.get(i - 1).getText();
        return name.startsWith("^") ? name.substring(1) : name;
    }

    private static int commas(List<ILeafNode> before) {
        int commas = 0;
        for (int i = before.size() - 1; !before.get(i).getText().equals("("); i--) {
            commas += before.get(i).getText().equals(",") ? 1 : 0;
        }
        return commas;
    }

    private static Optional<FigureDef> figure(Named named) {
        return named instanceof FigureDef figure ? Optional.of(figure) : Optional.empty();
    }

    private static SignatureHelp help(FigureDef figure, int active) {
        List<String> names = figure.getParameters().stream().map(Parameter::getName).map(name -> name == null ? "" : name).toList();
        SignatureInformation signature = new SignatureInformation(figure.getName() + "(" + String.join(", ", names) + ")");
        signature.setParameters(names.stream().map(ParameterInformation::new).toList());
        return new SignatureHelp(List.of(signature), 0, Math.min(active, Math.max(0, names.size() - 1)));
    }
}
