package org.girandole.physics.circuit;

import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;

import org.girandole.physics.Band;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * What hangs on one pin: resistance inside the module that belongs to this pin alone, the lead, the igniters.
 *
 * @param pinOhm resistance inside the module in series with this pin, often 0
 * @param lead the lead to the igniters
 * @param igniterOhm the resistance of each igniter with its own wires, at least one
 * @param join how the igniters are joined; without meaning for one
 */
public record Branch(double pinOhm, Lead lead, List<Band> igniterOhm, Join join) {
    public Branch {
        Require.notNegative(pinOhm, "resistance of the pin", "ohm");
        igniterOhm = List.copyOf(igniterOhm);
        if (igniterOhm.isEmpty()) {
            throw new PhysicsInputException("a pin without igniters", "one igniter or more",
                    "give the igniters on the pin");
        }
        for (Band ohm : igniterOhm) {
            Require.positive(ohm.least(), "least resistance of an igniter", "ohm");
        }
    }

    /** {@code count} equal igniters on a pin without resistance of its own. */
    public static Branch equal(Lead lead, Band igniterOhm, int count, Join join) {
        if (count < 1) {
            throw new PhysicsInputException("a pin with " + count + " igniters", "one igniter or more",
                    "give the igniters on the pin");
        }
        return new Branch(0, lead, Collections.nCopies(count, igniterOhm), join);
    }

    /** Resistance of all igniters together in ohm. */
    public Band ignitersOhm() {
        return new Band(joined(Band::least), joined(Band::nominal), joined(Band::most));
    }

    /**
     * What a meter at the pin's terminals should show in ohm: lead and igniters. Resistance inside the module is not
     * part of it.
     */
    public Band readingOhm() {
        return sum(lead.loopOhm(), ignitersOhm());
    }

    /** Resistance of the whole branch in ohm, the pin's own included. */
    Band ohm() {
        return sum(Band.plusMinus(pinOhm, 0), readingOhm());
    }

    static Band sum(Band a, Band b) {
        return new Band(a.least() + b.least(), a.nominal() + b.nominal(), a.most() + b.most());
    }

    private double joined(ToDoubleFunction<Band> part) {
        double[] ohms = igniterOhm.stream().mapToDouble(part).toArray();
        return joined(ohms, join);
    }

    /** Resistance of igniters of these resistances joined so. */
    static double joined(double[] ohms, Join join) {
        double sum = 0;
        for (double ohm : ohms) {
            sum += join == Join.SERIES ? ohm : 1 / ohm;
        }
        return join == Join.SERIES ? sum : 1 / sum;
    }
}
