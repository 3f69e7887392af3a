package org.girandole.lang.formatting2;

import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.girandole.lang.show.Point;

/** Single words and signs of a script, and the space between them within a line. */
final class Tokens {
    /** Rules whose words stand close together. */
    private static final Set<String> CLOSE = Set.of("Unit", "RuleId", "Division", "SignedNumber", "NonDrop", "AllFireKey", "NoFireKey");

    private Tokens() {
    }

    /** The text of a token: several words of one token are separated by one space, or none where they belong close together. */
    static String canonical(ISemanticRegion token) {
        String text = token.getText();
        if (text.startsWith("\"") || text.indexOf('\n') < 0 && text.indexOf(' ') < 0 && text.indexOf('\t') < 0
                || text.contains("//") || text.contains("/*")) {
            return text;
        }
        String one = text.strip().replaceAll("\\s+", " ");
        return token.getGrammarElement() instanceof RuleCall call && CLOSE.contains(call.getRule().getName()) ? one.replace(" ", "")
                : one.replace(" - ", "-");
    }

    /** Spaces between two tokens that follow each other in a line. */
    static int space(ISemanticRegion before, ISemanticRegion after) {
        String left = before.getText();
        String right = after.getText();
        if (right.equals(",") || right.equals(")") || left.equals("(") || right.equals("/") || left.equals("/")) {
            return 0;
        }
        if (right.equals("(")) {
            return after.getSemanticElement() instanceof Point ? 1 : 0;
        }
        return left.equals("-") && isSign(before) ? 0 : 1;
    }

    /** Whether a minus belongs to the number after it. */
    private static boolean isSign(ISemanticRegion minus) {
        EObject element = minus.getGrammarElement();
        Assignment assignment = GrammarUtil.containingAssignment(element);
        return assignment != null && assignment.getFeature().equals("negative");
    }
}
