package org.girandole.lang.compile;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.Quantity;

/** A length with a sign for inches or feet in place of their names. A quote is no unit of the language: texts stand in it. */
final class LengthSigns {
    private static final Pattern INCHES = Pattern.compile("[\"\u2033\u201C\u201D]|''|\u2019\u2019|\u2032\u2032");
    private static final Pattern FEET = Pattern.compile("['\u2019\u2032]");

    private LengthSigns() {
    }

    /** Whether such a sign follows a number without a unit; then that is reported. */
    static boolean report(Problems problems, Sources sources, Quantity number, Range range) {
        return range.dimension() == Dimension.LENGTH
                && (report(problems, sources, number, range, INCHES, "in") || report(problems, sources, number, range, FEET, "ft"));
    }

    private static boolean report(Problems problems, Sources sources, Quantity number, Range range, Pattern signs, String unit) {
        ICompositeNode node = NodeModelUtils.findActualNodeFor(number);
        if (node == null) {
            return false;
        }
        String text = node.getRootNode().getText();
        Matcher sign = signs.matcher(text).region(node.getEndOffset(), text.length());
        if (!sign.lookingAt()) {
            return false;
        }
        String written = Sources.text(number) + sign.group();
        String better = Sources.text(number) + " " + unit;
        problems.report(LanguageRules.MISSING_UNIT, written + " has a sign in place of its unit; such " + range.what() + " is written as " + better)
                .found(written, better).remedy("write " + better).data(Map.of("replace", better))
                .at(sources.of(number.eResource(), node, node.getOffset(), sign.end()));
        return true;
    }
}
