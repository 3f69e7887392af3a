package org.girandole.physics.sound;

import org.girandole.physics.Derivation;

/**
 * The time sound takes over a distance.
 *
 * @param delayUs the delay in whole microseconds, rounded half up
 * @param speedMps the speed of sound used, in m/s
 * @param derivation how it was computed
 */
public record SoundDelay(long delayUs, double speedMps, Derivation derivation) {
}
