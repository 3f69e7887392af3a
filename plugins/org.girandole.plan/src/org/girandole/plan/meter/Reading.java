package org.girandole.plan.meter;

import java.util.OptionalDouble;

/**
 * What somebody read off the meter at one pin.
 *
 * @param module name or address of the module
 * @param pin from 1
 * @param ohm empty when the meter showed an open circuit
 */
public record Reading(String module, int pin, OptionalDouble ohm) {
}
