package org.girandole.plan.diff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Show;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.ScoreItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlanDiffTest {
    private static final long SECOND = 1_000_000;

    @Test
    void samePlansDifferInNothing() {
        CheckedPlan plan = checked(hardware(twoCues(5 * SECOND)));
        PlanDiff diff = PlanDiff.between(plan, plan);
        assertThat(diff.isEmpty()).isTrue();
        assertThat(diff.touchesSafety()).isFalse();
        assertThat(DiffReporter.report(diff, plan, plan).headline()).startsWith("Nothing");
    }

    @Test
    void aLotThatRisesLongerFiresEarlierAndIsSeenAtTheSameMoment() {
        CheckedPlan before = checked(withLot(2_520_000));
        CheckedPlan after = checked(withLot(2_640_000));
        PlanDiff diff = PlanDiff.between(before, after);
        assertThat(diff.cues()).hasSize(2).allSatisfy(change -> {
            Movement movement = ((CueChange.Changed) change).movement().orElseThrow();
            // by hand: 2.640 s - 2.520 s = 0.120 s, a multiple of the 10 ms step, so rounding adds nothing
            assertThat(movement.fireUs()).isEqualTo(-120_000);
            assertThat(movement.seenUs()).isZero();
            assertThat(movement.causes()).containsExactly(new Movement.Cause(Movement.Kind.LOT, "L1", -120_000));
        });
        DiffReport report = DiffReporter.report(diff, before, after);
        assertThat(report.parts().get(0).entries().get(0).text())
                .isEqualTo("2 cues fire 0.120 s earlier and are seen when they were before: "
                        + "the lot's measured rise is another (L1), 2.520 s before, now 2.640 s, -0.120 s.");
        assertThat(diff.touchesSafety()).isTrue();
    }

    @Test
    void aMovedMarkIsTheCauseOfTheMove() {
        CheckedPlan before = checked(onMark(8 * SECOND));
        CheckedPlan after = checked(onMark(9 * SECOND));
        assertThat(changes(before, after)).singleElement().satisfies(change -> assertThat(change.movement().orElseThrow().causes())
                .containsExactly(new Movement.Cause(Movement.Kind.MARK, "Swell", SECOND)));
    }

    @Test
    void aRenamedAndMovedSectionIsAMoveOfItsCues() {
        CheckedPlan before = checked(hardware(sectionAt("Opening", 30 * SECOND)));
        CheckedPlan after = checked(hardware(sectionAt("Overture", 36 * SECOND)));
        PlanDiff diff = PlanDiff.between(before, after);
        assertThat(diff.cues()).hasSize(2).allMatch(CueChange.Changed.class::isInstance);
    }

    @Test
    void linesInsertedAboveChangeNothing() {
        Show shifted = new Show();
        shifted.cue(Show.clock(0), "Peony", "A");
        shifted.add(shifted.cue(Show.clock(5 * SECOND), "Peony", "B").done());
        Show plain = new Show();
        plain.add(plain.cue(Show.clock(5 * SECOND), "Peony", "B").done());
        PlanDiff diff = PlanDiff.between(checked(hardware(plain)), checked(hardware(shifted)));
        assertThat(diff.cues()).isNotEmpty();
        assertThat(diff.isEmpty()).isTrue();
    }

    @Test
    void findingsComeGoAndChange() {
        Plan plan = hardware(twoCues(5 * SECOND)).plan();
        CheckedPlan before = new CheckedPlan(plan, List.of(finding("tube-tilt", "R1", "5"), finding("no-pin", "A", "none")));
        CheckedPlan after = new CheckedPlan(plan, List.of(finding("tube-tilt", "R1", "7"), finding("pin-taken", "M1", "2")));
        assertThat(PlanDiff.between(before, after).findings()).hasSize(3).hasOnlyElementsOfTypes(
                FindingChange.Changed.class, FindingChange.New.class, FindingChange.Gone.class);
    }

    @Test
    void aDifferenceOfAnotherPlanIsRefused() {
        PlanDiff diff = PlanDiff.between(checked(hardware(twoCues(5 * SECOND))), checked(hardware(twoCues(6 * SECOND))));
        assertThatThrownBy(() -> diff.apply(List.of())).hasMessageContaining("made from another plan");
    }

    /** Random edits: what the difference says, applied to the old cues, is the new plan to the last field. */
    @ParameterizedTest
    @MethodSource("seeds")
    void appliedToTheOldPlanItGivesTheNewOne(int seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 250; i++) {
            List<Line> lines = randomLines(random);
            Plan before = show(lines, 2_400_000).plan();
            List<Line> edited = edit(lines, random);
            Plan after = show(edited, random.nextInt(4) == 0 ? 2_530_000 : 2_400_000).plan();
            PlanDiff diff = PlanDiff.between(new CheckedPlan(before, List.of()), new CheckedPlan(after, List.of()));
            assertThat(diff.apply(before.cues())).isEqualTo(after.cues());
        }
    }

    static IntStream seeds() {
        return IntStream.range(0, 10);
    }

    private record Line(long atUs, String place, int count, String section) {
    }

    private static List<Line> randomLines(Random random) {
        List<Line> lines = new ArrayList<>();
        int n = 3 + random.nextInt(10);
        for (int i = 0; i < n; i++) {
            lines.add(randomLine(random));
        }
        return lines;
    }

    private static Line randomLine(Random random) {
        return new Line((3 + random.nextInt(50)) * SECOND, "ABCDE".substring(random.nextInt(5)).substring(0, 1),
                1 + random.nextInt(2), random.nextBoolean() ? "One" : "Two");
    }

    private static List<Line> edit(List<Line> lines, Random random) {
        List<Line> edited = new ArrayList<>(lines);
        int edits = 1 + random.nextInt(4);
        for (int i = 0; i < edits && !edited.isEmpty(); i++) {
            int at = random.nextInt(edited.size());
            Line line = edited.get(at);
            switch (random.nextInt(5)) {
                case 0 -> edited.remove(at);
                case 1 -> edited.add(at, randomLine(random));
                case 2 -> edited.set(at, new Line(line.atUs() + 700_000, line.place(), line.count(), line.section()));
                case 3 -> edited.set(at, new Line(line.atUs(), "E", line.count(), line.section()));
                default -> edited.set(at, new Line(line.atUs(), line.place(), line.count(), "Three"));
            }
        }
        return edited;
    }

    private static Show show(List<Line> lines, long riseUs) {
        Show show = new Show();
        show.effects.set(0, Show.shell("Peony", riseUs, 150_000));
        for (String section : List.of("One", "Two", "Three")) {
            show.section(section, lines.stream().filter(line -> line.section().equals(section))
                    .map(line -> show.cue(Show.clock(line.atUs()), "Peony", line.place()).times(line.count()).done())
                    .toArray(ScoreItem[]::new));
        }
        return hardware(show);
    }

    private static Show hardware(Show show) {
        for (String place : List.of("A", "B", "C", "D", "E")) {
            show.rack("R" + place, place, 12, 0.075).module("M" + place, 16, place);
        }
        return show;
    }

    private static Show twoCues(long atUs) {
        Show show = new Show();
        show.add(show.cue(Show.clock(atUs), "Peony", "A").done(), show.cue(Show.clock(20 * SECOND), "Peony", "B").done());
        return show;
    }

    private static Show withLot(long riseUs) {
        Show show = hardware(twoCues(5 * SECOND));
        show.lots.add(new Lot("L1", "Peony", 10, Optional.of(new Measured(riseUs, 100_000)), Show.at(5)));
        return show;
    }

    private static Show onMark(long markUs) {
        Show show = new Show();
        show.mark("Swell", Show.clock(markUs));
        show.add(show.cue(Show.mark("Swell"), "Peony", "A").done());
        return hardware(show);
    }

    private static Show sectionAt(String name, long fromUs) {
        Show show = new Show();
        show.sections.add(new org.girandole.plan.script.Score.Section(name, name, Show.clock(fromUs), Show.clock(fromUs + 20 * SECOND),
                List.of(show.cue(Show.clock(fromUs + SECOND), "Peony", "A").done(),
                        show.cue(Show.clock(fromUs + 2 * SECOND), "Peony", "A").done()), Show.at(8)));
        return show;
    }

    private static CheckedPlan checked(Show show) {
        return new CheckedPlan(show.plan(), List.of());
    }

    private static List<CueChange.Changed> changes(CheckedPlan before, CheckedPlan after) {
        return PlanDiff.between(before, after).cues().stream().map(CueChange.Changed.class::cast).toList();
    }

    private static Finding finding(String rule, String subject, String found) {
        return new Finding(rule, Severity.WARNING, "message", found, "4", "basis", "remedy", Show.at(1), Subject.of(subject), Map.of(),
                Optional.empty());
    }
}
