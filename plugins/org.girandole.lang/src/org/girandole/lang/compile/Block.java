package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.ParserRule;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.CountField;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.QuantityField;
import org.girandole.lang.show.UnknownField;
import org.girandole.plan.script.Measured;

/** The lines of one block by their first words. Unknown and repeated ones are reported when the block is opened. */
final class Block {
    /** The key of the one line that begins with a number, the tubes of a rack. */
    static final String TUBES = "tubes";
    private static final String KEY = "key";

    private final Compilation compilation;
    private final EObject owner;
    private final String what;
    private final Map<String, List<Field>> fields = new HashMap<>();
    private boolean unknown;

    /**
     * @param what the block in words, with article
     * @param lines the rule of the grammar that its lines follow
     * @param repeatable first words that may come more than once
     */
    Block(Compilation compilation, EObject owner, List<Field> written, String what, ParserRule lines, Set<String> repeatable) {
        this.compilation = compilation;
        this.owner = owner;
        this.what = what;
        Field before = null;
        for (Field field : written) {
            if (field instanceof UnknownField stray) {
                unknown = true;
                if (before instanceof GroupDef && Joints.is(stray.getKey())) {
                    Joints.report(compilation, stray, eINSTANCE.getUnknownField_Key(), stray.getKey(), Joints.WRITE_COMMA);
                } else if (!(before instanceof UnknownField same) || !same.getValues().isEmpty()) {
                    // Several unknown words in a row are one slip: "colr red".
                    unknown(stray, Vocabulary.of(lines));
                }
                before = stray;
                continue;
            }
            before = field;
            String key = key(field);
            List<Field> same = fields.computeIfAbsent(key, k -> new ArrayList<>());
            if (!same.isEmpty() && !repeatable.contains(key)) {
                compilation.problems().report(LanguageRules.REPEATED_FIELD, "'" + key + "' is said twice in " + what)
                        .found("twice", "once")
                        .remedy("keep one of the two").at(compilation.sources().of(field, keyFeature(field)));
            }
            same.add(field);
        }
    }

    private void unknown(UnknownField field, List<String> known) {
        if (field.getKey() == null) {
            return;
        }
        String written = Sources.text(field, eINSTANCE.getUnknownField_Key());
        if (written.isEmpty() || !Character.isLetter(written.charAt(0)) && written.charAt(0) != '_' && written.charAt(0) != '^') {
            compilation.problems().report(LanguageRules.SYNTAX, "'" + Words.shown(field.getKey()) + "' cannot stand here in " + what)
                    .found(Words.shown(field.getKey()), Words.or(known))
                    .remedy(Signs.remedy(written).orElse("take it out"))
                    .at(compilation.sources().of(field, eINSTANCE.getUnknownField_Key()));
            return;
        }
        Optional<String> near = Words.nearest(field.getKey(), known);
        compilation.problems().report(LanguageRules.UNKNOWN_FIELD, "'" + field.getKey() + "' is nothing that can be said of " + what
                + near.map(word -> "; did you mean " + word + "?").orElse("")).found(field.getKey(), Words.or(known))
                .remedy(near.map(word -> "write " + word).orElse("leave it out, or put it where it belongs"))
                .data(near.map(word -> Map.of("replace", word)).orElse(Map.of()))
                .at(compilation.sources().of(field, eINSTANCE.getUnknownField_Key()));
    }

    private static String key(Field field) {
        EStructuralFeature feature = field.eClass().getEStructuralFeature(KEY);
        return feature == null || field.eGet(feature) == null ? TUBES : (String) field.eGet(feature);
    }

    private static EStructuralFeature keyFeature(Field field) {
        EStructuralFeature feature = field.eClass().getEStructuralFeature(KEY);
        return feature == null ? eINSTANCE.getTubesField_Runs() : feature;
    }

    /** The last line that begins with these words. */
    <T extends Field> Optional<T> field(String key, Class<T> type) {
        List<Field> same = fields.getOrDefault(key, List.of());
        return same.isEmpty() || !type.isInstance(same.get(same.size() - 1)) ? Optional.empty()
                : Optional.of(type.cast(same.get(same.size() - 1)));
    }

    <T extends Field> List<T> all(String key, Class<T> type) {
        return fields.getOrDefault(key, List.of()).stream().filter(type::isInstance).map(type::cast).toList();
    }

    /** Whether some line of it was not understood; that has been reported. */
    boolean hasUnknown() {
        return unknown;
    }

    boolean has(String key) {
        return fields.containsKey(key);
    }

    Optional<Double> si(String key, Range range) {
        return field(key, QuantityField.class).flatMap(field -> compilation.quantities().si(field.getQuantity(), range));
    }

    Optional<Long> us(String key, Range range) {
        return field(key, QuantityField.class).flatMap(field -> compilation.quantities().us(field.getQuantity(), range));
    }

    Optional<Measured> measured(String key, Range range) {
        return field(key, QuantityField.class).filter(field -> field.getQuantity() != null)
                .flatMap(field -> compilation.quantities().measured(field.getQuantity(), range));
    }

    OptionalInt count(String key, String countOf, int least, int most) {
        Optional<CountField> field = field(key, CountField.class);
        return field.isEmpty() ? OptionalInt.empty()
                : compilation.quantities().whole(field.get(), eINSTANCE.getCountField_Count(), field.get().getCount(), countOf, least, most);
    }

    /** Reports that something is not said at all. When it is said, but wrong, that has been reported already. */
    void missing(String key, String example) {
        if (!has(key)) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, "There is no " + key + " in " + what).found("nothing", key)
                    .remedy("write " + example).at(compilation.sources().of(owner));
        }
    }
}
