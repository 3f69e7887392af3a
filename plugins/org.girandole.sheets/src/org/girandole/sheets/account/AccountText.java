package org.girandole.sheets.account;

import java.io.IOException;
import java.io.Writer;
import org.girandole.plan.account.Account;
import org.girandole.plan.account.WaitingTime;

/** The report after the show as plain text. */
public final class AccountText {
    private AccountText() {
    }

    /** Writes the report; the writer stays open. */
    public static void write(Account account, Writer out) throws IOException {
        AccountReport report = AccountReport.of(account);
        line(out, account.plan().script().show().label() + ", release " + account.plan().stamp().printed() + ": after the show");
        line(out, "");
        line(out, report.counts());
        for (String caution : report.cautions()) {
            line(out, "! " + caution);
        }
        live(report, out);
        line(out, "");
        line(out, "Waiting times that are published. The law of the place, the permit and the maker come first.");
        for (WaitingTime time : WaitingTime.PUBLISHED) {
            line(out, "  " + time.rule() + " [" + time.source() + "]");
        }
        line(out, "");
        line(out, "Stock");
        for (AccountReport.StockLine lot : report.stock()) {
            line(out, "  " + lot.lot() + " of " + lot.effect() + ": " + lot.before() + " - " + lot.drawn() + " drawn + " + lot.returned() + " returned = "
                    + lot.after() + (lot.live() == 0 ? "" : "; " + lot.live() + " of the drawn live in the field"));
        }
        if (!report.notes().isEmpty()) {
            line(out, "");
            line(out, "Notes");
            for (AccountReport.Remark remark : report.notes()) {
                line(out, "  cue " + remark.cue() + ", " + remark.what() + ", " + remark.outcome() + ": " + remark.note());
            }
        }
    }

    private static void live(AccountReport report, Writer out) throws IOException {
        line(out, "");
        if (report.live().isEmpty()) {
            line(out, "By this log nothing is live in the field. Search it all the same.");
            return;
        }
        line(out, "Live in the field");
        for (AccountReport.LiveCue cue : report.live()) {
            line(out, "  cue " + cue.cue() + " " + cue.state() + ": position " + cue.position() + ", " + cue.tube() + ", " + cue.pin() + ", "
                    + cue.what() + (cue.pieces() > 1 ? ", " + cue.pieces() + " pieces" : "") + (cue.time().isEmpty() ? "" : ", at " + cue.time())
                    + (cue.note().isEmpty() ? "" : ": " + cue.note()));
        }
    }

    private static void line(Writer out, String text) throws IOException {
        out.write(text);
        out.write('\n');
    }
}
