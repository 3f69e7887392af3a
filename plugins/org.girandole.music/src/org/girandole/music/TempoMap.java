package org.girandole.music;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;

/**
 * Tempo and meter over a piece, and the way between bars and show time. Immutable.
 *
 * <p>Positions are counted in beats from bar 1 beat 1, each beat being that of the meter at its place. In stretches of
 * constant tempo both directions are exact; only the last step to a {@code long} rounds, half up, from the absolute
 * position, so that nothing accumulates. Inside ramps the error is below 0.001 us before that rounding (see
 * {@link TempoEvent.Ramp}). Before the first bar the first tempo and meter go on backwards; after the last event the
 * last ones go on for ever.
 */
public final class TempoMap {
    /** A position divided finer than this is not music; positions of the grid are never less than 2 us apart. */
    private static final long GRID_PER_BEAT = 20_160;

    private final List<TempoEvent> events;
    private final List<TempoSegment> segments;

    private TempoMap(List<TempoEvent> events, List<TempoSegment> segments) {
        this.events = List.copyOf(events);
        this.segments = List.copyOf(segments);
    }

    /** One tempo and one meter throughout. @throws MusicTimeException for an impossible tempo */
    public static TempoMap constant(long startUs, Rational bpm, Meter meter) {
        return startingAt(startUs, bpm, meter).build();
    }

    /** Starts a map: bar 1 beat 1 lies at {@code startUs}. @throws MusicTimeException for an impossible tempo */
    public static Builder startingAt(long startUs, Rational bpm, Meter meter) {
        return new Builder(new TempoEvent.Start(startUs, bpm, meter));
    }

    /**
     * A map of the given lines, in their order.
     *
     * @throws MusicTimeException if the first is not a {@link TempoEvent.Start}, or by the rules of {@link Builder}
     */
    public static TempoMap of(List<? extends TempoEvent> events) {
        if (events.isEmpty() || !(events.get(0) instanceof TempoEvent.Start start)) {
            throw new MusicTimeException("A tempo map starts with a line that has a time, such as 'at 0:02.000  72 bpm 4/4'");
        }
        Builder builder = new Builder(start);
        events.subList(1, events.size()).forEach(builder::add);
        return builder.build();
    }

    /** The lines this map was built from. */
    public List<TempoEvent> events() {
        return events;
    }

    /** Beats from bar 1 beat 1 to this place; exact. @throws MusicTimeException if bar or beat is not in the music */
    public Rational beatsOf(int bar, Rational beat) {
        if (bar < 1) {
            throw new MusicTimeException("Bars are counted from 1; there is no bar " + bar);
        }
        Meter meter = segmentOfBar(bar).meter;
        if (beat.compareTo(Rational.ONE) < 0 || beat.compareTo(Rational.of(meter.beatsPerBar() + 1L)) >= 0) {
            throw new MusicTimeException("Bar " + bar + " has no beat " + beat + ": it is " + meter
                    + ", so its beats run from 1 to less than " + (meter.beatsPerBar() + 1L));
        }
        return beatsOfBarLine(bar).plus(beat).minus(Rational.ONE);
    }

    /** The place as a {@link MusicPosition} for exact chains of offsets. @throws MusicTimeException as {@link #beatsOf} */
    public MusicPosition positionOf(int bar, Rational beat) {
        return MusicPosition.atBeats(this, beatsOf(bar, beat));
    }

    /** A show time as a {@link MusicPosition} for exact chains of offsets. */
    public MusicPosition positionAt(long timeUs) {
        return MusicPosition.atTime(this, Rational.of(timeUs));
    }

    /** Show time of a bar and beat, rounded half up. @throws MusicTimeException as {@link #beatsOf} */
    public long timeUsOfBar(int bar, Rational beat) {
        return timeUsAtBeats(beatsOf(bar, beat));
    }

    /** Show time of a position in beats from bar 1 beat 1 (negative: before it), rounded half up. */
    public long timeUsAtBeats(Rational beatsFromBarOne) {
        return exactUsAtBeats(beatsFromBarOne).roundHalfUp();
    }

    /** Microseconds of a position before rounding: exact in constant stretches, within 0.001 us in ramps. */
    public Rational exactUsAtBeats(Rational beatsFromBarOne) {
        TempoSegment s = segmentAtBeats(beatsFromBarOne);
        return s.startUs.plus(s.usAt(beatsFromBarOne.minus(s.startBeats)));
    }

    /** Beats from bar 1 beat 1 at a show time; exact in constant stretches. */
    public Rational beatsAt(long timeUs) {
        return beatsAtUs(Rational.of(timeUs));
    }

    /** As {@link #beatsAt} for a time between two microseconds. */
    public Rational beatsAtUs(Rational timeUs) {
        TempoSegment s = segmentAtUs(timeUs);
        return s.startBeats.plus(s.beatsAt(timeUs.minus(s.startUs)));
    }

    /** The time that lies {@code beats} later (or, negative, earlier) in the tempo of that place; rounded half up. */
    public long plusBeats(long fromUs, Rational beats) {
        return positionAt(fromUs).plusBeats(beats).timeUs();
    }

    /** The time that lies {@code bars} later or earlier; rounded half up. See {@link MusicPosition#plusBars}. */
    public long plusBars(long fromUs, Rational bars) {
        return positionAt(fromUs).plusBars(bars).timeUs();
    }

    /**
     * Bar and beat at a show time. A time that is the rounded time of a usual place (a beat divided by 64, 9, 5, 7 or
     * products of these up to 20160) gives that place, so that {@code barBeatAt(timeUsOfBar(b, x))} is {@code b, x}
     * again for those; any other time gives the exact fraction.
     */
    public BarBeat barBeatAt(long timeUs) {
        Rational beats = beatsAt(timeUs);
        Rational usual = Rational.of(beats.times(GRID_PER_BEAT).roundHalfUp(), GRID_PER_BEAT);
        return barBeatOf(timeUsAtBeats(usual) == timeUs ? usual : beats);
    }

    /** Bar and beat of a position in beats from bar 1 beat 1. */
    public BarBeat barBeatOf(Rational beatsFromBarOne) {
        TempoSegment s = segmentAtBeats(beatsFromBarOne);
        Rational offset = beatsFromBarOne.minus(s.startBeats);
        long bars = offset.dividedBy(Rational.of(s.meter.beatsPerBar())).floor();
        Rational inBar = offset.minus(Rational.of(bars * s.meter.beatsPerBar()));
        return new BarBeat(Math.toIntExact(s.bar + bars), inBar.plus(Rational.ONE));
    }

    /** Tempo at a show time, in beats a minute of the meter there; at the time of a change, the new one. */
    public Rational bpmAt(long timeUs) {
        TempoSegment s = segmentInForce(timeUs);
        return s.bpmAt(s.beatsAt(Rational.of(timeUs).minus(s.startUs)));
    }

    /** Meter at a show time; at the time of a change, the new one. */
    public Meter meterAt(long timeUs) {
        return segmentInForce(timeUs).meter;
    }

    /** Meter of a bar; bars before the first have the first meter. */
    public Meter meterOfBar(int bar) {
        return segmentOfBar(bar).meter;
    }

    /** Beats from bar 1 to the start of any bar, also of those before the first. */
    Rational beatsOfBarLine(long bar) {
        TempoSegment s = segmentOfBar(bar);
        return s.startBeats.plus(Rational.of((bar - s.bar) * s.meter.beatsPerBar()));
    }

    private TempoSegment segmentOfBar(long bar) {
        return lastNotAfter(s -> s.bar <= bar);
    }

    private TempoSegment segmentAtBeats(Rational beats) {
        return lastNotAfter(s -> s.startBeats.compareTo(beats) <= 0);
    }

    private TempoSegment segmentAtUs(Rational us) {
        return lastNotAfter(s -> s.startUs.compareTo(us) <= 0);
    }

    /** A bar line whose exact time lies a fraction of a microsecond later has, as a show time, been reached. */
    private TempoSegment segmentInForce(long timeUs) {
        return lastNotAfter(s -> s.startUs.roundHalfUp() <= timeUs);
    }

    /** The last segment that has begun, by binary search; the first one also serves what lies before it. */
    private TempoSegment lastNotAfter(Predicate<TempoSegment> begun) {
        int low = 0;
        int high = segments.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (begun.test(segments.get(middle))) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return segments.get(low);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TempoMap map && events.equals(map.events);
    }

    @Override
    public int hashCode() {
        return Objects.hash(events);
    }

    @Override
    public String toString() {
        return "TempoMap" + events;
    }

    /** Takes the lines of a map in the order of their bars; each is checked as it comes. */
    public static final class Builder {
        private static final Rational FASTEST_BPM = Rational.of(1000);

        private final List<TempoEvent> events = new ArrayList<>();
        private final List<TempoSegment> segments = new ArrayList<>();
        /** No event may touch a bar before this one: it is the end of a ramp. */
        private int freeFromBar = 1;

        private Builder(TempoEvent.Start start) {
            checkBpm(start.bpm(), "The first line");
            events.add(start);
            segments.add(new TempoSegment(1, Rational.ZERO, Rational.of(start.timeUs()), start.meter(), start.bpm(), null));
        }

        /** From {@code bar} on another tempo. @throws MusicTimeException for a bar out of order or an impossible tempo */
        public Builder tempo(int bar, Rational bpm) {
            return add(new TempoEvent.Step(bar, bpm, null));
        }

        /** From {@code bar} on another tempo and meter. @throws MusicTimeException as {@link #tempo} */
        public Builder tempo(int bar, Rational bpm, Meter meter) {
            return add(new TempoEvent.Step(bar, bpm, meter));
        }

        /** From {@code bar} on another meter at the same tempo. @throws MusicTimeException if the beat unit changes too */
        public Builder meter(int bar, Meter meter) {
            return add(new TempoEvent.Step(bar, null, meter));
        }

        /** A ramp, linear in beats. @throws MusicTimeException for bars out of order or an impossible tempo */
        public Builder ramp(int fromBar, Rational toBpm, int toBar) {
            return add(new TempoEvent.Ramp(fromBar, toBpm, toBar, RampLaw.LINEAR_IN_BEATS));
        }

        /** A ramp. @throws MusicTimeException for bars out of order or an impossible tempo */
        public Builder ramp(int fromBar, Rational toBpm, int toBar, RampLaw law) {
            return add(new TempoEvent.Ramp(fromBar, toBpm, toBar, law));
        }

        /** Any later line. @throws MusicTimeException with the reason when it does not fit */
        public Builder add(TempoEvent event) {
            if (event instanceof TempoEvent.Step step) {
                addStep(step);
            } else if (event instanceof TempoEvent.Ramp ramp) {
                addRamp(ramp);
            } else {
                throw new MusicTimeException("Only the first line of a tempo map has a time; give a bar to the others");
            }
            events.add(event);
            return this;
        }

        public TempoMap build() {
            return new TempoMap(events, segments);
        }

        private void addStep(TempoEvent.Step step) {
            TempoSegment last = segments.get(segments.size() - 1);
            checkBar(step.bar());
            boolean stepBefore = events.get(events.size() - 1) instanceof TempoEvent.Step before && before.bar() == step.bar();
            boolean atStart = step.bar() == 1;
            if (stepBefore || atStart) {
                throw new MusicTimeException("Bar " + step.bar() + " already has a tempo line; keep one of them");
            }
            if (step.bpm() == null && step.meter() == null) {
                throw new MusicTimeException("The line for bar " + step.bar() + " changes neither tempo nor meter");
            }
            if (step.bpm() == null && step.meter().beatUnit() != last.meter.beatUnit()) {
                throw new MusicTimeException("Bar " + step.bar() + " changes the beat from a 1/" + last.meter.beatUnit()
                        + " note to a 1/" + step.meter().beatUnit() + " note; write its bpm as well");
            }
            Rational bpm = last.bpm;
            if (step.bpm() != null) {
                checkBpm(step.bpm(), "Bar " + step.bar());
                bpm = step.bpm();
            }
            put(step.bar(), step.meter() == null ? last.meter : step.meter(), bpm, null);
            freeFromBar = step.bar();
        }

        private void addRamp(TempoEvent.Ramp ramp) {
            TempoSegment last = segments.get(segments.size() - 1);
            checkBar(ramp.fromBar());
            if (ramp.toBar() <= ramp.fromBar()) {
                throw new MusicTimeException("The ramp from bar " + ramp.fromBar() + " ends at bar " + ramp.toBar()
                        + "; it must end at a later bar");
            }
            checkBpm(ramp.toBpm(), "The ramp from bar " + ramp.fromBar());
            Rational length = Rational.of((long) (ramp.toBar() - ramp.fromBar()) * last.meter.beatsPerBar());
            put(ramp.fromBar(), last.meter, last.bpm, new TempoSegment.Ramp(ramp.toBpm(), length, ramp.law()));
            put(ramp.toBar(), last.meter, ramp.toBpm(), null);
            freeFromBar = ramp.toBar();
        }

        /** Starts a segment; one that starts where the last one does takes its place. */
        private void put(int bar, Meter meter, Rational bpm, TempoSegment.Ramp ramp) {
            TempoSegment last = segments.get(segments.size() - 1);
            Rational length = Rational.of((long) (bar - last.bar) * last.meter.beatsPerBar());
            if (length.signum() == 0) {
                segments.remove(segments.size() - 1);
            }
            segments.add(new TempoSegment(bar, last.startBeats.plus(length), last.startUs.plus(last.usAt(length)),
                    meter, bpm, ramp));
        }

        private void checkBar(int bar) {
            if (bar < 1) {
                throw new MusicTimeException("Bars are counted from 1; a tempo line has bar " + bar);
            }
            if (bar < freeFromBar) {
                throw new MusicTimeException("The tempo line for bar " + bar + " comes after one that reaches bar "
                        + freeFromBar + "; write them in the order of their bars, and none inside a ramp");
            }
        }

        private static void checkBpm(Rational bpm, String where) {
            if (bpm.signum() <= 0 || bpm.compareTo(FASTEST_BPM) > 0) {
                throw new MusicTimeException(where + " has a tempo of " + bpm
                        + " bpm; it must be more than 0 and at most " + FASTEST_BPM + " bpm");
            }
        }
    }
}
