package org.girandole.sheets.account;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import org.girandole.plan.account.Reliability;

/** How often lots and modules failed, as plain text. */
public final class ReliabilityText {
    private static final double PERCENT = 100;

    private ReliabilityText() {
    }

    /** Writes the list; the writer stays open. */
    public static void write(Reliability reliability, Writer out) throws IOException {
        block("Lots: misfires and duds among the cues that were sent current", reliability.lots(), out);
        out.write('\n');
        block("Modules: misfires among the cues that were sent current; igniter or wiring may as well be at fault", reliability.modules(), out);
        out.write("\nThe range is where the true share lies with 95 % confidence (Wilson's score interval). A small count proves nothing.\n");
    }

    private static void block(String title, List<Reliability.Rate> rates, Writer out) throws IOException {
        out.write(title + "\n");
        if (rates.isEmpty()) {
            out.write("  nothing was fired by these logs\n");
        }
        for (Reliability.Rate rate : rates) {
            out.write(String.format(Locale.ROOT, "  %s: %d of %d failed, %.1f %% (%.1f to %.1f %%)\n", rate.what(), rate.failed(), rate.tried(),
                    rate.share() * PERCENT, rate.bounds().least() * PERCENT, rate.bounds().most() * PERCENT));
        }
    }
}
