package org.girandole.sheets.account;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.account.Account;
import org.girandole.plan.account.ShowLog;

/** A log to fill in: every cue in the order in which a crew walks the field, with the place to look at. */
public final class LogForm {
    private LogForm() {
    }

    /** Comma-separated text (RFC 4180 with line feeds) whose outcomes are empty. */
    public static String of(Plan plan) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180.builder().setRecordSeparator('\n').get())) {
            printer.printRecord(ShowLog.TITLES);
            for (PlannedCue cue : walk(plan)) {
                printer.printRecord(cue.number(), "", "", "", cue.position() + ", " + Walk.tube(cue) + ", " + Walk.pin(cue) + ", " + cue.label());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static List<PlannedCue> walk(Plan plan) {
        return plan.cues().stream().map(cue -> new Account.Line(cue, Optional.empty())).sorted(Walk.ORDER).map(Account.Line::cue).toList();
    }
}
