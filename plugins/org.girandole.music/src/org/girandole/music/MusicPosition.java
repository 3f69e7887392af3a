package org.girandole.music;

import java.util.Objects;

/**
 * A place in the music that offsets are added to without rounding in between: {@code bar 9 + 2 beats - 100 ms} rounds
 * once, when {@link #timeUs()} is asked for. Immutable.
 *
 * <p>It is held as it was said, in beats or in time, and changed into the other only when an offset needs it. That
 * change is exact where the tempo is constant and within 0.001 us in ramps.
 */
public final class MusicPosition implements Comparable<MusicPosition> {
    /** Far beyond any piece, and small enough for every later sum. */
    private static final Rational FARTHEST = Rational.of(1_000_000);

    private final TempoMap map;
    private final Rational beats;
    private final Rational us;

    private MusicPosition(TempoMap map, Rational beats, Rational us) {
        this.map = map;
        this.beats = beats;
        this.us = us;
    }

    static MusicPosition atBeats(TempoMap map, Rational beats) {
        return new MusicPosition(map, Objects.requireNonNull(beats, "beats"), null);
    }

    static MusicPosition atTime(TempoMap map, Rational us) {
        return new MusicPosition(map, null, Objects.requireNonNull(us, "us"));
    }

    /** Later (negative: earlier) by beats of the meter at each place passed. @throws MusicTimeException beyond a million */
    public MusicPosition plusBeats(Rational count) {
        checkDistance(count, "beats");
        return atBeats(map, beats().plus(count));
    }

    /**
     * Later or earlier by bars. Whole bars keep the distance from the bar line: from beat 3 of a bar, one bar on is
     * beat 3 of the next, whatever the meters. A remaining part of a bar is that part of the bar that it starts to run
     * through: forwards the bar it stands in, backwards the bar to the left of it.
     *
     * @throws MusicTimeException beyond a million
     */
    public MusicPosition plusBars(Rational count) {
        checkDistance(count, "bars");
        long whole = count.signum() < 0 ? count.ceil() : count.floor();
        Rational part = count.minus(Rational.of(whole));
        BarBeat from = map.barBeatOf(beats());
        Rational inBar = from.beat().minus(Rational.ONE);
        Rational target = map.beatsOfBarLine(from.bar() + whole).plus(inBar);
        if (part.signum() == 0) {
            return atBeats(map, target);
        }
        BarBeat at = map.barBeatOf(target);
        boolean leftBar = part.signum() < 0 && at.beat().equals(Rational.ONE);
        int length = map.meterOfBar(leftBar ? at.bar() - 1 : at.bar()).beatsPerBar();
        return atBeats(map, target.plus(part.times(length)));
    }

    private static void checkDistance(Rational count, String what) {
        if (count.abs().compareTo(FARTHEST) > 0) {
            throw new MusicTimeException(count + " " + what + " is farther than any music; at most " + FARTHEST + " are possible");
        }
    }

    /** Later or earlier by microseconds, or a part of one: frames and samples are exact too. */
    public MusicPosition plusUs(Rational count) {
        return atTime(map, exactUs().plus(count));
    }

    /** Later or earlier by microseconds. */
    public MusicPosition plusUs(long count) {
        return plusUs(Rational.of(count));
    }

    /** Show time in microseconds, rounded half up from the exact position. */
    public long timeUs() {
        return exactUs().roundHalfUp();
    }

    /** Show time in microseconds before rounding. */
    public Rational exactUs() {
        return us != null ? us : map.exactUsAtBeats(beats);
    }

    /** Beats from bar 1 beat 1. */
    public Rational beats() {
        return beats != null ? beats : map.beatsAtUs(us);
    }

    /** Bar and beat of this place. */
    public BarBeat barBeat() {
        return beats != null ? map.barBeatOf(beats) : us.isWhole() ? map.barBeatAt(us.roundHalfUp()) : map.barBeatOf(beats());
    }

    /** By exact time. */
    @Override
    public int compareTo(MusicPosition other) {
        return exactUs().compareTo(other.exactUs());
    }

    /** Same map and same exact time. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MusicPosition p && map.equals(p.map) && exactUs().equals(p.exactUs());
    }

    @Override
    public int hashCode() {
        return exactUs().hashCode();
    }

    @Override
    public String toString() {
        return barBeat() + " (" + timeUs() + " us)";
    }
}
