package org.girandole.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.Beat;
import org.girandole.music.analysis.MarksFinder;
import org.girandole.music.analysis.ProposedMark;
import org.girandole.music.analysis.TidyTempo;
import org.girandole.music.analysis.TrackAnalysis;
import org.girandole.plan.Times;

/** What was heard in a track, as lines of a script. */
final class Proposal {
    /** Below this, beats and bars are hardly better than chance. */
    static final double UNSURE = 0.3;
    /** A guess is shown in part: nobody is going to use it as it is. */
    private static final int MOST_GUESSED = 12;
    private static final long TIDY_US = 10_000;
    private static final long ON_BEAT_US = 25_000;
    private static final int[] QUARTERS = {4};
    private static final long EXACT_US = 100;
    private static final long NEAR_US = 12_000;
    /** The usual parts of a beat, whole beats first. */
    private static final int[] PARTS = {1, 2, 3, 4, 6, 8, 12, 16, 24};
    private static final long APART_US = 1_000_000;

    private final String file;
    private final TrackAnalysis track;

    /** @param file name of the recording, for comments */
    Proposal(String file, TrackAnalysis track) {
        this.file = file;
        this.track = track;
    }

    /** The tempo worth writing down; empty where beats or bars are a guess. */
    Optional<TempoMap> tempo() {
        return track.beatConfidence() < UNSURE ? Optional.empty() : guessedTempo();
    }

    /** The tempo as far as one was heard at all. */
    Optional<TempoMap> guessedTempo() {
        return track.tempo().map(heard -> TidyTempo.of(heard, lastBar(heard), TIDY_US));
    }

    private int lastBar(TempoMap heard) {
        long lastUs = track.beats().isEmpty() ? 0 : track.beats().get(track.beats().size() - 1).timeUs();
        return Math.max(1, heard.barBeatAt(lastUs).bar());
    }

    /** The tempo block; as a comment where it is a guess. */
    List<String> tempoLines() {
        Optional<TempoMap> guessed = guessedTempo();
        if (guessed.isEmpty()) {
            return List.of("// No bars were heard in " + file + ".");
        }
        List<String> lines = new ArrayList<>();
        lines.add("// Heard in " + file + ", to be checked by ear: beats with confidence " + number(track.beatConfidence()) + ", bars with "
                + number(track.barConfidence()) + (track.barConfidence() < UNSURE ? ", which is a guess" : ""));
        boolean sure = tempo().isPresent();
        List<String> block = TempoText.lines(guessed.get());
        if (sure) {
            lines.addAll(block);
        } else {
            block.stream().limit(MOST_GUESSED).forEach(line -> lines.add("// " + line));
            if (block.size() > MOST_GUESSED) {
                lines.add("// and " + (block.size() - MOST_GUESSED) + " more lines: no steady tempo was heard");
            }
        }
        return lines;
    }

    /**
     * Marks that are worth adding.
     *
     * @param grid   the tempo that the marks may count by
     * @param names  names that are taken
     * @param timesUs marks that are there; nearer than a second to one of them none is proposed
     */
    List<String> markLines(Optional<TempoMap> grid, Collection<String> names, Collection<Long> timesUs) {
        Set<String> taken = new HashSet<>(names);
        List<String> lines = new ArrayList<>();
        for (ProposedMark mark : MarksFinder.find(track)) {
            if (timesUs.stream().anyMatch(us -> Math.abs(us - mark.timeUs()) < APART_US)) {
                continue;
            }
            String name = free(mark.name(), taken);
            taken.add(name);
            String place = moment(grid, mark.timeUs());
            lines.add(String.format(Locale.ROOT, "%-28s // %s, confidence %s: %s", "mark " + name + " at " + place, Times.clock(mark.timeUs()),
                    number(confidence(mark)), mark.reason()));
        }
        return lines;
    }

    /** Where no beat is heard, what sticks out need not be music: noise has its strongest moment too. Sound after silence is sure all the same. */
    private double confidence(ProposedMark mark) {
        boolean doubtful = track.beatConfidence() < UNSURE && !mark.name().startsWith("Entry");
        return doubtful ? mark.confidence() * UNSURE : mark.confidence();
    }

    /** The name with the next number that is free: they rise with time. */
    private static String free(String name, Set<String> taken) {
        String base = name.replaceAll("\\d+$", "");
        int number = 1;
        String free = base.equals(name) ? name : base + number;
        while (taken.contains(free)) {
            number++;
            free = base + number;
        }
        return free;
    }

    /** A moment that was heard, as a script writes it: bar and beat where it lies on a quarter of a beat, else the time. */
    static String moment(Optional<TempoMap> grid, long timeUs) {
        return moment(grid, timeUs, QUARTERS, ON_BEAT_US);
    }

    /** A moment that is known, as a script writes it: bar and beat where these are the same moment, to a tenth of a millisecond. */
    static String exact(Optional<TempoMap> grid, long timeUs) {
        return moment(grid, timeUs, PARTS, EXACT_US);
    }

    /** A moment that was bar and beat before and is so again: the simplest place within some milliseconds, else the time. */
    static String near(TempoMap map, long timeUs) {
        return moment(Optional.of(map), timeUs, PARTS, NEAR_US);
    }

    private static String moment(Optional<TempoMap> grid, long timeUs, int[] parts, long withinUs) {
        if (grid.isPresent()) {
            TempoMap map = grid.get();
            for (int part : parts) {
                Rational beats = Rational.of(map.beatsAt(timeUs).times(part).roundHalfUp(), part);
                if (beats.signum() >= 0 && Math.abs(map.timeUsAtBeats(beats) - timeUs) <= withinUs) {
                    return map.barBeatOf(beats).toString();
                }
            }
        }
        return Times.exactClock(timeUs);
    }

    /** Beats to hear as clicks: those of the tempo if there is one, else those that were heard. */
    List<Beat> clicks(Optional<TempoMap> tempo) {
        if (tempo.isEmpty()) {
            return track.beats();
        }
        TempoMap map = tempo.get();
        long lastUs = track.onsets().isEmpty() ? 0 : track.onsets().get(track.onsets().size() - 1).timeUs() + ON_BEAT_US;
        List<Beat> beats = new ArrayList<>();
        for (int bar = 1; map.timeUsOfBar(bar, Rational.ONE) <= lastUs; bar++) {
            for (int beat = 1; beat <= map.meterOfBar(bar).beatsPerBar(); beat++) {
                long us = map.timeUsOfBar(bar, Rational.of(beat));
                if (us >= 0 && us <= lastUs) {
                    beats.add(new Beat(us, beat, 0));
                }
            }
        }
        return beats;
    }

    static String number(double confidence) {
        return String.format(Locale.ROOT, "%.2f", confidence);
    }
}
