package org.girandole.physics.circuit;

import java.util.List;

import org.girandole.physics.Band;

/**
 * What one pin's circuit does when it is fired. Bands run over the tolerances of igniters and leads at their worst:
 * the least current through an igniter is that with its own resistance at the most and all others at the least that
 * rob it.
 *
 * @param loopOhm everything the pin's current passes: supply, pin, lead, igniters
 * @param readingOhm what a meter at the pin's terminals should show: lead and igniters
 * @param currentA current of the pin
 * @param igniterA current through each igniter, in the order given
 */
public record LoopResult(Band loopOhm, Band readingOhm, Band currentA, List<Band> igniterA) {
    public LoopResult {
        igniterA = List.copyOf(igniterA);
    }

    /** The band of the igniter that gets the least current at worst. */
    public Band weakestA() {
        Band weakest = igniterA.get(0);
        for (Band band : igniterA) {
            if (band.least() < weakest.least()) {
                weakest = band;
            }
        }
        return weakest;
    }
}
