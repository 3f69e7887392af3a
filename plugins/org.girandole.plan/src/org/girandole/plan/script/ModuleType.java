package org.girandole.plan.script;

import java.util.Optional;

/**
 * What every module of a type can do.
 *
 * @param driveV open-circuit voltage at the pin
 * @param sourceOhm inner resistance of the drive
 * @param capacitanceF capacitance of a capacitor-discharge drive, farad; empty for a stiff source
 * @param pinsAtOnce pins that may fire in the same step
 * @param pinGapUs shortest time between two firings of the module that are not at once, microseconds
 * @param testA current of the continuity test, ampere
 * @param longestLeadM longest lead from module to igniter, one way, metres
 * @param sparePins pins to be left free
 */
public record ModuleType(String name, int pins, Optional<Double> driveV, Optional<Double> sourceOhm, Optional<Double> capacitanceF,
        Optional<Integer> ignitersPerPin, Optional<Integer> pinsAtOnce, Optional<Long> pinGapUs, Optional<Double> testA,
        Optional<Double> longestLeadM, int sparePins, SourceRef source) {
}
