package org.girandole.lang.compile;

import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;

/** Words and signs with which people join positions, where the language has commas. */
public final class Joints {
    public static final String COMMA = "a comma";
    public static final String WRITE_COMMA = "write a comma in its place";
    /** Where a comma stands already. */
    public static final String LEAVE_OUT = "leave it out: the comma is enough";

    private static final Set<String> WRITTEN = Set.of("and", "&", "+");

    private Joints() {
    }

    public static boolean is(String word) {
        return WRITTEN.contains(word);
    }

    public static String message(String word) {
        return "Positions are joined by commas, not by '" + word + "'";
    }

    static void report(Compilation compilation, EObject owner, EStructuralFeature feature, String word, String remedy) {
        compilation.problems().report(LanguageRules.SYNTAX, message(word)).found(word, COMMA).remedy(remedy)
                .at(compilation.sources().of(owner, feature));
    }
}
