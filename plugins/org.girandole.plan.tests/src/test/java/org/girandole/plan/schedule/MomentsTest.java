package org.girandole.plan.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Show;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.TempoEntry;
import org.girandole.plan.script.TimeExpr;
import org.junit.jupiter.api.Test;

/** When cues are to be seen. 120 bpm 4/4 from 0:02.000: a beat is 500 ms, a bar 2 s; all expectations by hand from that. */
class MomentsTest {
    private final Show show = new Show();

    @Test
    void marksLeanOnMarksWrittenBeforeAndAfterThem() {
        show.mark("Late", Show.mark("Early", Show.beats("2"))).mark("Early", Show.bar(9, "1"));

        Plan plan = show.plan();

        assertThat(plan.soundtracks().get(0).marksUs()).containsExactly(
                java.util.Map.entry("Late", 19_000_000L), java.util.Map.entry("Early", 18_000_000L));
    }

    @Test
    void marksInACircleAreATroubleAndWhatLeansOnThemIsLeftOut() {
        show.mark("X", Show.mark("Y")).mark("Y", Show.mark("Z")).mark("Z", Show.mark("Y")).mark("Self", Show.mark("Self"));
        show.add(show.cue(Show.mark("X"), "Peony", "C").done(), show.cue(Show.mark("Self"), "Peony", "C").done(),
                show.cue(Show.clock(5_000_000), "Peony", "C").done());

        Plan plan = show.plan();

        assertThat(plan.cues()).hasSize(1);
        assertThat(plan.troubles()).extracting(Finding::rule, Finding::message).contains(
                org.assertj.core.groups.Tuple.tuple("mark-circular", "The marks of Tides go round in a circle: Y -> Z -> Y"),
                org.assertj.core.groups.Tuple.tuple("mark-circular", "The marks of Tides go round in a circle: Self -> Self"),
                org.assertj.core.groups.Tuple.tuple("mark-unknown", "Mark X of Tides has no time of its own"),
                org.assertj.core.groups.Tuple.tuple("mark-unknown", "Mark Y of Tides has no time of its own"));
    }

    @Test
    void aLongRowOfMarksIsResolvedWithoutRecursion() {
        for (int i = 0; i < 20_000; i++) {
            show.mark("M" + i, i == 19_999 ? Show.clock(0) : Show.mark("M" + (i + 1), Show.us(1)));
        }

        assertThat(show.plan().soundtracks().get(0).marksUs()).hasSize(20_000).containsEntry("M0", 19_999L);
    }

    @Test
    void beatsAreCountedInTheTempoOfTheirPlaceAndRoundedOnce() {
        // Bar 3 begins at 2 + 4 = 6 s; from there 90 bpm: a beat is 2/3 s. A third of a beat seven times is 14/9 s.
        show.tempo.add(new TempoEntry(Optional.empty(), Optional.of(3), Rational.of(90), Optional.empty(), Optional.empty(), Show.at(1)));
        show.add(show.cue(Show.bar(2, "3"), "Peony", "A").done());
        show.add(new ScoreItem.Repeat(8, Show.every(Show.beats("1/3")), Show.bar(3, "1"),
                List.of(show.cue(Show.origin(), "Peony", "B").done()), Show.at(20)));
        show.add(show.cue(new TimeExpr(new TimeExpr.AtBar(2, Rational.of(3)), List.of(Show.beats("4")), Show.at(6)), "Peony", "C").done());

        Plan plan = show.plan();

        assertThat(seen(plan, "A")).containsExactly(5_000_000L);
        // 6 s + k 2/9 s
        assertThat(seen(plan, "B")).containsExactly(6_000_000L, 6_222_222L, 6_444_444L, 6_666_667L, 6_888_889L, 7_111_111L, 7_333_333L,
                7_555_556L);
        // two beats at 120 bpm, two at 90: 5 + 1 + 4/3
        assertThat(seen(plan, "C")).containsExactly(7_333_333L);
    }

    @Test
    void distributionsOfFivePlaces() {
        for (ScoreItem.Order order : ScoreItem.Order.values()) {
            show.add(show.cue(Show.clock(10_000_000L * (order.ordinal() + 1)), "Peony", "A", "B", "C", "D", "E")
                    .spread(order, Show.us(100_000)).done());
        }

        Plan plan = show.plan();

        assertThat(order(plan, 0)).isEqualTo("A0 B0 C0 D0 E0");
        assertThat(order(plan, 1)).isEqualTo("A0 B1 C2 D3 E4");
        assertThat(order(plan, 2)).isEqualTo("C0 B1 D1 A2 E2");
        assertThat(order(plan, 3)).isEqualTo("A0 E0 B1 D1 C2");
        assertThat(order(plan, 4)).isEqualTo("A0 E1 B2 D3 C4");
    }

    @Test
    void distributionsOfFourPlacesHaveAMiddlePair() {
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A", "B", "C", "D").spread(ScoreItem.Order.OUTWARD, Show.us(100_000)).done());
        show.add(show.cue(Show.clock(20_000_000), "Peony", "A", "B", "C", "D").spread(ScoreItem.Order.INWARD, Show.us(100_000)).done());
        show.add(show.cue(Show.clock(30_000_000), "Peony", "A", "B", "C", "D").spread(ScoreItem.Order.ALTERNATING, Show.us(100_000)).done());

        Plan plan = show.plan();

        assertThat(order(plan, 0)).isEqualTo("B0 C0 A1 D1");
        assertThat(order(plan, 1)).isEqualTo("A0 D0 B1 C1");
        assertThat(order(plan, 2)).isEqualTo("A0 D1 B2 C3");
    }

    @Test
    void repetitionsAndFiguresNest() {
        ScoreItem.Cue inside = show.cue(Show.origin(Show.beats("1")), "Peony", "C").done();
        ScoreItem.Play figure = new ScoreItem.Play("Echo", Show.origin(Show.us(10_000)), List.of(inside), Show.at(21));
        ScoreItem.Repeat inner = new ScoreItem.Repeat(2, Show.every(Show.beats("2")), Show.origin(), List.of(figure), Show.at(22));
        show.add(new ScoreItem.Repeat(2, Show.every(Show.bars("1")), Show.bar(5, "1"), List.of(inner), Show.at(23)));

        Plan plan = show.plan();

        // bar 5 at 10 s; bars 2 s apart, inside them 1 s apart, then 10 ms and one beat of 500 ms
        assertThat(plan.cues()).extracting(cue -> cue.timing().seenUs()).containsExactly(10_510_000L, 11_510_000L, 12_510_000L, 13_510_000L);
        assertThat(plan.cues()).extracting(PlannedCue::key).containsExactly("Tides/-/Peony@C/1", "Tides/-/Peony@C/1r1.2",
                "Tides/-/Peony@C/1r2.1", "Tides/-/Peony@C/1r2.2");
    }

    @Test
    void framesAreExact() {
        // At 30000/1001 fps 30 frames are 1.001 s.
        show.rate = Optional.of(org.girandole.timecode.FrameRate.FPS_29_97);
        show.mark("Hit", Show.clock(1_000_000)).add(show.cue(Show.mark("Hit", Show.frames(30)), "Peony", "C").done());

        assertThat(show.plan().cues().get(0).timing().seenUs()).isEqualTo(2_001_000L);
    }

    @Test
    void whatHasNoTimeIsLeftOutWithAReason() {
        show.tempo.clear();
        show.rate = Optional.empty();
        show.add(show.cue(Show.bar(3, "1"), "Peony", "C").done(),
                show.cue(new TimeExpr(new TimeExpr.AtClock(0), List.of(Show.beats("1")), Show.at(31)), "Peony", "C").done(),
                show.cue(new TimeExpr(new TimeExpr.AtClock(0), List.of(Show.frames(1)), Show.at(32)), "Peony", "C").done(),
                show.cue(Show.mark("Nowhere"), "Peony", "C").done(),
                show.cue(Show.clock(Long.MAX_VALUE), "Peony", "C").done(),
                show.cue(Show.clock(0), "Nothing", "C").done(),
                show.cue(Show.clock(0), "Peony", "Z").done());

        Plan plan = show.plan();

        assertThat(plan.cues()).isEmpty();
        assertThat(plan.troubles()).extracting(Finding::rule).contains("beat-without-tempo", "frame-without-rate", "mark-unknown",
                "moment-impossible", "name-unknown");
    }

    @Test
    void barsAndBeatsThatDoNotExistAreTroubles() {
        show.add(show.cue(Show.bar(0, "1"), "Peony", "C").done(), show.cue(Show.bar(3, "5"), "Peony", "C").done(),
                show.cue(Show.bar(Integer.MAX_VALUE, "1"), "Peony", "C").done(),
                show.cue(Show.mark("M"), "Peony", "C").done());
        show.mark("M", new TimeExpr(new TimeExpr.AtClock(0), List.of(Show.beats("999999999999")), Show.at(40)));

        Plan plan = show.plan();

        assertThat(plan.cues()).isEmpty();
        assertThat(plan.troubles()).filteredOn(f -> f.rule().equals("moment-impossible")).hasSize(4);
    }

    @Test
    void aTempoBlockThatMakesNoMapIsATroubleAtItsLine() {
        show.tempo.add(new TempoEntry(Optional.empty(), Optional.of(9), Rational.of(90), Optional.empty(), Optional.empty(), Show.at(71)));
        show.tempo.add(new TempoEntry(Optional.empty(), Optional.of(5), Rational.of(100), Optional.of(Meter.COMMON), Optional.empty(), Show.at(72)));

        Plan plan = show.plan();

        assertThat(plan.troubles()).filteredOn(f -> f.rule().equals("tempo-impossible")).singleElement()
                .satisfies(f -> assertThat(f.source().line()).isEqualTo(72))
                .satisfies(f -> assertThat(f.message()).contains("bar 5").contains("bar 9"));
    }

    @Test
    void aRampReachesItsTempoAtItsBar() {
        // 60 to 120 bpm linear in time over bars 1 to 3 (8 beats): 8 beats at the mean of 90 bpm are 16/3 s.
        show.tempo.clear();
        show.tempo.add(new TempoEntry(Optional.of(0L), Optional.empty(), Rational.of(60), Optional.empty(), Optional.empty(), Show.at(1)));
        show.tempo.add(new TempoEntry(Optional.empty(), Optional.of(3), Rational.of(120), Optional.of(new Meter(3, 4)),
                Optional.of(TempoEntry.Ramp.PER_SECOND), Show.at(1)));
        show.mark("End", Show.bar(3, "1")).mark("After", Show.bar(4, "1"));

        // After the ramp a bar of 3/4 at 120 bpm: 1.5 s.
        assertThat(show.plan().soundtracks().get(0).marksUs()).containsEntry("End", 5_333_333L).containsEntry("After", 6_833_333L);
    }

    @Test
    void absurdCountsAreATroubleAndNotAnOutOfMemory() {
        show.add(show.cue(Show.clock(0), "Peony", "C").times(Integer.MAX_VALUE).done());
        show.add(new ScoreItem.Repeat(Integer.MAX_VALUE, Show.every(Show.us(1)), Show.clock(0),
                List.of(show.cue(Show.origin(), "Peony", "C").done()), Show.at(80)));
        show.chains.add(new org.girandole.plan.script.Chain("Run", "Run", "Peony", Integer.MAX_VALUE,
                new org.girandole.plan.script.Measured(1, 0), 0, Show.at(81)));
        show.add(show.cue(Show.clock(0), "Run", "C").done());

        Plan plan = show.plan();

        assertThat(plan.cues()).isEmpty();
        assertThat(plan.troubles()).filteredOn(f -> f.rule().equals("too-many-cues")).hasSize(3);
    }

    private static List<Long> seen(Plan plan, String position) {
        return plan.cues().stream().filter(cue -> cue.position().equals(position)).map(cue -> cue.timing().seenUs()).toList();
    }

    /** Places in order of time with the steps of 100 ms after the first, of the {@code n}-th group of ten seconds. */
    private static String order(Plan plan, int n) {
        long from = 10_000_000L * (n + 1);
        return plan.cues().stream()
                .filter(cue -> cue.timing().seenUs() >= from && cue.timing().seenUs() < from + 10_000_000)
                .sorted(java.util.Comparator.comparingLong((PlannedCue cue) -> cue.timing().seenUs()).thenComparing(PlannedCue::position))
                .map(cue -> cue.position() + (cue.timing().seenUs() - from) / 100_000)
                .collect(java.util.stream.Collectors.joining(" "));
    }
}
