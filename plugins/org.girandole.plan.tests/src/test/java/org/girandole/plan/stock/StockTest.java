package org.girandole.plan.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Show;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.junit.jupiter.api.Test;

class StockTest {
    private final Show show = new Show();

    @Test
    void chainsCountEveryPieceAndOneIgniter() {
        show.chains.add(new Chain("Run", "Run", "Peony", 8, new Measured(250_000, 0), 0, Show.at(1)));
        show.lots.add(new Lot("L1", "Peony", 9, Optional.empty(), Show.at(2)));
        show.lots.add(new Lot("L2", "Peony", 1, Optional.empty(), Show.at(3)));
        show.add(show.cue(Show.clock(10_000_000), "Run", "C").done(), show.cue(Show.clock(20_000_000), "Peony", "A", "B", "C", "D").done());

        Stock stock = Stock.of(show.plan());

        assertThat(stock.effects()).singleElement().satisfies(line -> {
            assertThat(line.needed()).isEqualTo(12);
            assertThat(line.inStock()).contains(10L);
            assertThat(line.missing()).contains(2L);
            assertThat(line.lots()).extracting(Stock.LotLine::needed).containsExactly(9L, 1L);
            assertThat(line.fromNoLot()).isEqualTo(2);
        });
        assertThat(stock.igniters()).containsExactly(entry("Standard", 5));
        // C has one of the four shells and the chain, which is lit by one igniter.
        assertThat(stock.ignitersAt()).containsExactly(entry("A", Map.of("Standard", 1)), entry("B", Map.of("Standard", 1)),
                entry("C", Map.of("Standard", 2)), entry("D", Map.of("Standard", 1)));
    }

    @Test
    void aLotThatCuesNameTooOftenIsShort() {
        show.lots.add(new Lot("L1", "Peony", 1, Optional.empty(), Show.at(2)));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A", "B").from("L1").done());

        assertThat(Stock.of(show.plan()).effects().get(0).lots().get(0).missing()).isEqualTo(1);
    }

    @Test
    void withoutLotsNobodyKnowsWhatIsInStock() {
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A").done());

        Stock.Line line = Stock.of(show.plan()).effects().get(0);

        assertThat(line.inStock()).isEmpty();
        assertThat(line.missing()).isEmpty();
    }

    @Test
    void anUnknownChargeIsCountedBesideTheSum() {
        show.effects.add(new Effect("Odd", "Odd", org.girandole.plan.script.EffectKind.MINE, Optional.of(0.05), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false,
                Optional.empty(), Show.at(4)));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A", "B").done(), show.cue(Show.clock(11_000_000), "Odd", "B").times(3).done());

        Charges charges = Charges.of(show.plan());

        // two shells of 62 g
        assertThat(charges.total().kg()).isCloseTo(0.124, within(1e-12));
        assertThat(charges.total().pieces()).isEqualTo(5);
        assertThat(charges.total().withoutCharge()).isEqualTo(3);
        assertThat(charges.hazards().keySet()).extracting(Charges.Hazard::hazardClass).containsExactly(Optional.of("1.3G"), Optional.empty());
        assertThat(charges.positions().get("A").complete()).isTrue();
        assertThat(charges.positions().get("B").withoutCharge()).isEqualTo(3);
        assertThat(charges.positions()).doesNotContainKey("C");
    }
}
