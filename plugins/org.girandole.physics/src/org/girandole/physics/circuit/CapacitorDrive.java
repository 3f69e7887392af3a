package org.girandole.physics.circuit;

import java.util.ArrayList;
import java.util.List;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.Require;

/**
 * A charged capacitor that fires one pin and is not recharged meanwhile: {@code i(t) = (U / R) exp(-t / (R C))}.
 *
 * @param capacitanceF capacitance in farad
 * @param chargedV voltage at the start
 * @param ohm resistance of the capacitor and its switch
 */
public record CapacitorDrive(double capacitanceF, double chargedV, double ohm) {
    public CapacitorDrive {
        Require.positive(capacitanceF, "capacitance", "F");
        Require.positive(chargedV, "voltage of the capacitor", "V");
        Require.notNegative(ohm, "resistance of the capacitor", "ohm");
    }

    /** Energy in the charged capacitor in joule, C U^2 / 2. */
    public double energyJ() {
        return capacitanceF * chargedV * chargedV / 2;
    }

    /** The discharge through one branch. */
    public Discharge fire(Branch branch) {
        PinLoop loop = new PinLoop(new Source(chargedV, ohm), branch);
        LoopResult start = loop.solve();
        double tauS = start.loopOhm().nominal() * capacitanceF;
        List<Band> impulses = new ArrayList<>();
        for (Band peak : start.igniterA()) {
            impulses.add(new Band(impulseMjPerOhm(peak.least(), start.loopOhm().least()),
                    impulseMjPerOhm(peak.nominal(), start.loopOhm().nominal()),
                    impulseMjPerOhm(peak.most(), start.loopOhm().most())));
        }
        double weakest = impulses.stream().mapToDouble(Band::nominal).min().orElseThrow();
        Derivation derivation = Derivation.builder()
                .all(loop.derivation())
                .step("W", "C U^2 / 2", Figures.of(capacitanceF) + " * " + Figures.of(chargedV) + "^2 / 2", energyJ(), "J",
                        "")
                .step("tau", "R_loop C", Figures.of(start.loopOhm().nominal()) + " * " + Figures.of(capacitanceF),
                        tauS * 1000, "ms", "")
                .step("K", "integral of i^2 dt = I_igniter^2 tau / 2", "", weakest, "mJ/ohm", "exponential discharge")
                .build();
        return new Discharge(start, energyJ(), tauS * 1000, impulses, derivation);
    }

    /**
     * The integral of i^2 dt of a current that starts at {@code peakA} in a loop of {@code loopOhm}. For the ends of a
     * band the least current is paired with the least resistance and the most with the most: both cannot be at once,
     * so the band is a little wider than the truth, never narrower.
     */
    private double impulseMjPerOhm(double peakA, double loopOhm) {
        return 1000 * peakA * peakA * loopOhm * capacitanceF / 2;
    }
}
