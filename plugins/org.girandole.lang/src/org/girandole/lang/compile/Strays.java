package org.girandole.lang.compile;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;

/** Words and signs that begin nothing. */
final class Strays {
    private Strays() {
    }

    /** @param what what should begin here, with article */
    static void report(Compilation compilation, EObject owner, EStructuralFeature feature, String word, String what,
            Collection<String> known, String remedy) {
        if (word == null) {
            return;
        }
        Optional<String> near = Words.nearest(word, known);
        compilation.problems().report(LanguageRules.SYNTAX, "'" + Words.shown(word) + "' does not begin " + what
                + near.map(n -> "; did you mean " + n + "?").orElse("")).found(Words.shown(word), Words.or(known))
                .remedy(near.map(n -> "write " + n).or(() -> Signs.remedy(word)).orElse(remedy)).data(near.map(n -> Map.of("replace", n)).orElse(Map.of()))
                .at(compilation.sources().of(owner, feature));
    }
}
