package org.girandole.plan.script;

import java.util.Optional;

/**
 * An igniter type. Ohms and amperes.
 *
 * @param chargeKg net explosive content of one igniter
 * @param hazardClass as the carton has it, such as {@code 1.4S}
 * @param unNumber such as {@code UN0454}
 */
public record Igniter(String name, Optional<Double> resistanceOhm, Optional<Double> resistancePlusMinusOhm,
        Optional<Double> allFireA, Optional<Double> noFireA, Optional<Double> chargeKg, Optional<String> hazardClass, Optional<String> unNumber,
        SourceRef source) {
    /** An igniter of which nothing is known for transport. */
    public Igniter(String name, Optional<Double> resistanceOhm, Optional<Double> resistancePlusMinusOhm, Optional<Double> allFireA,
            Optional<Double> noFireA, SourceRef source) {
        this(name, resistanceOhm, resistancePlusMinusOhm, allFireA, noFireA, Optional.empty(), Optional.empty(), Optional.empty(), source);
    }
}
