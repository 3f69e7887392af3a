package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.Condition;
import org.girandole.lang.show.KindsClause;
import org.girandole.physics.separation.ArticleKind;
import org.girandole.physics.separation.Flag;
import org.girandole.physics.separation.Quantity;

/** The words of distance tables: what is fired, what can be asked about it, and between which limits. */
final class DistanceWords {
    private static final Map<String, Quantity> QUANTITIES = new LinkedHashMap<>();
    private static final Map<Quantity, Range> RANGES = new LinkedHashMap<>();
    private static final Map<String, Flag> FACTS = new LinkedHashMap<>();

    static {
        quantity("calibre", Quantity.CALIBRE, Range.CALIBRE);
        quantity("height", Quantity.HEIGHT, Range.HEIGHT);
        quantity("debris", Quantity.DEBRIS_RANGE, Range.HEIGHT);
        quantity("structure", Quantity.STRUCTURE, Range.HEIGHT);
        quantity("slope", Quantity.SLOPE, Range.SLOPE);
        quantity("tilt", Quantity.TILT, Range.LEAN);
        quantity("wind", Quantity.WIND, Range.WIND);
        FACTS.put("report", Flag.REPORT);
        FACTS.put("day effect", Flag.DAY_EFFECT);
        FACTS.put("soft break", Flag.SOFT_BREAK);
        FACTS.put("unproved chain", Flag.CHAIN_IN_UNPROVED_RACK);
        FACTS.put("large driver", Flag.LARGE_DRIVER);
        FACTS.put("water", Flag.WATER);
        FACTS.put("special occupancy", Flag.SPECIAL_OCCUPANCY);
    }

    private final Compilation compilation;

    DistanceWords(Compilation compilation) {
        this.compilation = compilation;
    }

    private static void quantity(String word, Quantity quantity, Range range) {
        QUANTITIES.put(word, quantity);
        RANGES.put(quantity, range);
    }

    /** The quantity of that word; another word is reported. */
    Optional<Quantity> quantity(EObject owner, EStructuralFeature feature, String word, List<String> possible) {
        return Choices.word(compilation, owner, feature, 0, word, possible).map(QUANTITIES::get);
    }

    /** What a value that was written is in the unit of the quantity. */
    Optional<Double> value(org.girandole.lang.show.Quantity written, Quantity of) {
        // A slope is written as a share, and kept as metres of rise in a hundred.
        return compilation.quantities().si(written, RANGES.get(of)).map(si -> of == Quantity.SLOPE ? si * 100 : si);
    }

    /** The kinds of article that a rule is for. */
    Optional<List<ArticleKind>> kinds(KindsClause clause) {
        List<String> possible = Stream.of(ArticleKind.values()).map(kind -> kind.name().toLowerCase(Locale.ROOT)).toList();
        List<ArticleKind> kinds = new ArrayList<>();
        for (int i = 0; i < clause.getKinds().size(); i++) {
            Choices.word(compilation, clause, eINSTANCE.getKindsClause_Kinds(), i, clause.getKinds().get(i), possible)
                    .ifPresent(word -> kinds.add(ArticleKind.valueOf(word.toUpperCase(Locale.ROOT))));
        }
        return kinds.size() == clause.getKinds().size() && !kinds.isEmpty() ? Optional.of(kinds) : Optional.empty();
    }

    /** A condition; empty when it is wrong, which is reported. */
    Optional<org.girandole.physics.separation.Condition> condition(Condition written) {
        String words = String.join(" ", written.getWords());
        if (FACTS.containsKey(words)) {
            return fact(written, words);
        }
        if (QUANTITIES.containsKey(words)) {
            return written.getBound() == null ? unbounded(written, words) : range(written, QUANTITIES.get(words));
        }
        List<String> known = Stream.concat(QUANTITIES.keySet().stream(), FACTS.keySet().stream()).toList();
        Optional<String> near = Words.nearest(words, known);
        compilation.problems().report(LanguageRules.UNKNOWN_WORD, "A distance table cannot ask for '" + Words.shown(words) + "'"
                + near.map(n -> "; did you mean " + n + "?").orElse("")).found(Words.shown(words), Words.or(known))
                .remedy("write " + near.orElse("one of these")).data(near.map(n -> Map.of("replace", n)).orElse(Map.of()))
                .at(compilation.sources().upTo(written, eINSTANCE.getCondition_Words()));
        return Optional.empty();
    }

    private Optional<org.girandole.physics.separation.Condition> fact(Condition written, String words) {
        if (written.getBound() == null) {
            return Optional.of(org.girandole.physics.separation.Condition.has(FACTS.get(words)));
        }
        compilation.problems().report(LanguageRules.SYNTAX, "'" + words + "' is so or not; it has no limits")
                .found(Sources.text(written), words).remedy("write only " + words).at(compilation.sources().whole(written));
        return Optional.empty();
    }

    private Optional<org.girandole.physics.separation.Condition> unbounded(Condition written, String words) {
        compilation.problems().report(LanguageRules.MISSING_FIELD, "The rule does not say which " + words + " it is for")
                .found("nothing", "at least, at most, above, below, or from … to").remedy("write such as " + words + " above, and a value")
                .at(compilation.sources().whole(written));
        return Optional.empty();
    }

    private Optional<org.girandole.physics.separation.Condition> range(Condition written, Quantity quantity) {
        Optional<Double> from = written.getLeast() == null ? Optional.of(Double.NEGATIVE_INFINITY) : value(written.getLeast(), quantity);
        Optional<Double> to = written.getMost() == null ? Optional.of(Double.POSITIVE_INFINITY) : value(written.getMost(), quantity);
        if (written.getLeast() == null && written.getMost() == null || from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        if (from.get() > to.get()) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, "The rule is for no " + quantity.word() + " at all")
                    .found(Sources.text(written), "the smaller value first").remedy("exchange the two values")
                    .at(compilation.sources().whole(written));
            return Optional.empty();
        }
        return Optional.of(new org.girandole.physics.separation.Condition.In(quantity, from.get(), !written.getBound().equals("above"),
                to.get(), !written.getBound().equals("below")));
    }
}
