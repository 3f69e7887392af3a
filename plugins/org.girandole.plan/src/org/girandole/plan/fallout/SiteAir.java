package org.girandole.plan.fallout;

import java.util.Optional;
import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.StandardAir;
import org.girandole.plan.Plan;
import org.girandole.plan.script.Site;

/**
 * The air of a site as the script gives it.
 *
 * @param elevationM above sea level, metres
 * @param airC degrees Celsius; empty for that of the standard atmosphere there
 */
record SiteAir(double elevationM, Optional<Double> airC) {
    static SiteAir of(Plan plan) {
        return new SiteAir(plan.script().site().flatMap(Site::elevationM).orElse(0.0), plan.script().site().flatMap(Site::airC));
    }

    Air air() {
        return airC.map(celsius -> new StandardAir(elevationM, celsius)).orElseGet(() -> StandardAir.undisturbed(elevationM));
    }
}
