package org.girandole.physics.fallout;

import java.util.Optional;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.geometry.Point3;

/**
 * One effect at one place with one tilt.
 *
 * @param key names it; equal keys draw equal scatter
 * @param body what flies
 * @param launch how it leaves the tube, nominally
 * @param burst when it bursts, nominally, microseconds after firing; empty for what does not burst
 * @param debris what comes down from the burst; must be there if it bursts
 * @param scatter what varies
 */
public record FalloutSpec(String key, Body body, Launch launch, Optional<Burst.After> burst, Optional<Debris> debris,
        Scatter scatter) {
    public FalloutSpec {
        if (burst.isPresent() != debris.isPresent()) {
            throw new PhysicsInputException(
                    "the fallout of " + key + " has " + (burst.isPresent() ? "a burst but no debris" : "debris but no burst"),
                    "both or neither", "give both or neither");
        }
    }

    /** The same flown from the site's origin: specs that are equal there come down alike, each from its own place. */
    FalloutSpec atOrigin() {
        Point3 origin = new Point3(0, 0, launch.muzzle().z());
        return new FalloutSpec(key, body, new Launch(origin, launch.speedMps(), launch.tiltDeg(), launch.azimuthDeg()), burst, debris,
                scatter);
    }
}
