package org.girandole.plan.schedule;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.music.MusicTimeException;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;
import org.girandole.timecode.ExactMicros;
import org.girandole.timecode.FrameRate;

/** Turns the written moments of one soundtrack into times. Its marks are resolved once, when it is made. */
final class Ruler {
    /** A show lasts an evening. What lies farther from its first note is a slip of the pen and would overflow later sums. */
    private static final Rational FARTHEST_US = Rational.of(24L * 3600 * 1_000_000);

    private final String soundtrack;
    private final Optional<TempoMap> tempo;
    private final Optional<FrameRate> rate;
    private final Map<String, Mark> writtenMarks = new LinkedHashMap<>();
    private final Map<String, Moment> marks = new LinkedHashMap<>();
    private final Set<String> brokenMarks = new LinkedHashSet<>();

    Ruler(Soundtrack soundtrack, TroubleLog troubles) {
        this.soundtrack = soundtrack.name();
        this.tempo = TempoMaps.of(soundtrack, troubles);
        this.rate = soundtrack.rate();
        resolveMarks(soundtrack, troubles);
    }

    Optional<TempoMap> tempo() {
        return tempo;
    }

    /** The mark as it is written. */
    Optional<Mark> written(String mark) {
        return Optional.ofNullable(writtenMarks.get(mark));
    }

    Optional<FrameRate> rate() {
        return rate;
    }

    /** The first note. */
    Moment firstNote() {
        return at(0);
    }

    /** Resolved marks in the order of the script. */
    Map<String, Moment> marks() {
        return Collections.unmodifiableMap(marks);
    }

    /** The moment that an expression means inside something that begins at {@code origin}. */
    Moment resolve(TimeExpr written, Moment origin) throws Unresolved {
        return guarded(written.source(), () -> plus(anchor(written, origin), written.steps(), 1, written.source()));
    }

    /** {@code times} durations after {@code from}; every step of the duration is multiplied, then added in the order written. */
    Moment plus(Moment from, Duration duration, int times) throws Unresolved {
        return guarded(duration.source(), () -> plus(from, duration.steps(), times, duration.source()));
    }

    private Moment at(long us) {
        return tempo.map(map -> Moment.inMusic(map.positionAt(us))).orElseGet(() -> Moment.onClock(Rational.of(us)));
    }

    Moment anchor(TimeExpr written, Moment origin) throws Unresolved {
        TimeExpr.Anchor anchor = written.anchor();
        if (anchor instanceof TimeExpr.AtMark atMark) {
            return mark(atMark.mark(), written.source());
        } else if (anchor instanceof TimeExpr.AtBar atBar) {
            TempoMap map = tempo.orElseThrow(() -> noTempo(written.source()));
            return Moment.inMusic(map.positionOf(atBar.bar(), atBar.beat()));
        } else if (anchor instanceof TimeExpr.AtClock atClock) {
            return at(atClock.us());
        }
        return origin;
    }

    private Moment mark(String name, SourceRef source) throws Unresolved {
        Moment moment = marks.get(name);
        if (moment != null) {
            return moment;
        }
        if (brokenMarks.contains(name)) {
            throw new Unresolved(Troubles.MARK_UNKNOWN, "Mark " + name + " of " + soundtrack + " has no time of its own",
                    name, "a mark with a time", "mend the mark first", source);
        }
        throw new Unresolved(Troubles.MARK_UNKNOWN, "Soundtrack " + soundtrack + " has no mark " + name, name,
                "one of its marks", "add 'mark " + name + " at …' to the soundtrack, or correct the name", source);
    }

    private Moment plus(Moment from, Iterable<TimeExpr.Step> steps, int times, SourceRef source) throws Unresolved {
        Moment moment = from;
        for (TimeExpr.Step step : steps) {
            Rational amount = step.amount().times(times);
            moment = switch (step.unit()) {
                case BEAT -> musical(moment, source).plusBeats(amount);
                case BAR -> musical(moment, source).plusBars(amount);
                case MICROSECOND -> moment.plusUs(amount);
                case FRAME -> moment.plusUs(amount.times(frameUs(source)));
            };
        }
        return moment;
    }

    private Moment musical(Moment moment, SourceRef source) throws Unresolved {
        if (!moment.hasTempo()) {
            throw noTempo(source);
        }
        return moment;
    }

    private Unresolved noTempo(SourceRef source) {
        return new Unresolved(Troubles.BEAT_WITHOUT_TEMPO, "Bars and beats are counted here, but " + soundtrack
                + " has no usable tempo", "no tempo", "a tempo block", "give the soundtrack a tempo block, or write the time as m:ss.mmm",
                source);
    }

    private Rational frameUs(SourceRef source) throws Unresolved {
        ExactMicros length = rate.map(FrameRate::frameLength).orElseThrow(() -> new Unresolved(Troubles.FRAME_WITHOUT_RATE,
                "Frames are counted here, but " + soundtrack + " has no timecode rate", "no rate", "a timecode line",
                "give the soundtrack a timecode line, or write the time in milliseconds", source));
        return Rational.of(length.numerator(), length.denominator());
    }

    private Moment guarded(SourceRef source, Resolution resolution) throws Unresolved {
        try {
            Moment moment = resolution.resolve();
            if (moment.exactUs().abs().compareTo(FARTHEST_US) > 0) {
                throw new Unresolved(Troubles.MOMENT_IMPOSSIBLE, "This moment lies more than a day from the first note",
                        "more than 24 h", "less than 24 h", "correct the number or its unit", source);
            }
            return moment;
        } catch (MusicTimeException | ArithmeticException e) {
            throw new Unresolved(Troubles.MOMENT_IMPOSSIBLE, "This is no moment of " + soundtrack + ": " + e.getMessage(),
                    "a moment that the tempo map does not have", "a bar and a beat that it has", "correct the bar, the beat or the number", source);
        }
    }

    /**
     * Marks may lean on marks written before or after them. Each leans on one other at most, so that the way to a mark that leans on
     * none is a line, walked without recursion: a file of markers may be long.
     */
    private void resolveMarks(Soundtrack script, TroubleLog troubles) {
        script.marks().forEach(mark -> writtenMarks.putIfAbsent(mark.name(), mark));
        Map<String, Moment> resolved = new LinkedHashMap<>();
        for (Mark mark : writtenMarks.values()) {
            Deque<Mark> waiting = new ArrayDeque<>();
            Set<String> onTheWay = new LinkedHashSet<>();
            Mark next = mark;
            while (next != null && !marks.containsKey(next.name()) && !brokenMarks.contains(next.name())) {
                if (!onTheWay.add(next.name())) {
                    reportCircle(onTheWay, next, troubles);
                    break;
                }
                waiting.push(next);
                next = next.at().anchor() instanceof TimeExpr.AtMark other ? writtenMarks.get(other.mark()) : null;
            }
            while (!waiting.isEmpty()) {
                resolveMark(waiting.pop(), troubles);
            }
        }
        writtenMarks.keySet().stream().filter(marks::containsKey).forEach(name -> resolved.put(name, marks.get(name)));
        marks.clear();
        marks.putAll(resolved);
    }

    private void resolveMark(Mark mark, TroubleLog troubles) {
        if (brokenMarks.contains(mark.name())) {
            return;
        }
        try {
            marks.put(mark.name(), resolve(mark.at(), firstNote()));
        } catch (Unresolved e) {
            brokenMarks.add(mark.name());
            troubles.report(e);
        }
    }

    private void reportCircle(Set<String> way, Mark again, TroubleLog troubles) {
        StringBuilder circle = new StringBuilder();
        boolean inside = false;
        for (String name : way) {
            inside |= name.equals(again.name());
            if (inside) {
                brokenMarks.add(name);
                circle.append(name).append(" -> ");
            }
        }
        circle.append(again.name());
        troubles.report(Troubles.MARK_CIRCULAR, "The marks of " + soundtrack + " go round in a circle: " + circle)
                .found(circle.toString(), "a mark that leans on a bar or a time in the end")
                .remedy("give one of them a bar or a time")
                .about(Subject.of(soundtrack, again.name()))
                .at(again.source());
    }

    /** A computation that may find its input impossible. */
    private interface Resolution {
        Moment resolve() throws Unresolved;
    }
}
