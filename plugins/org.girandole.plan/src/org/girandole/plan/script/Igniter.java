package org.girandole.plan.script;

import java.util.Optional;

/** An igniter type. Ohms and amperes. */
public record Igniter(String name, Optional<Double> resistanceOhm, Optional<Double> resistancePlusMinusOhm,
        Optional<Double> allFireA, Optional<Double> noFireA, SourceRef source) {
}
