package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.junit.jupiter.api.Test;

class TidyTempoTest {
    private static final Meter FOUR = new Meter(4, 4);
    private static final Meter THREE = new Meter(3, 4);

    private static Rational bpm(String number) {
        return Rational.parse(number);
    }

    @Test
    void whatWasHeardAlmostRoundIsWrittenRound() {
        TempoMap heard = TempoMap.startingAt(2_005_103, bpm("72.005"), FOUR).tempo(33, bpm("95.988"), FOUR).tempo(57, bpm("96.066"), FOUR)
                .ramp(57, bpm("120.153"), 61).tempo(61, bpm("119.996"), FOUR).build();
        TempoMap round = TempoMap.startingAt(2_005_000, bpm("72"), FOUR).tempo(33, bpm("96"), FOUR).ramp(57, bpm("120"), 61).build();
        assertThat(TidyTempo.of(heard, 93, 10_000)).isEqualTo(round);
    }

    @Test
    void aTempoThatIsNotRoundStays() {
        TempoMap heard = TempoMap.startingAt(0, bpm("101.337"), FOUR).build();
        TempoMap tidy = TidyTempo.of(heard, 200, 5_000);
        for (int bar = 1; bar <= 200; bar++) {
            assertThat(tidy.timeUsOfBar(bar, Rational.ONE)).isCloseTo(heard.timeUsOfBar(bar, Rational.ONE), within(5_000L));
        }
    }

    @Test
    void aMeterIsNeverLeftOut() {
        TempoMap heard = TempoMap.startingAt(0, bpm("100"), FOUR).tempo(9, bpm("100.01"), THREE).tempo(17, bpm("99.99"), FOUR).build();
        TempoMap tidy = TidyTempo.of(heard, 30, 10_000);
        assertThat(tidy.meterOfBar(9)).isEqualTo(THREE);
        assertThat(tidy.meterOfBar(17)).isEqualTo(FOUR);
        assertThat(tidy.timeUsOfBar(30, Rational.ONE)).isCloseTo(heard.timeUsOfBar(30, Rational.ONE), within(10_000L));
    }

    @Test
    void aMapOfVeryManyLinesIsLeftAsItIs() {
        TempoMap.Builder builder = TempoMap.startingAt(0, bpm("100"), FOUR);
        for (int bar = 2; bar < 500; bar++) {
            builder.tempo(bar, Rational.of(100_000 + bar % 7, 1000));
        }
        TempoMap heard = builder.build();
        assertThat(TidyTempo.of(heard, 500, 10_000)).isSameAs(heard);
    }
}
