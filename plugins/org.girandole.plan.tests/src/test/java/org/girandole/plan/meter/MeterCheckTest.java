package org.girandole.plan.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.girandole.plan.Plan;
import org.girandole.plan.Show;
import org.girandole.plan.meter.MeterCheck.PinName;
import org.girandole.plan.meter.MeterCheck.Verdict;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.girandole.plan.script.Wire;
import org.junit.jupiter.api.Test;

/**
 * One module at C with igniters of 1.6 +- 0.2 ohm at A, C and E on 24 AWG: at 60 m and 2 m of slack 10.44 ohm of lead, at C 2 m only, 0.337 ohm
 * (ASTM B258, IEC 60028: 84.2132 ohm/km there and back). Leads are good to 5 %.
 */
class MeterCheckTest {
    @Test
    void readingsWithinTheirBandAreRight() throws Exception {
        // A: 10.44 + 1.6 = 12.04, +- 0.52 and 0.2; C: 0.337 + 1.6 = 1.94
        MeterCheck check = check("module,pin,ohm\nM1,1,12.04\nM1,2,1.94\nM1,3,12.5\n");

        assertThat(check.allRight()).isTrue();
        assertThat(check.lines()).hasSize(3);
    }

    @Test
    void whatIsWrongIsNamed() throws Exception {
        MeterCheck check = check("M1;1;open\nM1;2;2,90\nM1;3;0,4\nM1;7;1,9\nM9;1;1,0\n");

        assertThat(check.lines()).extracting(MeterCheck.Line::verdict).containsExactly(Verdict.OPEN, Verdict.HIGH, Verdict.SHORT,
                Verdict.NOT_WIRED, Verdict.NO_SUCH_PIN);
        assertThat(check.lines().get(1).text()).isEqualTo("M1 2 (cue 2, Peony at C): 2.90 ohm, expected 1.72 to 2.15 ohm: too high");
    }

    @Test
    void twoReadingsThatFitEachOtherAreProbablySwapped() throws Exception {
        MeterCheck check = check("M1,1,1.95\nM1,2,12.0\nM1,3,12.0\n");

        assertThat(check.toWalk()).extracting(MeterCheck.Line::pin).containsExactly(1, 2);
        assertThat(check.lines().get(0).swappedWith()).contains(new PinName("M1", 2));
        assertThat(check.lines().get(1).swappedWith()).contains(new PinName("M1", 1));
        assertThat(check.lines().get(0).text()).endsWith("short: the igniter is bridged; probably swapped with M1 2");
    }

    @Test
    void anIgniterOnTheWrongFreePinIsASwapToo() throws Exception {
        MeterCheck check = check("M1,1,12.0\nM1,2,open\nM1,3,12.0\nM1,5,1.9\n");

        assertThat(check.toWalk()).extracting(line -> line.swappedWith().orElseThrow()).containsExactly(new PinName("M1", 5),
                new PinName("M1", 2));
    }

    @Test
    void whatWasNotMeasuredIsNotRight() throws Exception {
        assertThat(check("M1,1,12.0\nM1,3,\n").toWalk()).extracting(MeterCheck.Line::verdict).containsExactly(Verdict.NOT_MEASURED,
                Verdict.NOT_MEASURED);
    }

    @Test
    void aModuleMayBeCalledByItsAddress() {
        Plan plan = plan();

        assertThat(MeterCheck.of(plan, List.of(new Reading("17", 2, OptionalDouble.of(1.94)))).lines().get(1).verdict()).isEqualTo(Verdict.RIGHT);
    }

    @Test
    void nonsenseIsNamedWithItsLine() {
        refuses("M1,1\n", "line 1: found 'M1,1', expected three columns");
        refuses("m,p,o\nM1,x,3\n", "line 2: found 'x', expected the number of a pin");
        refuses("M1,1,-3\n", "expected ohms such as 7.4, or open");
        refuses("M1,1,3\nM1,1,4\n", "line 2: found 'M1 1', expected each pin once; it is in line 1 too");
        refuses("M1,1,\"3\n", "quotation marks");
    }

    private static void refuses(String text, String message) {
        assertThatThrownBy(() -> Readings.parse(text)).as(text).isInstanceOf(ReadingsException.class).hasMessageContaining(message);
    }

    private static MeterCheck check(String readings) throws ReadingsException {
        return MeterCheck.of(plan(), Readings.parse(readings));
    }

    private static Plan plan() {
        Show show = new Show();
        show.system = Optional.of(Show.system("W", 2, 0, FiringSystem.Join.SERIES));
        show.wires.add(new Wire("W", Optional.of(24), Optional.empty(), 1, Show.at(30)));
        show.igniters.add(new Igniter("Standard", Optional.of(1.6), Optional.of(0.2), Optional.of(0.5), Optional.of(0.2), Show.at(31)));
        show.module("M1", 8, "C", "A", "E");
        show.modules.set(0, new Module("M1", "17", "TypeM1", List.of("C", "A", "E"), Show.at(11)));
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A").pins(new PinRef("M1", 1, Show.at(1))).done(),
                show.cue(Show.clock(11_000_000), "Peony", "C").pins(new PinRef("M1", 2, Show.at(1))).done(),
                show.cue(Show.clock(12_000_000), "Peony", "E").pins(new PinRef("M1", 3, Show.at(1))).done());
        return show.plan();
    }
}
