package org.girandole.plan.script;

import java.util.Optional;

/**
 * A lead wire: by American gauge or by area.
 *
 * @param awg American wire gauge number
 * @param areaMm2 conductor area in square millimetres
 * @param iecClass conductor class of IEC 60228 (1, 2 or 5), for wires given by area
 */
public record Wire(String name, Optional<Integer> awg, Optional<Double> areaMm2, int iecClass, SourceRef source) {
}
