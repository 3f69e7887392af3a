package org.girandole.plan.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Show;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.TimeExpr;
import org.junit.jupiter.api.Test;

/** Keys as docs/cue-keys.md promises them. */
class KeysTest {
    private final Show show = new Show();

    @Test
    void aKeyNamesSoundtrackSectionEffectPlaceAndOrder() {
        show.section("Opening", show.cue(Show.clock(9_000_000), "Peony", "A", "B").done(),
                show.cue(Show.clock(5_000_000), "Peony", "B").times(2).done());
        show.add(show.cue(Show.clock(8_000_000), "Peony", "A").done(),
                show.cue(Show.clock(7_000_000), "Peony", "A", "B").named("Hero").done());

        // in the order of the script, not of time
        assertThat(keys(show.plan())).containsExactlyInAnyOrder("Tides/Opening/Peony@A/1", "Tides/Opening/Peony@B/1",
                "Tides/Opening/Peony@B/2", "Tides/Opening/Peony@B/2s2", "Tides/-/Peony@A/1", "Hero@A", "Hero@B");
    }

    @Test
    void anEditElsewhereChangesNoKey() {
        ScoreItem.Cue first = show.cue(Show.clock(5_000_000), "Peony", "A", "B").done();
        ScoreItem.Cue second = show.cue(Show.clock(6_000_000), "Peony", "B").done();
        show.effects.add(Show.shell("Other", 2_000_000, 0));
        show.section("Opening", first, second);
        Set<String> before = new TreeSet<>(keys(show.plan()));
        show.sections.clear();

        show.section("Before", show.cue(Show.clock(1_000_000), "Peony", "B").done());
        show.section("Opening", show.cue(Show.clock(2_000_000), "Other", "B").done(), show.cue(Show.clock(3_000_000), "Peony", "C").done(),
                new ScoreItem.Repeat(3, Show.every(Show.us(1)), Show.clock(0), List.of(first), Show.at(1)), second);
        Set<String> after = keys(show.plan());

        assertThat(after).containsAll(before);
    }

    @Test
    void keysAreUniqueEvenWhenNamesAreNot() {
        ScoreItem.Cue shared = show.cue(new TimeExpr(new TimeExpr.Origin(), List.of(), Show.at(1)), "Peony", "A", "A").named("Same").done();
        ScoreItem.Play figure = new ScoreItem.Play("F", Show.clock(1_000_000), List.of(shared), Show.at(2));
        show.add(figure, figure, shared, show.cue(Show.clock(0), "Peony", "A").named("Same").times(3).done());

        List<String> keys = show.plan().cues().stream().map(PlannedCue::key).toList();

        assertThat(keys).hasSize(9).doesNotHaveDuplicates();
    }

    private static Set<String> keys(Plan plan) {
        return new TreeSet<>(plan.cues().stream().map(PlannedCue::key).toList());
    }
}
