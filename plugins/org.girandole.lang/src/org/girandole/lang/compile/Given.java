package org.girandole.lang.compile;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/**
 * What a figure is given for one of its values: the name of something, a time, or, for a mark, both.
 *
 * @param source where it is written
 */
record Given(Optional<Named> named, Optional<TimeExpr> time, SourceRef source) {
    /** What was given, when it is of a kind that the figure can use there; else that is reported at what was given. */
    Optional<Named> as(Compilation compilation, Parameter parameter, Set<Kind> kinds) {
        Optional<Named> fitting = named.filter(n -> Kind.of(n).filter(kinds::contains).isPresent());
        if (fitting.isEmpty()) {
            List<String> wanted = kinds.stream().sorted().map(Kind::words).toList();
            compilation.problems().report(LanguageRules.WRONG_KIND, "The figure uses '" + parameter.getName() + "' as " + Words.or(wanted)
                    + ", but it is given " + words()).found(words(), Words.or(wanted)).remedy("give it the name of " + Words.or(wanted))
                    .at(source);
        }
        return fitting;
    }

    /** A length of time that was given; else that is reported. */
    Optional<TimeExpr> asSpan(Compilation compilation, Parameter parameter) {
        Optional<TimeExpr> span = time.filter(t -> t.anchor() instanceof TimeExpr.Origin);
        if (span.isEmpty()) {
            compilation.problems().report(LanguageRules.WRONG_KIND, "The figure uses '" + parameter.getName()
                    + "' as a length of time, but it is given " + words()).found(words(), "a length of time, such as 1/2 beat")
                    .remedy("give it a length of time, such as 1/2 beat").at(source);
        }
        return span;
    }

    private String words() {
        return named.flatMap(Kind::of).map(Kind::words).orElseGet(() -> time.filter(t -> t.anchor() instanceof TimeExpr.Origin).isPresent()
                ? "a length of time" : "a moment");
    }
}
