package org.girandole.cli;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.lang.compile.Dimension;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/** Wind on the command line: {@code 9 m/s from 200 deg gusting 12 m/s}. */
final class WindOption {
    private static final String SPEED = "(\\d{1,4}(?:\\.\\d{1,6})?)\\s*([a-zA-Z]+(?:/[a-zA-Z]+)?)";
    private static final Pattern WIND = Pattern.compile(SPEED + "(?:\\s+from\\s+(\\d{1,3}(?:\\.\\d{1,6})?)\\s*(?:deg|°))?(?:\\s+gusting\\s+" + SPEED + ")?");
    private static final double MOST_MPS = 100;
    private static final double MOST_DEG = 360;
    private static final String EXAMPLE = "such as --wind \"9 m/s from 200 deg\" or \"18 kn from 240 deg gusting 25 kn\"";

    private WindOption() {
    }

    /** @throws UserException when it cannot be meant, or says no direction */
    static Site.Wind parse(String text) {
        Matcher wind = WIND.matcher(text.strip());
        if (!wind.matches()) {
            throw new UserException(ExitCode.USAGE, "'" + text + "' is no wind. Say how fast it blows and where from, " + EXAMPLE + ".");
        }
        if (wind.group(3) == null) {
            throw new UserException(ExitCode.USAGE, "'" + text + "' does not say where the wind comes from, and everything hangs on that. Say it, "
                    + EXAMPLE + "; degrees clockwise from +y of the site.");
        }
        double speed = speed(text, wind.group(1), wind.group(2));
        double from = Double.parseDouble(wind.group(3));
        Optional<Double> gust = wind.group(4) == null ? Optional.empty() : Optional.of(speed(text, wind.group(4), wind.group(5)));
        if (from > MOST_DEG || speed > MOST_MPS || gust.filter(g -> g > MOST_MPS).isPresent()) {
            throw new UserException(ExitCode.USAGE, "'" + text + "' cannot be a wind: 0 to 360 deg, and at most 100 m/s.");
        }
        if (gust.filter(g -> g < speed).isPresent()) {
            throw new UserException(ExitCode.USAGE, "'" + text + "' has gusts slower than its wind. Check both speeds.");
        }
        return new Site.Wind(from, speed, gust, new SourceRef("--wind", 1, 1, 1));
    }

    private static double speed(String text, String number, String unit) {
        if (!Dimension.SPEED.has(unit)) {
            throw new UserException(ExitCode.USAGE, "'" + unit + "' in '" + text + "' is no unit of speed. Write one of "
                    + String.join(", ", Dimension.SPEED.symbols()) + ".");
        }
        return Dimension.SPEED.toSi(new BigDecimal(number), unit).doubleValue();
    }
}
