package org.girandole.music.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Aligns a new edit of a track with the old one. First roughly, by pitch classes and spectral shape ten times a second: the
 * best global alignment in which music may be left out on either side at an affine price (O. Gotoh, An improved algorithm for
 * matching biological sequences, 1982; a form of dynamic time warping that keeps speed and allows gaps). Then finely: the
 * delay of each few seconds by cross-correlation of their attacks at 1 ms, straight lines through the delays, and the moment
 * of each edit where the likeness changes from one line to the next.
 */
public final class EditAligner {
    /** Weaker changes of delay than this, from one few seconds to the next, are not edits. */
    private static final double STEP_US = 12_000;
    private static final long LEAST_CHANGE_US = 15_000;
    private static final int FEWEST = 3;
    private static final int NEAR = 8;
    private static final double STEADY_US = 2000;
    private static final double STEEPEST = 0.03;

    private final Features old;
    private final Features now;

    private EditAligner(Features old, Features now) {
        this.old = old;
        this.now = now;
    }

    /** @throws IOException if one of them cannot be read */
    public static EditMap align(Path oldAudio, Path newAudio) throws IOException {
        return align(TrackAnalyser.features(oldAudio), TrackAnalyser.features(newAudio));
    }

    static EditMap align(Features old, Features now) {
        return new EditAligner(old, now).map();
    }

    /** A stretch while it is being found: {@code new = old + delay + slope (old - fromUs)}. */
    private record Line(long fromUs, long toUs, double delayUs, double slope) {
        double newAt(double oldUs) {
            return oldUs + delayUs + slope * (oldUs - fromUs);
        }
    }

    private EditMap map() {
        RoughAlignment rough = RoughAlignment.of(old, now);
        DelayMeter meter = new DelayMeter(old.attack(), now.attack());
        List<Line> lines = new ArrayList<>();
        for (RoughAlignment.Run run : rough.runs()) {
            lines.addAll(lines(meter.delays(run)));
        }
        lines = merged(lines);
        List<EditMap.Stretch> stretches = stretches(lines);
        return new EditMap(old.lengthUs(), now.lengthUs(), stretches, changes(stretches), rough.likeness() * share(stretches));
    }

    /**
     * Share of the shorter track that both have, as far as it stands a closer look: other music of the same band has chords in common, but
     * not the moments of its notes. One quarter is enough to be sure that they are edits of one piece.
     */
    private double share(List<EditMap.Stretch> stretches) {
        long common = stretches.stream().filter(s -> Likeness.holds(old, now, s)).mapToLong(s -> s.oldEndUs() - s.oldStartUs()).sum();
        return Math.min(1, 4.0 * common / Math.max(1, Math.min(old.lengthUs(), now.lengthUs())));
    }

    /** Divides the delays of a run where they jump. */
    private List<Line> lines(List<DelayMeter.Delay> delays) {
        List<Line> lines = new ArrayList<>();
        int from = 0;
        for (int i = FEWEST; i + FEWEST <= delays.size(); i++) {
            double jump = jump(delays, from, i);
            boolean most = jump >= jump(delays, from, i - 1) && jump > jump(delays, from, i + 1);
            if (jump > STEP_US && most) {
                lines.add(line(delays.subList(from, i)));
                from = i;
                i += FEWEST - 1;
            }
        }
        if (from < delays.size()) {
            lines.add(line(delays.subList(from, delays.size())));
        }
        return lines;
    }

    /** Distance between the line through some delays before and that through some from here on. */
    private static double jump(List<DelayMeter.Delay> delays, int from, int i) {
        if (i - from < FEWEST || i + FEWEST > delays.size()) {
            return 0;
        }
        Line before = line(delays.subList(Math.max(from, i - NEAR), i));
        Line after = line(delays.subList(i, Math.min(delays.size(), i + NEAR)));
        double at = (delays.get(i - 1).atUs() + delays.get(i).atUs()) / 2.0;
        return Math.abs(before.newAt(at) - after.newAt(at));
    }

    /** The median slope and delay (H. Theil, 1950): a few wrong delays do not move it. */
    private static Line line(List<DelayMeter.Delay> delays) {
        long from = delays.get(0).fromUs();
        long to = delays.get(delays.size() - 1).toUs();
        List<Double> slopes = new ArrayList<>();
        // In long stretches only distant pairs tell: the delays are measured to a fraction of a millisecond.
        int apart = Math.max(1, delays.size() / 4);
        for (int i = 0; i < delays.size(); i++) {
            for (int j = i + apart; j < delays.size(); j += apart) {
                slopes.add((delays.get(j).delayUs() - delays.get(i).delayUs()) / (delays.get(j).atUs() - delays.get(i).atUs()));
            }
        }
        double slope = delays.size() < FEWEST ? 0 : median(slopes);
        // A drift of less than the measure's own error over the stretch is none; a large one is chance.
        double drift = Math.abs(slope) * (delays.get(delays.size() - 1).atUs() - delays.get(0).atUs());
        if (drift < STEADY_US || Math.abs(slope) > STEEPEST) {
            slope = 0;
        }
        List<Double> delay = new ArrayList<>();
        for (DelayMeter.Delay d : delays) {
            delay.add(d.delayUs() - slope * (d.atUs() - from));
        }
        return new Line(from, to, median(delay), slope);
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        int n = sorted.size();
        return n % 2 == 1 ? sorted.get(n / 2) : (sorted.get(n / 2 - 1) + sorted.get(n / 2)) / 2;
    }

    /** Neighbours on one line are one: the rough alignment had only stumbled. */
    private static List<Line> merged(List<Line> lines) {
        List<Line> merged = new ArrayList<>();
        for (Line line : lines) {
            Line last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last != null && Math.abs(last.newAt(line.fromUs) - line.newAt(line.fromUs)) < LEAST_CHANGE_US
                    && Math.abs(last.slope - line.slope) < 0.002) {
                Line longer = last.toUs - last.fromUs >= line.toUs - line.fromUs ? last : line;
                double delay = longer.newAt(last.fromUs) - last.fromUs;
                merged.set(merged.size() - 1, new Line(last.fromUs, line.toUs, delay, longer.slope));
            } else {
                merged.add(line);
            }
        }
        return merged;
    }

    private List<EditMap.Stretch> stretches(List<Line> lines) {
        List<EditMap.Stretch> stretches = new ArrayList<>();
        double oldFrom = 0;
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            if (i == 0) {
                // As far back as both tracks reach, if they are alike there.
                oldFrom = startOf(line);
            }
            double oldTo;
            double nextFrom;
            if (i + 1 < lines.size()) {
                double[] joint = joint(line, lines.get(i + 1), oldFrom);
                oldTo = joint[0];
                nextFrom = joint[1];
            } else {
                oldTo = endOf(line);
                nextFrom = oldTo;
            }
            if (oldTo > oldFrom) {
                stretches.add(new EditMap.Stretch(Math.round(oldFrom), Math.round(oldTo), Math.round(line.newAt(oldFrom)),
                        Math.round(line.newAt(oldTo))));
            }
            oldFrom = nextFrom;
        }
        return stretches;
    }

    private double startOf(Line line) {
        double reach = Math.max(0, -line.newAt(0));
        return Likeness.edge(old, now, line::newAt, line.fromUs, reach, -1);
    }

    private double endOf(Line line) {
        double reach = Math.min(old.lengthUs(), old.lengthUs() - Math.max(0, line.newAt(old.lengthUs()) - now.lengthUs()));
        return Likeness.edge(old, now, line::newAt, line.toUs, reach, 1);
    }

    /** Old time where the first line ends and where the second begins. */
    private double[] joint(Line before, Line after, double oldFrom) {
        double shift = after.newAt(after.fromUs) - before.newAt(after.fromUs);
        double newGap = after.newAt(after.fromUs) - before.newAt(before.toUs);
        double oldGap = after.fromUs - (double) before.toUs;
        double common = Math.min(oldGap, newGap);
        if (common > Likeness.REPLACED_US) {
            double end = Likeness.edge(old, now, before::newAt, before.toUs, before.toUs + common, 1);
            double start = Likeness.edge(old, now, after::newAt, after.fromUs, after.fromUs - common, -1);
            boolean bothLost = start - end > Likeness.REPLACED_US / 2.0 && after.newAt(start) - before.newAt(end) > Likeness.REPLACED_US / 2.0;
            if (bothLost) {
                return new double[] { end, start };
            }
        }
        // Music that repeats may have led the rough alignment to another repetition: the whole of both stretches is searched.
        if (shift < 0) {
            // Cut: in the new track the two meet; walk along its time.
            double c = Likeness.meeting(now, old, n -> oldOf(before, n), n -> oldOf(after, n), before.newAt(oldFrom), after.newAt(after.toUs));
            return new double[] { oldOf(before, c), oldOf(after, c) };
        }
        double p = Likeness.meeting(old, now, before::newAt, after::newAt, oldFrom, after.toUs);
        return new double[] { p, p };
    }

    private static double oldOf(Line line, double newUs) {
        return line.fromUs + (newUs - line.fromUs - line.delayUs) / (1 + line.slope);
    }

    private List<EditMap.Change> changes(List<EditMap.Stretch> stretches) {
        List<EditMap.Change> changes = new ArrayList<>();
        long oldAt = 0;
        long newAt = 0;
        for (EditMap.Stretch s : stretches) {
            change(changes, oldAt, s.oldStartUs(), newAt, s.newStartUs());
            oldAt = s.oldEndUs();
            newAt = s.newEndUs();
        }
        change(changes, oldAt, old.lengthUs(), newAt, now.lengthUs());
        return changes;
    }

    private static void change(List<EditMap.Change> changes, long oldFrom, long oldTo, long newFrom, long newTo) {
        boolean cut = oldTo - oldFrom >= LEAST_CHANGE_US;
        boolean inserted = newTo - newFrom >= LEAST_CHANGE_US;
        if (cut || inserted) {
            EditMap.Kind kind = cut && inserted ? EditMap.Kind.REPLACED : cut ? EditMap.Kind.CUT : EditMap.Kind.INSERTED;
            changes.add(new EditMap.Change(kind, oldFrom, Math.max(oldFrom, oldTo), newFrom, Math.max(newFrom, newTo)));
        }
    }
}
