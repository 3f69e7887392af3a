package org.girandole.physics.wind;

import java.util.List;

/** Asks a plan what a wind would break. */
@FunctionalInterface
public interface WindCheck {

    /**
     * @param fromDeg where the wind comes from, degrees clockwise from north
     * @param speedMps its speed in m/s
     * @return what this wind breaks, in words; empty if nothing
     */
    List<String> brokenBy(double fromDeg, double speedMps);
}
