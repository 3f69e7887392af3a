package org.girandole.physics.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircuitTest {
    private static final Source STIFF_24_V = new Source(24, 0);
    private static final Lead RUN_50_M = new Lead(Conductor.awg(24), 50, 20);
    private static final Band EXACTLY_1_6 = Band.plusMinus(1.6, 0);

    private static LoopResult fire(int count, Join join) {
        return loop(count, join).solve();
    }

    private static PinLoop loop(int count, Join join) {
        return new PinLoop(STIFF_24_V, Branch.equal(RUN_50_M, EXACTLY_1_6, count, join));
    }

    // 24 V, 50 m of 24 AWG (8.4213 ohm there and back), igniters of 1.6 ohm: Ohm's law by hand
    @ParameterizedTest
    @CsvSource({"1, 10.021, 2.395", "2, 11.621, 2.065", "10, 24.421, 0.983"})
    void series(int count, double ohm, double ampere) {
        var result = fire(count, Join.SERIES);
        assertThat(result.loopOhm().nominal()).isCloseTo(ohm, within(0.0006));
        assertThat(result.currentA().nominal()).isCloseTo(ampere, within(0.0006));
        assertThat(result.igniterA()).hasSize(count).allSatisfy(
                each -> assertThat(each.nominal()).isCloseTo(ampere, within(0.0006)));
    }

    @ParameterizedTest
    @CsvSource({"1, 10.021, 2.395, 2.395", "2, 9.221, 2.603, 1.301", "10, 8.581, 2.797, 0.280"})
    void parallel(int count, double ohm, double totalA, double eachA) {
        var result = fire(count, Join.PARALLEL);
        assertThat(result.loopOhm().nominal()).isCloseTo(ohm, within(0.0006));
        assertThat(result.currentA().nominal()).isCloseTo(totalA, within(0.0006));
        assertThat(result.weakestA().nominal()).isCloseTo(eachA, within(0.0006));
    }

    @Test
    void tenInSeriesPassWhereTenInParallelFail() {
        double needed = 0.6;
        assertThat(new AllFireCheck(fire(10, Join.SERIES).weakestA(), needed, 1.5).holds()).isTrue();
        assertThat(new AllFireCheck(fire(10, Join.PARALLEL).weakestA(), needed, 1.5).holds()).isFalse();
    }

    @Test
    void readingLeavesTheSupplyOut() {
        var branch = new Branch(0.4, RUN_50_M, List.of(Band.plusMinus(1.6, 0.2)), Join.PARALLEL);
        var result = new PinLoop(new Source(24, 1.2), branch).solve();
        assertThat(result.readingOhm().least()).isCloseTo(8.4213 + 1.4, within(0.0001));
        assertThat(result.readingOhm().nominal()).isCloseTo(8.4213 + 1.6, within(0.0001));
        assertThat(result.readingOhm().most()).isCloseTo(8.4213 + 1.8, within(0.0001));
        assertThat(result.loopOhm().nominal()).isCloseTo(8.4213 + 1.6 + 1.6, within(0.0001));
        assertThat(result.currentA().nominal()).isCloseTo(24 / 11.6213, within(0.0001));
    }

    @Test
    void theWeakestInParallelIsTheStiffestAmongSoftOnes() {
        var branch = Branch.equal(new Lead(Conductor.awg(24), 0, 20), new Band(1, 1.5, 2), 2, Join.PARALLEL);
        var result = new PinLoop(new Source(10, 1), branch).solve();
        // 2 ohm beside 1 ohm behind 1 ohm: 2/3 ohm together, 6 A in all, a third of it through the 2 ohm
        assertThat(result.igniterA().get(0).least()).isCloseTo(2, within(1e-12));
        // 1 ohm beside 2 ohm: two thirds
        assertThat(result.igniterA().get(0).most()).isCloseTo(4, within(1e-12));
        assertThat(result.igniterA().get(0).nominal()).isCloseTo(10 / 1.75 / 2, within(1e-12));
    }

    @Test
    void unlikeIgnitersInParallelShareByConductance() {
        var branch = new Branch(0, new Lead(Conductor.awg(24), 0, 20),
                List.of(Band.plusMinus(1, 0), Band.plusMinus(3, 0)), Join.PARALLEL);
        var result = new PinLoop(new Source(12, 0.25), branch).solve();
        // 0.75 ohm behind 0.25 ohm: 12 A, divided 3 to 1
        assertThat(result.igniterA().get(0).nominal()).isCloseTo(9, within(1e-12));
        assertThat(result.igniterA().get(1).nominal()).isCloseTo(3, within(1e-12));
    }

    @Test
    void pinsAtOnceShareTheSupply() {
        var lead = new Lead(Conductor.awg(24), 0, 20);
        var branch = Branch.equal(lead, Band.plusMinus(4, 0), 1, Join.SERIES);
        var shared = new SharedSource(new Source(24, 2), List.of(branch, Branch.equal(lead, Band.plusMinus(4, 0), 1, Join.SERIES)));
        // two of 4 ohm: 2 ohm behind 2 ohm, 6 A, 3 A each
        assertThat(shared.totalCurrentA().nominal()).isCloseTo(6, within(1e-12));
        assertThat(shared.solve()).allSatisfy(r -> assertThat(r.currentA().nominal()).isCloseTo(3, within(1e-12)));
        // alone: 24 / 6
        assertThat(new PinLoop(new Source(24, 2), branch).solve().currentA().nominal()).isCloseTo(4, within(1e-12));
    }

    @Test
    void theSameBranchObjectTwiceIsTwoPins() {
        var branch = Branch.equal(new Lead(Conductor.awg(24), 0, 20), Band.plusMinus(4, 0), 1, Join.SERIES);
        var results = new SharedSource(new Source(24, 2), List.of(branch, branch)).solve();
        assertThat(results).hasSize(2).allSatisfy(r -> assertThat(r.currentA().nominal()).isCloseTo(3, within(1e-12)));
    }

    @Test
    void toleranceOfNeighboursWidensTheBandOnASoftSupply() {
        var lead = new Lead(Conductor.awg(24), 0, 20);
        var here = Branch.equal(lead, Band.plusMinus(4, 0), 1, Join.SERIES);
        var neighbour = Branch.equal(lead, new Band(2, 4, 8), 1, Join.SERIES);
        var result = new SharedSource(new Source(24, 2), List.of(here, neighbour)).solve().get(0);
        // neighbour at 2 ohm: 4/3 ohm, 7.2 A, 9.6 V, 2.4 A; at 8 ohm: 8/3 ohm, 36/7 A, 96/7 V, 24/7 A
        assertThat(result.currentA().least()).isCloseTo(2.4, within(1e-12));
        assertThat(result.currentA().most()).isCloseTo(24.0 / 7, within(1e-12));
    }

    @Test
    void warmCopperLowersTheCurrent() {
        var warm = new Lead(Conductor.awg(24), 50, 40);
        assertThat(warm.loopOhm().nominal()).isCloseTo(8.4213 * 1.0786, within(0.0002));
    }

    @Test
    void leadToleranceReachesTheReading() {
        var lead = new Lead(Conductor.awg(24), 50, 20, 0.1);
        var result = new PinLoop(STIFF_24_V, Branch.equal(lead, EXACTLY_1_6, 1, Join.SERIES)).solve();
        assertThat(result.readingOhm().least()).isCloseTo(0.9 * 8.4213 + 1.6, within(0.0002));
        assertThat(result.readingOhm().most()).isCloseTo(1.1 * 8.4213 + 1.6, within(0.0002));
        assertThat(result.currentA().least()).isCloseTo(24 / (1.1 * 8.4213 + 1.6), within(0.0002));
    }

    @Test
    void capacitor() {
        // 1000 uF at 24 V: C U^2 / 2 = 0.288 J; into 5.5 ohm: W / R = 52.36 mJ/ohm, R C = 5.5 ms
        var branch = Branch.equal(new Lead(Conductor.awg(24), 0, 20), Band.plusMinus(5.0, 0), 1, Join.SERIES);
        var discharge = new CapacitorDrive(1000e-6, 24, 0.5).fire(branch);
        assertThat(discharge.energyJ()).isCloseTo(0.288, within(1e-12));
        assertThat(discharge.tauMs()).isCloseTo(5.5, within(1e-12));
        assertThat(discharge.impulseMjPerOhm().get(0).nominal()).isCloseTo(52.36, within(0.005));
        // i = (24 / 5.5) exp(-t / 5.5 ms) falls to 0.6 A after 5.5 ms * ln(4.3636 / 0.6)
        assertThat(discharge.aboveMs(0.6)).isCloseTo(10.912, within(0.001));
        assertThat(discharge.aboveMs(5)).isZero();
    }

    @Test
    void capacitorImpulseAgreesWithSummingTheDecay() {
        var branch = Branch.equal(RUN_50_M, EXACTLY_1_6, 3, Join.PARALLEL);
        var discharge = new CapacitorDrive(2200e-6, 40, 0.2).fire(branch);
        double peak = discharge.start().weakestA().nominal();
        double sum = 0;
        double stepMs = 0.001;
        for (double t = stepMs / 2; t < 40 * discharge.tauMs(); t += stepMs) {
            sum += Math.pow(peak * Math.exp(-t / discharge.tauMs()), 2) * stepMs;
        }
        assertThat(discharge.impulseMjPerOhm().get(0).nominal()).isCloseTo(sum, within(1e-3 * sum));
    }

    // Washington WAC 212-17-317: 0.05 A or 20 % of no-fire, whichever is less; no-fire currents of the igniter types A
    // and U of the German 1. SprengV, Annex 2
    @ParameterizedTest
    @CsvSource({"0.18, 0.036", "0.45, 0.05", "1.0, 0.05", "0.2, 0.04"})
    void testCurrent(double noFireA, double limitA) {
        assertThat(TestCurrent.limitA(noFireA).result().value()).isCloseTo(limitA, within(1e-12));
    }

    @Test
    void everyStepOfADerivationIsThere() {
        var derivation = loop(10, Join.PARALLEL).derivation();
        assertThat(derivation.steps()).extracting(Derivation.Step::symbol)
                .containsExactly("d", "A", "r20", "L", "k", "R_lead", "R_igniters", "R_loop", "I", "I_igniter");
        assertThat(derivation.result().value()).isCloseTo(0.280, within(0.0006));
    }

    @Test
    void marginIsHeldAgainstTheLeastCurrent() {
        var current = new Band(0.85, 0.95, 1.05);
        assertThat(new AllFireCheck(current, 0.6, 1.5).neededA()).isCloseTo(0.9, within(1e-12));
        assertThat(new AllFireCheck(current, 0.6, 1.5).holds()).isFalse();
        assertThat(new AllFireCheck(current, 0.6, 1.4).holds()).isTrue();
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> Branch.equal(RUN_50_M, EXACTLY_1_6, 0, Join.SERIES))
                .isInstanceOf(PhysicsInputException.class).hasMessageContaining("a pin with 0 igniters");
        assertThatThrownBy(() -> new Branch(0, RUN_50_M, List.of(), Join.SERIES)).hasMessageContaining("without igniters");
        assertThatThrownBy(() -> Branch.equal(RUN_50_M, Band.plusMinus(0.1, 0.1), 1, Join.SERIES))
                .hasMessageContaining("least resistance of an igniter is 0 ohm");
        assertThatThrownBy(() -> new Source(0, 1)).hasMessageContaining("voltage of the supply is 0 V");
        assertThatThrownBy(() -> TestCurrent.limitA(0)).hasMessageContaining("no-fire current is 0 A");
        assertThatThrownBy(() -> new AllFireCheck(EXACTLY_1_6, 0.5, 0.9)).hasMessageContaining("margin");
    }
}
