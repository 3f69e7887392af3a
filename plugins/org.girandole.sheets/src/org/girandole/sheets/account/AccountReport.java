package org.girandole.sheets.account;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.girandole.plan.account.Account;
import org.girandole.plan.account.LogEntry;
import org.girandole.plan.account.Outcome;

/**
 * An account in words, ready for any form.
 *
 * @param counts one sentence that adds up to the pieces of the plan
 * @param cautions what whoever reads it must know first
 * @param live what is live in the field, position by position, by rack and tube
 * @param stock every lot that the show drew from
 * @param notes what was written down about other cues
 */
public record AccountReport(String counts, List<String> cautions, List<LiveCue> live, List<StockLine> stock, List<Remark> notes) {
    public AccountReport {
        cautions = List.copyOf(cautions);
        live = List.copyOf(live);
        stock = List.copyOf(stock);
        notes = List.copyOf(notes);
    }

    /** A cue that is live somewhere. */
    public record LiveCue(int cue, String what, String state, int pieces, String position, String tube, String pin, String time, String note) {
    }

    /**
     * A lot.
     *
     * @param before pieces by the script
     * @param after what must be on the shelf now
     * @param live of the drawn, those that are live in the field
     */
    public record StockLine(String lot, String effect, long before, long drawn, long returned, long after, long live) {
    }

    /** A note about a cue that is not live any more. */
    public record Remark(int cue, String what, String outcome, String note) {
    }

    /** The words of an account. */
    public static AccountReport of(Account account) {
        List<LiveCue> live = account.live().stream().sorted(Walk.ORDER).map(AccountReport::live).toList();
        List<StockLine> stock = account.lots().stream().filter(lot -> lot.drawn() > 0).map(AccountReport::stock).toList();
        List<Remark> notes = account.lines().stream()
                .filter(line -> line.entry().isPresent() && !line.outcome().orElseThrow().live() && !line.entry().get().note().isEmpty())
                .map(line -> new Remark(line.cue().number(), line.cue().label(), line.outcome().orElseThrow().word(), line.entry().get().note()))
                .toList();
        return new AccountReport(counts(account), cautions(account), live, stock, notes);
    }

    private static String counts(Account account) {
        String parts = account.pieces().entrySet().stream().map(part -> part.getValue() + " " + part.getKey().word())
                .collect(Collectors.joining(", "));
        return pieces(Account.pieces(account.lines())) + " in " + cues(account.lines().size()) + ": " + parts + ", "
                + Account.pieces(account.unaccounted()) + " unaccounted for.";
    }

    private static List<String> cautions(Account account) {
        List<String> cautions = new ArrayList<>();
        if (!account.complete()) {
            cautions.add("Nobody wrote down what became of " + cues(account.unaccounted().size())
                    + ". They count as live in their tubes until somebody has looked.");
        }
        if (!account.live().isEmpty()) {
            cautions.add("What did not fire is live. Nobody goes near it before the waiting time has ended and the person in charge has gone"
                    + " first.");
        }
        List<Account.Line> withoutLot = account.lines().stream().filter(line -> line.cue().lot().isEmpty()).toList();
        if (!withoutLot.isEmpty()) {
            cautions.add(pieces(Account.pieces(withoutLot)) + " in " + cues(withoutLot.size())
                    + " came from no lot of the script: stock cannot account for them.");
        }
        account.lots().stream().filter(lot -> lot.after() < 0).forEach(lot -> cautions.add("The show drew " + lot.drawn() + " from lot "
                + lot.lot().name() + ", which has " + lot.lot().count() + " by the script. Count what is there."));
        return cautions;
    }

    private static LiveCue live(Account.Line line) {
        return new LiveCue(line.cue().number(), line.cue().label(), line.outcome().map(Outcome::word).orElse("unaccounted for"), line.cue().pieces(),
                line.cue().position(), Walk.tube(line.cue()), Walk.pin(line.cue()),
                line.entry().flatMap(LogEntry::time).map(LocalTime::toString).orElse(""), line.entry().map(LogEntry::note).orElse(""));
    }

    private static StockLine stock(Account.LotCount lot) {
        return new StockLine(lot.lot().name(), lot.lot().effect(), lot.lot().count(), lot.drawn(), lot.returned(), lot.after(), lot.live());
    }

    private static String pieces(long count) {
        return count + (count == 1 ? " piece" : " pieces");
    }

    private static String cues(long count) {
        return count + (count == 1 ? " cue" : " cues");
    }
}
