package org.girandole.lang.compile;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.LanguageRules;

/** A number that is written with a comma, as many countries do: its part before the comma is read as a number of its own. */
final class DecimalComma {
    private static final Pattern REST = Pattern.compile(",([0-9]+)");

    private DecimalComma() {
    }

    /** Whether what follows a number without a unit is the rest of it; then that is reported. */
    static boolean report(Problems problems, Sources sources, EObject number) {
        ICompositeNode node = NodeModelUtils.findActualNodeFor(number);
        if (node == null) {
            return false;
        }
        String text = node.getRootNode().getText();
        Matcher rest = REST.matcher(text).region(node.getEndOffset(), text.length());
        if (!rest.lookingAt()) {
            return false;
        }
        String whole = Sources.text(number);
        problems.report(LanguageRules.SYNTAX, "'" + whole + rest.group() + "' is written with a comma")
                .found(whole + rest.group(), "a point, as in " + whole + "." + rest.group(1)).remedy("write " + whole + "." + rest.group(1))
                .at(sources.of(number.eResource(), node, node.getOffset(), node.getEndOffset() + rest.group().length()));
        return true;
    }
}
