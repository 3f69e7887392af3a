package org.girandole.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TempoMapTest {
    private static final Meter FOUR = new Meter(4, 4);
    private static final Meter THREE = new Meter(3, 4);

    private static Rational r(String text) {
        return Rational.parse(text);
    }

    private static TempoMap steady(String bpm) {
        return TempoMap.constant(0, r(bpm), FOUR);
    }

    /** Plain arithmetic: one beat is 60 / bpm seconds; at 48 kHz that many samples, at the rate that many frames. */
    @ParameterizedTest
    @CsvSource({
        "90,  0.666667, 16,      16.6667,  19.98,   20,      32000",
        "120, 0.5,      12,      12.5,     14.985,  15,      24000",
        "125, 0.48,     11.52,   12,       14.3856, 14.4,    23040",
        "128, 0.46875,  11.25,   11.71875, 14.0485, 14.0625, 22500",
        "140, 0.428571, 10.2857, 10.7143,  12.8443, 12.8571, 20571.429",
        "150, 0.4,      9.6,     10,       11.988,  12,      19200",
        "174, 0.344828, 8.2759,  8.6207,   10.3345, 10.3448, 16551.724" })
    void aBeatLastsSoManySecondsFramesAndSamples(String bpm, double seconds, double at24, double at25, double at2997,
            double at30, double samples) {
        Rational us = steady(bpm).exactUsAtBeats(Rational.ONE);
        Rational beat = us.dividedBy(Rational.of(1_000_000));
        assertThat(beat.toDouble()).isCloseTo(seconds, within(5e-7));
        assertThat(beat.times(24).toDouble()).isCloseTo(at24, within(5e-5));
        assertThat(beat.times(25).toDouble()).isCloseTo(at25, within(5e-5));
        assertThat(beat.times(Rational.of(30_000, 1001)).toDouble()).isCloseTo(at2997, within(5e-5));
        assertThat(beat.times(30).toDouble()).isCloseTo(at30, within(5e-5));
        assertThat(beat.times(48_000).toDouble()).isCloseTo(samples, within(5e-4));
    }

    /** Plain arithmetic: floor(60 k / 128 * 25 + 1/2), from the absolute time of beat k. */
    @Test
    void beatsAt128FallOnTheseFramesAt25() {
        List<Long> frames = new ArrayList<>();
        for (int k = 0; k <= 8; k++) {
            frames.add(steady("128").exactUsAtBeats(Rational.of(k)).times(25).dividedBy(Rational.of(1_000_000)).roundHalfUp());
        }
        assertThat(frames).containsExactly(0L, 12L, 23L, 35L, 47L, 59L, 70L, 82L, 94L);
    }

    /** The two integrals of dt = 60 dx / v: 60 * 16 * ln(140/120) / 20 s, and 960 / 130 s. */
    @Test
    void aRampFrom120To140Over16BeatsLasts() {
        TempoMap inBeats = TempoMap.startingAt(0, r("120"), FOUR).ramp(1, r("140"), 5, RampLaw.LINEAR_IN_BEATS).build();
        TempoMap inTime = TempoMap.startingAt(0, r("120"), FOUR).ramp(1, r("140"), 5, RampLaw.LINEAR_IN_TIME).build();
        assertThat(inBeats.timeUsOfBar(5, Rational.ONE)).isEqualTo(7_399_233);
        assertThat(inTime.timeUsOfBar(5, Rational.ONE)).isEqualTo(7_384_615);
        assertThat(inTime.exactUsAtBeats(Rational.of(16))).isEqualTo(Rational.of(960_000_000, 130));
    }

    /** Numerical integration of dt = dx / v by the midpoint rule, which knows nothing of the closed forms. */
    @Test
    void everyBeatOfARampAgreesWithNumericalIntegration() {
        TempoMap inBeats = TempoMap.startingAt(0, r("60"), FOUR).ramp(1, r("180"), 9, RampLaw.LINEAR_IN_BEATS).build();
        TempoMap inTime = TempoMap.startingAt(0, r("180"), FOUR).ramp(1, r("60"), 9, RampLaw.LINEAR_IN_TIME).build();
        double inTimeLength = 2 * 32 * 60.0 / (180 + 60);
        int steps = 20_000;
        double us = 0;
        for (int beat = 0; beat < 32; beat++) {
            for (int i = 0; i < steps; i++) {
                double x = beat + (i + 0.5) / steps;
                us += 60e6 / (60 + 120 * x / 32) / steps;
            }
            assertThat(inBeats.exactUsAtBeats(Rational.of(beat + 1)).toDouble()).isCloseTo(us, within(0.1));
        }
        double beats = 0;
        for (int ms = 0; ms < (int) (inTimeLength * 1000); ms++) {
            for (int i = 0; i < 100; i++) {
                beats += (180 - 120 * (ms + (i + 0.5) / 100) / 1000 / inTimeLength) / 60 / 100_000;
            }
            assertThat(inTime.beatsAt((ms + 1) * 1000L).toDouble()).isCloseTo(beats, within(1e-9));
        }
    }

    @Test
    void aRampIsReachedHeldAndLeftOnItsBars() {
        TempoMap map = TempoMap.startingAt(1_000_000, r("120"), FOUR).ramp(3, r("60"), 5).tempo(7, r("90"), THREE).build();
        long end = map.timeUsOfBar(5, Rational.ONE);
        assertThat(map.timeUsOfBar(3, Rational.ONE)).isEqualTo(5_000_000);
        assertThat(map.bpmAt(0)).isEqualTo(r("120"));
        assertThat(map.bpmAt(5_000_000)).isEqualTo(r("120"));
        assertThat(map.bpmAt(map.timeUsOfBar(4, Rational.ONE)).toDouble()).isCloseTo(90, within(1e-4));
        assertThat(map.bpmAt(end + 1)).isEqualTo(r("60"));
        assertThat(map.timeUsOfBar(7, Rational.ONE) - end).isEqualTo(8_000_000);
        assertThat(map.meterAt(map.timeUsOfBar(7, Rational.ONE))).isEqualTo(THREE);
        assertThat(map.timeUsOfBar(8, Rational.ONE) - map.timeUsOfBar(7, Rational.ONE)).isEqualTo(2_000_000);
    }

    @Test
    void theFirstTempoRunsBackwardsBeforeTheFirstBarEvenWhenItRamps() {
        TempoMap map = TempoMap.startingAt(2_000_000, r("120"), FOUR).ramp(1, r("240"), 2).build();
        assertThat(map.barBeatAt(0)).isEqualTo(new BarBeat(0, Rational.ONE));
        assertThat(map.barBeatAt(-500_000)).isEqualTo(new BarBeat(-1, Rational.of(4)));
        assertThat(map.plusBeats(0, Rational.of(4))).isEqualTo(2_000_000);
        assertThat(map.plusBars(2_000_000, Rational.of(-2))).isEqualTo(-2_000_000);
    }

    /** Four thirds of a microsecond apart: adding rounded beats would drift by a second in a million; nothing may drift. */
    @Test
    void nothingAccumulates() {
        TempoMap map = steady("97");
        MusicPosition walking = map.positionOf(1, Rational.ONE);
        for (int k = 1; k <= 970; k++) {
            walking = walking.plusBeats(Rational.of(1, 3)).plusUs(Rational.of(1, 7)).plusUs(Rational.of(-1, 7));
        }
        assertThat(walking.exactUs()).isEqualTo(Rational.of(200_000_000));
        assertThat(walking.beats()).isEqualTo(Rational.of(970, 3));
    }

    @Test
    void offsetsResolveInTheTempoOfTheirPlace() {
        TempoMap map = TempoMap.startingAt(0, r("60"), FOUR).tempo(2, r("120"), FOUR).build();
        assertThat(map.plusBeats(3_000_000, Rational.of(2))).isEqualTo(4_500_000);
        assertThat(map.plusBeats(4_500_000, Rational.of(-2))).isEqualTo(3_000_000);
        assertThat(map.positionOf(2, Rational.ONE).plusBeats(r("1/2")).timeUs()).isEqualTo(4_250_000);
        assertThat(map.positionOf(2, Rational.ONE).plusBars(Rational.of(-1)).timeUs()).isZero();
    }

    @Test
    void barsKeepTheDistanceFromTheBarLineThroughMeters() {
        TempoMap map = TempoMap.startingAt(0, r("60"), FOUR).tempo(3, r("60"), THREE).tempo(5, r("120"), new Meter(6, 8)).build();
        assertThat(map.positionOf(2, Rational.ONE).plusBars(Rational.ONE).barBeat()).isEqualTo(new BarBeat(3, Rational.ONE));
        assertThat(map.positionOf(2, Rational.of(3)).plusBars(Rational.of(3)).barBeat()).isEqualTo(new BarBeat(5, Rational.of(3)));
        assertThat(map.positionOf(5, Rational.ONE).plusBars(Rational.of(-1)).barBeat()).isEqualTo(new BarBeat(4, Rational.ONE));
        assertThat(map.positionOf(3, Rational.ONE).plusBars(r("-1/2")).barBeat()).isEqualTo(new BarBeat(2, Rational.of(3)));
        assertThat(map.positionOf(5, Rational.ONE).plusBars(r("1/2")).barBeat()).isEqualTo(new BarBeat(5, Rational.of(4)));
        // Beat 4 does not exist in a bar of 3/4: three beats after its bar line the next bar begins.
        assertThat(map.positionOf(2, Rational.of(4)).plusBars(Rational.ONE).barBeat()).isEqualTo(new BarBeat(4, Rational.ONE));
    }

    @Test
    void aMeterAloneKeepsTheTempo() {
        TempoMap map = TempoMap.startingAt(0, r("120"), FOUR).meter(2, new Meter(5, 4)).build();
        assertThat(map.timeUsOfBar(3, Rational.ONE)).isEqualTo(4_500_000);
        assertThat(map.timeUsOfBar(2, r("5.5"))).isEqualTo(4_250_000);
    }

    @Test
    void aMapIsItsLines() {
        TempoMap map = TempoMap.startingAt(5, r("72"), FOUR).tempo(33, r("96")).ramp(33, r("120"), 41).build();
        assertThat(TempoMap.of(map.events())).isEqualTo(map);
        assertThat(map.events()).hasSize(3);
    }

    /** Seeded maps with steps, ramps of both laws, and odd tempi; a place must survive time and back. */
    @Test
    void placesComeBackFromTheirTimes() {
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            TempoMap map = anyMap(random);
            for (int i = 0; i < 60; i++) {
                int bar = 1 + random.nextInt(200);
                int beats = map.meterOfBar(bar).beatsPerBar();
                Rational beat = Rational.of(1 + random.nextInt(beats)).plus(Rational.of(random.nextInt(12), 12));
                long us = map.timeUsOfBar(bar, beat);
                assertThat(map.barBeatAt(us)).isEqualTo(new BarBeat(bar, beat));
                long any = (long) (random.nextDouble() * 400_000_000) - 5_000_000;
                assertThat(map.timeUsAtBeats(map.beatsAt(any))).isEqualTo(any);
                assertThat(map.plusBeats(map.plusBeats(any, beat), beat.negate())).isBetween(any - 2, any + 2);
            }
        }
    }

    /** More events than 64-bit fractions could carry: the common denominator of the bar times has hundreds of digits. */
    @Test
    void manyOddTempiStayExact() {
        TempoMap.Builder builder = TempoMap.startingAt(0, r("100"), FOUR);
        Rational expected = Rational.of(4).times(60_000_000).dividedBy(r("100"));
        for (int bar = 2; bar <= 200; bar++) {
            Rational bpm = Rational.of(100_003 + 2 * bar, 1000);
            builder.tempo(bar, bpm);
            expected = expected.plus(Rational.of(240_000_000).dividedBy(bpm));
        }
        assertThat(builder.build().exactUsAtBeats(Rational.of(800))).isEqualTo(expected);
    }

    private static TempoMap anyMap(Random random) {
        TempoMap.Builder builder = TempoMap.startingAt(random.nextInt(3_000_000), anyBpm(random), FOUR);
        int bar = 1;
        Meter meter = FOUR;
        for (int i = 0; i < 8; i++) {
            bar += 1 + random.nextInt(12);
            if (random.nextBoolean()) {
                meter = new Meter(2 + random.nextInt(6), random.nextBoolean() ? 4 : 8);
                builder.tempo(bar, anyBpm(random), meter);
            } else {
                int end = bar + 1 + random.nextInt(8);
                builder.ramp(bar, anyBpm(random), end, random.nextBoolean() ? RampLaw.LINEAR_IN_BEATS : RampLaw.LINEAR_IN_TIME);
                bar = end;
            }
        }
        return builder.build();
    }

    private static Rational anyBpm(Random random) {
        return Rational.of(40_000 + random.nextInt(160_000), 1000);
    }

    @Test
    void mistakesAreNamed() {
        TempoMap map = TempoMap.startingAt(0, r("120"), FOUR).tempo(5, r("90"), THREE).build();
        assertMistake(() -> map.timeUsOfBar(4, Rational.of(5)), "Bar 4 has no beat 5: it is 4/4, so its beats run from 1 to less than 5");
        assertMistake(() -> map.timeUsOfBar(5, Rational.of(4)), "Bar 5 has no beat 4: it is 3/4");
        assertMistake(() -> map.timeUsOfBar(1, r("1/2")), "Bar 1 has no beat 0.5");
        assertMistake(() -> map.timeUsOfBar(0, Rational.ONE), "Bars are counted from 1; there is no bar 0");
        assertMistake(() -> steady("0"), "tempo of 0 bpm; it must be more than 0 and at most 1000 bpm");
        assertMistake(() -> steady("-90"), "tempo of -90 bpm");
        assertMistake(() -> steady("1000.5"), "tempo of 1000.5 bpm");
        assertMistake(() -> new Meter(4, 5), "the lower number must be 1, 2, 4, 8, 16, 32 or 64");
        assertMistake(() -> new Meter(4, 0), "the lower number must be");
        assertMistake(() -> new Meter(0, 4), "has 0 beats in a bar");
        assertMistake(() -> from().tempo(9, r("90")).tempo(5, r("80")), "bar 5 comes after one that reaches bar 9");
        assertMistake(() -> from().ramp(5, r("90"), 9).tempo(7, r("80")), "none inside a ramp");
        assertMistake(() -> from().ramp(5, r("90"), 5), "it must end at a later bar");
        assertMistake(() -> from().tempo(5, r("90")).tempo(5, r("80")), "Bar 5 already has a tempo line");
        assertMistake(() -> from().tempo(1, r("90")), "Bar 1 already has a tempo line");
        assertMistake(() -> from().tempo(-3, r("90")), "a tempo line has bar -3");
        assertMistake(() -> from().meter(3, new Meter(6, 8)), "changes the beat from a 1/4 note to a 1/8 note; write its bpm as well");
        assertMistake(() -> from().tempo(3, null), "changes neither tempo nor meter");
        assertMistake(() -> TempoMap.of(List.of()), "starts with a line that has a time");
        assertMistake(() -> from().add(new TempoEvent.Start(0, r("90"), FOUR)), "Only the first line");
        assertMistake(() -> map.plusBars(0, Rational.of(2_000_000)), "farther than any music");
        assertMistake(() -> map.plusBeats(0, Rational.of(-2_000_000)), "farther than any music");
    }

    private static TempoMap.Builder from() {
        return TempoMap.startingAt(0, r("120"), FOUR);
    }

    private static void assertMistake(org.assertj.core.api.ThrowableAssert.ThrowingCallable call, String message) {
        assertThatThrownBy(call).isInstanceOf(MusicTimeException.class).hasMessageContaining(message);
    }
}
