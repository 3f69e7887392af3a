package org.girandole.plan.script;

import java.util.Optional;

/**
 * What the script says of the controller and the wiring.
 *
 * @param stepUs smallest step of a firing time, microseconds
 * @param latencyUs firing command to current in the igniter, microseconds
 * @param clockPpm how far its own clock may be off, parts per million
 * @param wire lead wire used
 * @param slackM wire added to each lead, metres
 * @param slackFraction wire added to each lead, as a part of the laid-out length
 * @param copperC temperature of the copper, degrees Celsius
 * @param join how igniters that share a pin are joined
 * @param currentMargin igniter current wanted, as a multiple of the all-fire current
 * @param control how it follows timecode
 */
public record FiringSystem(String name, Optional<Long> stepUs, Optional<Long> latencyUs, Optional<Double> clockPpm,
        Optional<String> wire, double slackM, double slackFraction, Optional<Double> copperC, Join join, double currentMargin, Control control,
        SourceRef source) {
    /** A firing system of which nothing is said about how it follows timecode. */
    public FiringSystem(String name, Optional<Long> stepUs, Optional<Long> latencyUs, Optional<Double> clockPpm, Optional<String> wire,
            double slackM, double slackFraction, Optional<Double> copperC, Join join, double currentMargin, SourceRef source) {
        this(name, stepUs, latencyUs, clockPpm, wire, slackM, slackFraction, copperC, join, currentMargin, Control.DEFAULT, source);
    }

    /** How igniters on one pin are joined. */
    public enum Join {
        SERIES, PARALLEL
    }
}
