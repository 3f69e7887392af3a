package org.girandole.plan.account;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Lot;

/**
 * What became of every cue of a show. A cue that no line of the log names is unaccounted for and counts as live in its tube until somebody has
 * looked.
 *
 * @param lines every cue, in firing order
 * @param lots every lot of the script, in its order
 */
public record Account(Plan plan, List<Line> lines, List<LotCount> lots) {
    public Account {
        lines = List.copyOf(lines);
        lots = List.copyOf(lots);
    }

    /** A cue and what the log says of it. */
    public record Line(PlannedCue cue, Optional<LogEntry> entry) {
        /** What became of it, when somebody wrote it down. */
        public Optional<Outcome> outcome() {
            return entry.map(LogEntry::outcome);
        }
    }

    /**
     * A lot after the show.
     *
     * @param drawn pieces that the show drew from it
     * @param returned those of them that came back
     * @param live those of them that misfired, were not fired, are duds, or that nobody accounts for
     */
    public record LotCount(Lot lot, long drawn, long returned, long live) {
        /** Pieces in stock now; below zero when the show drew more than the script says there were. */
        public long after() {
            return lot.count() - drawn + returned;
        }
    }

    /**
     * Holds a log against a plan.
     *
     * @throws LogException when the log names a cue that the plan does not have, or one cue twice
     */
    public static Account of(Plan plan, List<LogEntry> log) throws LogException {
        Map<String, PlannedCue> named = new HashMap<>();
        plan.cues().forEach(cue -> {
            named.put(cue.key(), cue);
            named.put(Integer.toString(cue.number()), cue);
        });
        Map<Integer, LogEntry> entries = new HashMap<>();
        for (LogEntry entry : log) {
            PlannedCue cue = named.get(entry.cue());
            if (cue == null) {
                throw new LogException(entry.line(), entry.cue(), "the number or key of a cue of this show, 1 to " + plan.cues().size()
                        + ". Is this the release that was fired?");
            }
            LogEntry other = entries.putIfAbsent(cue.number(), entry);
            if (other != null) {
                throw new LogException(entry.line(), entry.cue(), "each cue once; it is in line " + other.line() + " too, as " + other.cue());
            }
        }
        List<Line> lines = plan.cues().stream().map(cue -> new Line(cue, Optional.ofNullable(entries.get(cue.number())))).toList();
        return new Account(plan, lines, lots(plan, lines));
    }

    /** Lines with this outcome. */
    public List<Line> with(Outcome outcome) {
        return lines.stream().filter(line -> line.outcome().filter(outcome::equals).isPresent()).toList();
    }

    /** Cues of which nobody wrote down anything. */
    public List<Line> unaccounted() {
        return lines.stream().filter(line -> line.entry().isEmpty()).toList();
    }

    /** What is live somewhere in the field: misfires, cues that were not fired, duds, and what nobody accounts for. */
    public List<Line> live() {
        return lines.stream().filter(line -> line.outcome().map(Outcome::live).orElse(true)).toList();
    }

    /** Whether every cue is accounted for. */
    public boolean complete() {
        return unaccounted().isEmpty();
    }

    /** Pieces by outcome; what is left of the pieces of the plan nobody accounts for. */
    public Map<Outcome, Long> pieces() {
        Map<Outcome, Long> pieces = new EnumMap<>(Outcome.class);
        for (Outcome outcome : Outcome.values()) {
            pieces.put(outcome, pieces(with(outcome)));
        }
        return Collections.unmodifiableMap(pieces);
    }

    /** Pieces of these cues. */
    public static long pieces(List<Line> lines) {
        return lines.stream().mapToLong(line -> line.cue().pieces()).sum();
    }

    private static List<LotCount> lots(Plan plan, List<Line> lines) {
        List<LotCount> lots = new ArrayList<>();
        for (Lot lot : plan.script().lots()) {
            List<Line> drawn = lines.stream().filter(line -> line.cue().lot().filter(lot.name()::equals).isPresent()
                    && line.cue().effect().name().equals(lot.effect())).toList();
            lots.add(new LotCount(lot, pieces(drawn),
                    pieces(drawn.stream().filter(line -> line.outcome().filter(Outcome.RETURNED::equals).isPresent()).toList()),
                    pieces(drawn.stream().filter(line -> line.outcome().map(Outcome::live).orElse(true)).toList())));
        }
        return lots;
    }
}
