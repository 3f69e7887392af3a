/**
 * What every computation of the physics bundle shares: derivations that can be printed, bands of tolerance, estimates
 * that stay marked as estimates, and one kind of error for input that cannot be computed from.
 *
 * <p>SI inside: metres, seconds, kilograms, amperes, volts, ohms, kelvin; angles in degrees where people write them,
 * and named so. Azimuths are clockwise from north; x is east, y is north, z is up.
 */
package org.girandole.physics;
