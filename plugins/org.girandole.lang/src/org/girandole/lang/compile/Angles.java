package org.girandole.lang.compile;

import java.util.Optional;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.AngleField;
import org.girandole.lang.show.Quantity;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TiltRange;

/** Ranges of angles. */
final class Angles {
    private Angles() {
    }

    /** {@code tilt -15 deg .. 15 deg}, or one angle that is both ends. */
    static Optional<TiltRange> range(Compilation compilation, AngleField field) {
        Optional<Double> from = compilation.quantities().si(field.getFrom(), Range.TILT);
        if (field.getTo() == null) {
            return from.map(angle -> new TiltRange(angle, angle));
        }
        Optional<Double> to = compilation.quantities().si(field.getTo(), Range.TILT);
        return from.isEmpty() || to.isEmpty() ? Optional.empty() : ordered(compilation, from.get(), to.get(), field.getTo());
    }

    private static Optional<TiltRange> ordered(Compilation compilation, double from, double to, Quantity last) {
        if (from <= to) {
            return Optional.of(new TiltRange(from, to));
        }
        SourceRef place = compilation.sources().whole(last);
        compilation.problems().report(LanguageRules.NUMBER_RANGE, "The range of angles ends below its beginning")
                .found(Sources.text(last), "at least the angle before it").remedy("write the smaller angle first").at(place);
        return Optional.empty();
    }
}
