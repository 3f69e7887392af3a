package org.girandole.physics.flight;

import org.girandole.physics.Derivation;

/**
 * A whole flight.
 *
 * @param apex the highest point
 * @param burst where it bursts
 * @param unburst where it meets the ground if it does not burst
 * @param derivation how the flight was computed; its last steps are the heights and distances
 */
public record Flight(FlightState apex, FlightState burst, FlightState unburst, Derivation derivation) {
}
