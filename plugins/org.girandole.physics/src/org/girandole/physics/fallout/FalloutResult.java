package org.girandole.physics.fallout;

import java.util.Optional;

/**
 * Where one effect at one place with one tilt comes down.
 *
 * @param spec what was flown
 * @param unburst where it comes down if it does not burst
 * @param debris where what is left of it comes down if it bursts; empty for what does not burst
 */
public record FalloutResult(FalloutSpec spec, Footprint unburst, Optional<Footprint> debris) {
}
