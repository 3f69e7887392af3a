package org.girandole.plan.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.Show;
import org.girandole.plan.script.FiringSystem.Join;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.girandole.plan.script.Wire;
import org.junit.jupiter.api.Test;

/** Sums by hand: one module at A, positions 30 m apart. */
class LeadsTest {
    private final Show show = new Show();

    LeadsTest() {
        show.igniters.add(new Igniter("Standard", Optional.of(1.6), Optional.of(0.1), Optional.of(0.5), Optional.of(0.2), Show.at(1)));
        show.wires.add(new Wire("Bell", Optional.of(20), Optional.empty(), 2, Show.at(2)));
        show.module("M1", 8, "A", "B", "C");
    }

    private static PinRef pin(int number) {
        return new PinRef("M1", number, Show.at(200 + number));
    }

    @Test
    void everyPinIsOneLeadRoundedUpToTheMetre() {
        show.system = Optional.of(Show.system("Bell", 2, 0.105, Join.SERIES));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "C").pins(pin(1)).done(),
                show.cue(Show.clock(20_000_000), "Peony", "B").pins(pin(5)).done(),
                show.cue(Show.clock(30_000_000), "Peony", "A").pins(pin(2)).done(),
                show.cue(Show.clock(40_000_000), "Peony", "B").pins(pin(3)).done());

        Leads leads = Leads.of(show.plan());

        // A: 2 m of slack. B: 30 m + 3.15 m + 2 m = 35.15 m. C: 60 m + 6.3 m + 2 m = 68.3 m.
        assertThat(leads.positions()).extracting(Leads.AtPosition::position, Leads.AtPosition::count, Leads.AtPosition::totalM)
                .containsExactly(tuple("A", 1, 2L), tuple("B", 2, 72L), tuple("C", 1, 69L));
        assertThat(leads.positions().get(1).cuts()).containsExactly(
                new Leads.Cut(36, List.of(new Pin("M1", 3, true), new Pin("M1", 5, true))));
        assertThat(leads.totalM()).isEqualTo(143);
        assertThat(leads.count()).isEqualTo(4);
        assertThat(leads.wire()).contains("Bell");
        assertThat(leads.complete()).isTrue();
    }

    @Test
    void aWholeNumberOfMetresStaysWhatItIs() {
        // 30 m and a tenth and 2 m are 35 m; in binary fractions they are a little more.
        show.system = Optional.of(Show.system("Bell", 2, 0.1, Join.SERIES));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "B").pins(pin(1)).done());

        assertThat(Leads.of(show.plan()).totalM()).isEqualTo(35);
    }

    @Test
    void ignitersThatShareAPinShareItsLead() {
        show.system = Optional.of(Show.system("Bell", 2, 0, Join.PARALLEL));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "B").times(2).pins(pin(4), pin(4)).done());

        Leads leads = Leads.of(show.plan());

        assertThat(leads.count()).isEqualTo(1);
        assertThat(leads.totalM()).isEqualTo(32);
    }

    @Test
    void aLeadWithoutALengthAndAnIgniterWithoutAPinAreNotForgotten() {
        show.system = Optional.of(Show.system("Unheard", 2, 0, Join.SERIES));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "B").pins(pin(4)).done(),
                show.cue(Show.clock(20_000_000), "Peony", "E").done());

        Leads leads = Leads.of(show.plan());

        assertThat(leads.positions()).singleElement().satisfies(at -> {
            assertThat(at.cuts()).isEmpty();
            assertThat(at.unknown()).containsExactly(new Pin("M1", 4, true));
        });
        assertThat(leads.unknown()).isEqualTo(1);
        assertThat(leads.withoutPin()).isEqualTo(1);
        assertThat(leads.complete()).isFalse();
    }
}
