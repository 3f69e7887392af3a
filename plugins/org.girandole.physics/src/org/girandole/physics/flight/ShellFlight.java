package org.girandole.physics.flight;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;

import org.girandole.physics.Derivation;
import org.girandole.physics.Estimate;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.geometry.Point3;

/**
 * A shell made ready to fly from what its catalogue says: body, muzzle speed and rise, with what was missing estimated
 * and named.
 *
 * @param body mass and diameter
 * @param muzzleMps muzzle speed in m/s, fitted
 * @param riseUs microseconds from firing to burst
 * @param burstM burst height above the muzzle when fired straight up in calm air, metres
 * @param estimated what was estimated, in words; empty if everything was given
 * @param derivation how it came about; the last step is the muzzle speed
 */
public record ShellFlight(Body body, double muzzleMps, long riseUs, double burstM, List<String> estimated,
        Derivation derivation) {
    public ShellFlight {
        estimated = List.copyOf(estimated);
    }

    /**
     * The diameter follows from the calibre by the trade's tables. Without a mass the mass does too. Without a rise the
     * shell is taken to burst at the top of its flight, which is the latest it can; without a height the height is
     * estimated from the calibre.
     *
     * @param calibreMm bore of the mortar in millimetres
     * @param massKg mass without lift charge
     * @param riseUs microseconds from firing to burst
     * @param burstM burst height in metres above the muzzle
     * @throws PhysicsInputException if rise and height do not go together, or the calibre is beyond the tables
     */
    public static ShellFlight of(double calibreMm, OptionalDouble massKg, OptionalLong riseUs, OptionalDouble burstM,
            Air air) {
        List<String> estimated = new ArrayList<>();
        Derivation.Builder steps = Derivation.builder();
        Estimate diameter = Estimates.shellDiameterMm(calibreMm);
        steps.given("calibre", calibreMm, "mm", "bore of the mortar");
        steps.step("D", "shell diameter by calibre", "", diameter.value(), "mm", diameter.source());
        double mass = valueOr(massKg, Estimates.massKg(calibreMm), "mass", "m", steps, estimated);
        Body body = Body.sphere(mass, diameter.value() / 1000);
        double height = valueOr(burstM, Estimates.apexM(calibreMm), "burst height", "h", steps, estimated);
        if (riseUs.isEmpty()) {
            MuzzleFit fit = MuzzleFit.fromApex(body, height, air);
            FlightState top = new FlightModel(air, Wind.CALM).apex(body, Launch.vertical(fit.speedMps()));
            estimated.add("rise");
            return new ShellFlight(body, fit.speedMps(), top.timeUs(), height, estimated,
                    steps.step("rise", "estimated, burst at the highest point", "", top.timeUs() / 1e6, "s",
                            "point mass with quadratic drag").all(fit.derivation()).build());
        }
        MuzzleFit fit = fit(body, riseUs.getAsLong(), height, air, burstM.isEmpty());
        return new ShellFlight(body, fit.speedMps(), riseUs.getAsLong(), height, estimated,
                steps.all(fit.derivation()).build());
    }

    private static double valueOr(OptionalDouble given, Estimate estimate, String word, String symbol,
            Derivation.Builder steps, List<String> estimated) {
        if (given.isPresent()) {
            steps.given(symbol, given.getAsDouble(), estimate.unit(), word);
            return given.getAsDouble();
        }
        estimated.add(word);
        Derivation.Step step = estimate.step(symbol);
        steps.step(step.symbol(), step.formula(), step.substituted(), step.value(), step.unit(), step.source());
        return estimate.value();
    }

    private static MuzzleFit fit(Body body, long riseUs, double height, Air air, boolean heightEstimated) {
        try {
            return MuzzleFit.fromRiseAndApex(body, riseUs, height, air);
        } catch (PhysicsInputException impossible) {
            if (heightEstimated) {
                throw new PhysicsInputException("the height is estimated from the calibre, and " + impossible.getMessage(),
                        "a height that goes with the rise", "give the apex of the effect");
            }
            throw impossible;
        }
    }

    /** The launch of this shell from a muzzle, with a tilt from the vertical towards an azimuth, in degrees. */
    public Launch from(Point3 muzzle, double tiltDeg, double azimuthDeg) {
        return new Launch(muzzle, muzzleMps, tiltDeg, azimuthDeg);
    }
}
