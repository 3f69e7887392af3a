package org.girandole.studio.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How far apart two moments of a script are, as far as their words alone say it: from the same mark or bar, or between two clock times.
 * How long a beat is, only the plan knows; beats, bars and frames are therefore counted as such.
 */
public final class Moved {
    private static final int DIGITS = 6;
    private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
    private static final Pattern TERM = Pattern.compile("\\s*([+-])\\s*(\\d+(?:\\.\\d+)?)(?:/(\\d+))?\\s*(s|ms|beats?|bars?|frames?)\\s*$");
    private static final Pattern CLOCK = Pattern.compile("(\\d+):(\\d{1,2}(?:\\.\\d+)?)");

    private Moved() {
    }

    /** In words: by how much, when it can be told, and both moments. */
    public static String words(String left, String right) {
        return distance(left, right).map(by -> "moved " + by).orElse("moved") + "   (at " + left + " | at " + right + ")";
    }

    /** Empty when the words do not say it. */
    private static Optional<String> distance(String left, String right) {
        Map<String, BigDecimal> difference = new LinkedHashMap<>();
        String from = terms(left, difference, 1);
        String to = terms(right, difference, -1);
        difference.values().removeIf(sum -> sum.signum() == 0);
        if (!from.equals(to) || difference.size() != 1) {
            return Optional.empty();
        }
        Map.Entry<String, BigDecimal> only = difference.entrySet().iterator().next();
        BigDecimal by = only.getValue().abs().stripTrailingZeros();
        String unit = only.getKey();
        return Optional.of(by.toPlainString() + " " + (unit.equals("s") || by.compareTo(BigDecimal.ONE) == 0 ? unit : unit + "s"));
    }

    /** Adds up what is added to a moment and taken from it; what that is counted from. */
    private static String terms(String moment, Map<String, BigDecimal> sums, int sign) {
        String rest = moment.strip();
        for (Matcher term = TERM.matcher(rest); term.find() && term.start() > 0; term = TERM.matcher(rest)) {
            BigDecimal amount = new BigDecimal(term.group(2));
            if (term.group(3) != null) {
                amount = amount.divide(new BigDecimal(term.group(3)), DIGITS, RoundingMode.HALF_UP);
            }
            String unit = term.group(4);
            if (unit.equals("ms")) {
                amount = amount.divide(THOUSAND);
                unit = "s";
            }
            unit = unit.length() > 2 && unit.endsWith("s") ? unit.substring(0, unit.length() - 1) : unit;
            add(sums, unit, term.group(1).equals("+") ? amount : amount.negate(), sign);
            rest = rest.substring(0, term.start()).strip();
        }
        Matcher clock = CLOCK.matcher(rest);
        if (clock.matches()) {
            add(sums, "s", new BigDecimal(clock.group(1)).multiply(SIXTY).add(new BigDecimal(clock.group(2))), sign);
            return "";
        }
        return rest;
    }

    private static void add(Map<String, BigDecimal> sums, String unit, BigDecimal amount, int sign) {
        sums.merge(unit, sign > 0 ? amount : amount.negate(), BigDecimal::add);
    }
}
