package org.girandole.lang.compile;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.girandole.lang.LanguageRules;

/** Reads what is written with colons and dashes: times of a soundtrack, times of day, dates. */
final class Clocks {
    private static final Pattern CLOCK = Pattern.compile("(?:(\\d{1,3}):(?=\\d{1,2}:))?(\\d{1,4}):(\\d{1,2})(\\.\\d{1,6})?");
    private static final Pattern DAY_TIME = Pattern.compile("(\\d{1,2}):(\\d{2})(?::(\\d{2}))?");
    private static final Pattern DATE = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
    private static final int MOST_IN_SIXTY = 59;

    private final Compilation compilation;

    Clocks(Compilation compilation) {
        this.compilation = compilation;
    }

    /** {@code m:ss.ffffff} or {@code h:mm:ss.ffffff} in microseconds. */
    Optional<Long> soundtrackTime(EObject owner, EStructuralFeature feature, String text) {
        if (text == null) {
            return Optional.empty();
        }
        Matcher m = CLOCK.matcher(text);
        if (!m.matches()) {
            String trouble = text.contains(";") || text.split(":").length > 3 ? "'" + text + "' is a timecode; times of a soundtrack count from its first note"
                    : "'" + Words.shown(text) + "' is no time of a soundtrack";
            return bad(owner, feature, text, trouble, "minutes:seconds, such as 3:58.5 or 1:02:03.25, at most six decimals");
        }
        long hours = m.group(1) == null ? 0 : Long.parseLong(m.group(1));
        long minutes = Long.parseLong(m.group(2));
        long seconds = Long.parseLong(m.group(3));
        if (seconds > MOST_IN_SIXTY || m.group(1) != null && minutes > MOST_IN_SIXTY) {
            return bad(owner, feature, text, "'" + text + "' counts more than 59 " + (seconds > MOST_IN_SIXTY ? "seconds" : "minutes"),
                    "00 to 59 after a colon");
        }
        BigDecimal fraction = m.group(4) == null ? BigDecimal.ZERO : new BigDecimal("0" + m.group(4));
        return Optional.of((hours * 3600 + minutes * 60 + seconds) * 1_000_000 + Quantities.micros(fraction));
    }

    Optional<LocalTime> timeOfDay(EObject owner, EStructuralFeature feature, String text) {
        if (text == null) {
            return Optional.empty();
        }
        Matcher m = DAY_TIME.matcher(text);
        try {
            if (m.matches()) {
                return Optional.of(LocalTime.of(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)),
                        m.group(3) == null ? 0 : Integer.parseInt(m.group(3))));
            }
        } catch (DateTimeException e) {
            // Told below, as for every other form that is no time of day.
        }
        return bad(owner, feature, text, "'" + Words.shown(text) + "' is no time of day", "hours:minutes, 00:00 to 23:59");
    }

    Optional<LocalDate> date(EObject owner, EStructuralFeature feature, String text) {
        if (text == null) {
            return Optional.empty();
        }
        Matcher m = DATE.matcher(text);
        try {
            if (m.matches()) {
                return Optional.of(LocalDate.of(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)), Integer.parseInt(m.group(3))));
            }
        } catch (DateTimeException e) {
            // Told below, as for every other form that is no date.
        }
        return bad(owner, feature, text, "'" + Words.shown(text) + "' is no date of the calendar", "year-month-day, such as 2027-06-19");
    }

    private <T> Optional<T> bad(EObject owner, EStructuralFeature feature, String text, String message, String allowed) {
        compilation.problems().report(LanguageRules.BAD_TIME, message).found(Words.shown(text), allowed).remedy("write " + allowed)
                .at(compilation.sources().of(owner, feature));
        return Optional.empty();
    }
}
