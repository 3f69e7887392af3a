package org.girandole.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.lang.edit.MusicPlaces;
import org.girandole.lang.edit.TextEdits;
import org.girandole.lang.edit.TextPlace;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.EditMap;
import org.girandole.music.analysis.TidyTempo;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;

/**
 * Moves what a script hangs on a soundtrack to a new edit of it: the tempo, and every bar and clock time in marks and scores. What is counted
 * from these (two beats later) moves along by itself.
 */
final class EditMove {
    /** What lies so near to an edge belongs to the music behind it: scissors cut before a stroke, and find their place within this. */
    private static final long EDGE_US = 60_000;
    private static final long TIDY_US = 5_000;
    private static final long SAME_US = 5_000;
    private static final Pattern BAR = Pattern.compile("bar\\s+(\\d+)(?:\\s+beat\\s+(\\d+(?:\\.\\d+)?)(?:\\s*/\\s*(\\d+))?)?");
    private static final Pattern CLOCK = Pattern.compile("(?:(\\d+):(?=\\d+:))?(\\d+):(\\d+(?:\\.\\d+)?)");

    private final ScriptMusic music;
    private final EditMap map;
    private final Optional<TempoMap> before;
    private final Optional<TempoMap> after;
    private final List<String> told = new ArrayList<>();
    private boolean lost;

    /** Where a moment goes. */
    private record Target(long us, boolean cut) {
    }

    EditMove(ScriptMusic music, EditMap map) {
        this.music = music;
        this.map = map;
        this.before = music.planned().flatMap(PlannedSoundtrack::tempo);
        this.after = before.flatMap(this::moved);
    }

    private Optional<TempoMap> moved(TempoMap old) {
        int lastBar = Math.max(1, old.barBeatAt(map.oldLengthUs()).bar());
        return map.moved(old, lastBar).map(now -> TidyTempo.of(now, Math.max(1, now.barBeatAt(map.newLengthUs()).bar()), TIDY_US))
                .map(now -> same(old, now) ? old : now);
    }

    /** Whether a map says the same for all of the new track. */
    private boolean same(TempoMap old, TempoMap now) {
        for (int bar = 1; now.timeUsOfBar(bar, Rational.ONE) <= map.newLengthUs(); bar++) {
            if (!old.meterOfBar(bar).equals(now.meterOfBar(bar)) || Math.abs(old.timeUsOfBar(bar, Rational.ONE) - now.timeUsOfBar(bar, Rational.ONE)) > SAME_US) {
                return false;
            }
        }
        return true;
    }

    /** What was done and what was not, in lines for a person. */
    List<String> told() {
        return List.copyOf(told);
    }

    /** Whether something lay in music that was cut. */
    boolean lost() {
        return lost;
    }

    /** Where a moment of the old edit belongs in the new one; one whose music was cut, where the cut is. */
    long wantedUs(long oldUs) {
        return target(oldUs).us();
    }

    void into(TextEdits edits) {
        tempo(edits);
        int moved = 0;
        int kept = 0;
        Set<TextPlace> gone = new HashSet<>();
        for (MusicPlaces.Moment moment : music.track().moments()) {
            Optional<Long> us = timeUs(moment);
            if (us.isEmpty()) {
                told.add("attention  " + where(moment.place()) + " '" + moment.place().text() + "' could not be moved: its time is not known");
                lost = true;
                continue;
            }
            Target target = target(us.get());
            if (target.cut() && moment.statement().isPresent()) {
                gone(moment, us.get(), edits, gone);
                continue;
            }
            String text = text(moment, us.get(), target.us());
            if (text.equals(moment.place().text())) {
                kept++;
            } else {
                edits.replace(moment.place(), text);
                moved++;
            }
            if (target.cut()) {
                told.add("attention  " + where(moment.place()) + " '" + moment.place().text() + "' lay in music that was cut; now '" + text
                        + "', where the cut is");
                lost = true;
            } else {
                moment.mark().filter(mark -> target.us() != us.get()).ifPresent(mark -> told.add("mark       " + mark + " from " + Times.clock(us.get())
                        + " to " + Times.clock(target.us())));
            }
        }
        told.add("moments    " + moved + " moved, " + kept + " stayed as they are written, " + gone.size() + " in cut music put into comments");
        if (!map.changes().isEmpty() || map.stretches().stream().anyMatch(s -> Math.abs(s.speed() - 1) > 0.00005)) {
            told.add("attention  'audio', 'length' and 'hash' are yours to write");
        }
    }

    private void tempo(TextEdits edits) {
        if (music.track().tempo().isEmpty()) {
            return;
        }
        if (before.isEmpty() || after.isEmpty()) {
            told.add("attention  the tempo could not be moved: " + (before.isEmpty() ? "it has errors" : "too few of its bars are left"));
            lost = true;
        } else if (after.equals(before)) {
            told.add("tempo      stays as it is written");
        } else {
            edits.replace(music.track().tempo().get(), String.join("\n  ", TempoText.lines(after.get())));
            told.add("tempo      moved; bars are counted anew from the first that is left");
        }
    }

    private void gone(MusicPlaces.Moment moment, long us, TextEdits edits, Set<TextPlace> gone) {
        TextPlace statement = moment.statement().orElseThrow();
        lost = true;
        String shown = statement.text().strip().replaceAll("\\s+", " ");
        if (statement.text().contains("*/")) {
            told.add("attention  " + where(statement) + " '" + shown + "' lay at " + Times.clock(us) + " in music that was cut; it holds a comment, so it"
                    + " was left as it is: take it out by hand");
        } else if (gone.add(statement)) {
            edits.replace(statement, "/* cut with its music: " + statement.text() + " */");
            told.add("cut        " + where(statement) + " '" + shown + "' lay at " + Times.clock(us));
        }
    }

    private String where(TextPlace place) {
        return music.shown(place.file()) + ":" + place.line();
    }

    private Optional<Long> timeUs(MusicPlaces.Moment moment) {
        String text = moment.place().text();
        if (moment.clock()) {
            Matcher m = CLOCK.matcher(text);
            if (!m.matches()) {
                return Optional.empty();
            }
            long hours = m.group(1) == null ? 0 : Long.parseLong(m.group(1));
            return Optional.of((hours * 60 + Long.parseLong(m.group(2))) * 60_000_000
                    + new BigDecimal(m.group(3)).movePointRight(6).longValue());
        }
        Matcher m = BAR.matcher(text);
        if (!m.matches() || before.isEmpty()) {
            return Optional.empty();
        }
        try {
            Rational beat = m.group(2) == null ? Rational.ONE : Rational.parse(m.group(2));
            return Optional.of(before.get().timeUsOfBar(Integer.parseInt(m.group(1)), m.group(3) == null ? beat : beat.dividedBy(Rational.parse(m.group(3)))));
        } catch (MusicTimeException | ArithmeticException | NumberFormatException e) {
            // A beat that its bar has not: 'check' says so.
            return Optional.empty();
        }
    }

    private Target target(long us) {
        List<EditMap.Stretch> stretches = map.stretches();
        for (int i = 0; i + 1 < stretches.size(); i++) {
            EditMap.Stretch here = stretches.get(i);
            EditMap.Stretch next = stretches.get(i + 1);
            if (Math.abs(us - next.oldStartUs()) <= EDGE_US) {
                return new Target(next.toNew(us), false);
            }
            if (Math.abs(us - here.oldEndUs()) <= EDGE_US) {
                return new Target(next.newStartUs(), false);
            }
            if (us > here.oldEndUs() && us < next.oldStartUs()) {
                return new Target(next.newStartUs(), true);
            }
        }
        if (stretches.isEmpty()) {
            return new Target(us, true);
        }
        EditMap.Stretch first = stretches.get(0);
        EditMap.Stretch last = stretches.get(stretches.size() - 1);
        // Silence before the first sound and after the last is alike everywhere, and the ends of tracks are seldom heard exactly.
        if (us < first.oldStartUs()) {
            boolean silent = first.newStartUs() - (first.oldStartUs() - us) >= -EDGE_US;
            return new Target(Math.max(0, silent ? first.newStartUs() - (first.oldStartUs() - us) : first.newStartUs()), !silent);
        }
        if (us > last.oldEndUs()) {
            long moved = last.newEndUs() + (us - last.oldEndUs());
            boolean there = moved <= map.newLengthUs() + EDGE_US;
            return new Target(there ? moved : last.newEndUs(), !there);
        }
        for (EditMap.Stretch stretch : stretches) {
            if (us >= stretch.oldStartUs() && us <= stretch.oldEndUs()) {
                return new Target(stretch.toNew(us), false);
            }
        }
        return new Target(us, true);
    }

    /** The moment as it is written from now on; as it was where it means the same. */
    private String text(MusicPlaces.Moment moment, long oldUs, long newUs) {
        boolean sameMap = after.isEmpty() || after.equals(before);
        if (sameMap && oldUs == newUs) {
            return moment.place().text();
        }
        if (moment.clock() || after.isEmpty()) {
            return Times.exactClock(newUs);
        }
        String text = Proposal.near(after.get(), newUs);
        String plain = moment.place().text().replaceAll("\\s+", " ");
        return text.equals(plain) ? moment.place().text() : text;
    }
}
