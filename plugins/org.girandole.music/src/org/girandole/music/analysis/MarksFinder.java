package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.girandole.music.BarBeat;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/** Proposes marks from what was heard: starts of sections, entries after silence, the strongest hits, the last stroke. */
public final class MarksFinder {
    private static final long ON_BEAT_US = 25_000;
    private static final long APART_US = 1_000_000;
    private static final int MOST_HITS = 12;
    private static final double STRONG = 0.97;

    private final TrackAnalysis track;
    private final List<ProposedMark> marks = new ArrayList<>();

    private MarksFinder(TrackAnalysis track) {
        this.track = track;
    }

    /** Proposals in order of time, at least one second apart. */
    public static List<ProposedMark> find(TrackAnalysis track) {
        MarksFinder finder = new MarksFinder(track);
        finder.sections();
        finder.entries();
        finder.lastStroke();
        finder.hits();
        finder.marks.sort(Comparator.comparingLong(ProposedMark::timeUs));
        return List.copyOf(finder.marks);
    }

    private void sections() {
        int number = 0;
        for (Section section : track.sections()) {
            number++;
            if (section.startUs() > 0) {
                String words = String.format(Locale.ROOT, "section %d begins, like %s", number, section.label());
                offer("Part" + number, section.startUs(), section.change(), words);
            }
        }
    }

    private void entries() {
        int number = 0;
        for (Silence silence : track.silences()) {
            Optional<Onset> entry = track.onsets().stream().filter(o -> o.timeUs() >= silence.endUs() - 50_000).findFirst();
            if (entry.isPresent() && entry.get().timeUs() - silence.endUs() < 200_000) {
                number++;
                offer("Entry" + number, entry.get().timeUs(), 0.9, "sound begins after silence");
            }
        }
    }

    private void lastStroke() {
        if (!track.onsets().isEmpty()) {
            Onset last = track.onsets().get(track.onsets().size() - 1);
            offer("Last", last.timeUs(), 0.5 + last.strength() / 2, "the last onset");
        }
    }

    private void hits() {
        List<Onset> strongest = new ArrayList<>(track.onsets());
        strongest.removeIf(o -> o.strength() < STRONG);
        strongest.sort(Comparator.comparingDouble(Onset::strength).reversed().thenComparingLong(Onset::timeUs));
        int number = 0;
        for (Onset onset : strongest) {
            if (number < MOST_HITS && offer("Hit" + (number + 1), onset.timeUs(), onset.strength(), "among the strongest onsets")) {
                number++;
            }
        }
    }

    private boolean offer(String name, long timeUs, double confidence, String reason) {
        if (marks.stream().anyMatch(m -> Math.abs(m.timeUs() - timeUs) < APART_US)) {
            return false;
        }
        marks.add(new ProposedMark(name, timeUs, onGrid(timeUs), confidence, reason));
        return true;
    }

    private Optional<BarBeat> onGrid(long timeUs) {
        if (track.tempo().isEmpty()) {
            return Optional.empty();
        }
        TempoMap map = track.tempo().get();
        Rational quarterBeats = Rational.of(map.beatsAt(timeUs).times(4).roundHalfUp(), 4);
        boolean near = Math.abs(map.timeUsAtBeats(quarterBeats) - timeUs) <= ON_BEAT_US;
        return near && quarterBeats.signum() >= 0 ? Optional.of(map.barBeatOf(quarterBeats)) : Optional.empty();
    }
}
