package org.girandole.plan.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.timecode.TimecodeLine;

/** Writes values as cells. Times come in microseconds and lose nothing. */
final class Values {
    private static final BigDecimal MILLION = BigDecimal.valueOf(1_000_000);
    private static final BigDecimal MM_PER_INCH = new BigDecimal("25.4");

    private Values() {
    }

    /** A moment in show time. */
    static Cell moment(long showUs, TableFormat format, Optional<PlannedSoundtrack> soundtrack) {
        return switch (format) {
            case TIMECODE -> moment(showUs, soundtrack).map(at -> Cell.of(at.label().toString())).orElse(Cell.EMPTY);
            case FRAMES -> moment(showUs, soundtrack).map(at -> Cell.of(at.frame())).orElse(Cell.EMPTY);
            case CLOCK -> Cell.of(clock(showUs));
            default -> span(showUs, format);
        };
    }

    /** What is left of a moment after the beginning of its frame, in milliseconds, cut to the microsecond. */
    static Cell remainder(long showUs, Optional<PlannedSoundtrack> soundtrack) {
        return moment(showUs, soundtrack).map(at -> span(at.remainder().floorUs(), TableFormat.MILLISECONDS)).orElse(Cell.EMPTY);
    }

    private static Optional<TimecodeLine.Moment> moment(long showUs, Optional<PlannedSoundtrack> soundtrack) {
        return soundtrack.flatMap(PlannedSoundtrack::line).flatMap(line -> line.momentAt(showUs));
    }

    /** A length of time. */
    static Cell span(long us, TableFormat format) {
        BigDecimal micros = BigDecimal.valueOf(us);
        return Cell.of(format == TableFormat.MILLISECONDS
                ? shortest(micros.movePointLeft(3), 0)
                : shortest(micros.movePointLeft(6), 3));
    }

    private static String clock(long showUs) {
        long size = Math.abs(showUs);
        BigDecimal seconds = shortest(BigDecimal.valueOf(size % 60_000_000).divide(MILLION), 3);
        String padded = seconds.compareTo(BigDecimal.TEN) < 0 ? "0" + seconds.toPlainString() : seconds.toPlainString();
        return (showUs < 0 ? "-" : "") + size / 60_000_000 + ":" + padded;
    }

    /** A length given in metres, shown in millimetres or inches. */
    static Cell small(double metres, TableFormat format) {
        BigDecimal millimetres = BigDecimal.valueOf(metres).movePointRight(3);
        return Cell.of(format == TableFormat.INCHES
                ? shortest(millimetres.divide(MM_PER_INCH, 2, RoundingMode.HALF_UP), 0)
                : rounded(millimetres, 2));
    }

    /** A mass given in kilograms. */
    static Cell mass(double kilograms, TableFormat format) {
        BigDecimal value = BigDecimal.valueOf(kilograms);
        return Cell.of(format == TableFormat.KILOGRAMS ? rounded(value, 6) : rounded(value.movePointRight(3), 3));
    }

    /** A measured quantity, rounded half up. */
    static Cell measured(double value, int places) {
        return Cell.of(rounded(BigDecimal.valueOf(value), places));
    }

    private static BigDecimal rounded(BigDecimal value, int places) {
        return shortest(value.setScale(places, RoundingMode.HALF_UP), 0);
    }

    /** Without zeros at the end, but with at least this many places. */
    private static BigDecimal shortest(BigDecimal value, int places) {
        BigDecimal stripped = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return stripped.scale() < places ? stripped.setScale(places) : stripped;
    }
}
