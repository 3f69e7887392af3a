package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.WordField;

/** Words of which only a few are possible, and which are not worth being keywords. */
final class Choices {
    private Choices() {
    }

    static Optional<String> word(Compilation compilation, WordField field, List<String> possible) {
        return word(compilation, field, eINSTANCE.getWordField_Word(), 0, field.getWord(), possible);
    }

    static Optional<String> word(Compilation compilation, EObject owner, EStructuralFeature feature, int index, String word,
            List<String> possible) {
        if (word == null || possible.contains(word)) {
            return Optional.ofNullable(word);
        }
        Optional<String> near = Words.nearest(word, possible);
        compilation.problems().report(LanguageRules.UNKNOWN_WORD, "'" + word + "' is not possible here"
                + near.map(n -> "; did you mean " + n + "?").orElse("")).found(word, Words.or(possible))
                .remedy("write " + Words.or(possible)).data(near.map(n -> Map.of("replace", n)).orElse(Map.of()))
                .at(compilation.sources().of(owner, feature, index));
        return Optional.empty();
    }
}
