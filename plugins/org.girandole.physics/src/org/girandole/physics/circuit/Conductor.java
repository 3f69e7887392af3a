package org.girandole.physics.circuit;

import java.util.Locale;

import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * One copper conductor.
 *
 * @param name its size in words, such as {@code 24 AWG}
 * @param ohmPerKm resistance in ohm per kilometre at 20 degrees Celsius
 * @param derivation where the resistance is from
 */
public record Conductor(String name, double ohmPerKm, Derivation derivation) {
    /** Resistivity of annealed copper at 20 degrees Celsius in ohm mm2/km, IEC 60028. */
    public static final double COPPER_OHM_MM2_PER_KM = 17.241;

    private static final int THINNEST_AWG = 40;
    private static final int THICKEST_AWG = -3;

    public Conductor {
        Require.positive(ohmPerKm, "resistance of the conductor", "ohm/km");
    }

    /**
     * A conductor by American wire gauge: diameter {@code 0.127 mm * 92^((36-n)/39)} (ASTM B258), of the resistivity of
     * IEC 60028. The gauge states the cross-section of the copper, so the figure serves solid and stranded alike; the
     * one or two percent that the lay of strands adds is left to the tolerance of the lead.
     *
     * @param gauge -3 (0000) to 40
     */
    public static Conductor awg(int gauge) {
        if (gauge < THICKEST_AWG || gauge > THINNEST_AWG) {
            throw new PhysicsInputException("the wire is " + gauge + " AWG", "-3 (0000) to 40 AWG",
                    "correct the gauge or give the cross-section in mm2");
        }
        double diameterMm = 0.127 * Math.pow(92, (36 - gauge) / 39.0);
        double areaMm2 = Math.PI * diameterMm * diameterMm / 4;
        double ohmPerKm = COPPER_OHM_MM2_PER_KM / areaMm2;
        Derivation derivation = Derivation.builder()
                .step("d", "0.127 mm * 92^((36 - n) / 39)", "0.127 * 92^((36 - " + gauge + ") / 39)", diameterMm, "mm",
                        "ASTM B258")
                .step("A", "pi d^2 / 4", "pi * " + Figures.of(diameterMm) + "^2 / 4", areaMm2, "mm2", "")
                .step("r20", "17.241 / A", "17.241 / " + Figures.of(areaMm2), ohmPerKm, "ohm/km",
                        "annealed copper, IEC 60028")
                .build();
        return new Conductor(gaugeName(gauge), ohmPerKm, derivation);
    }

    private static String gaugeName(int gauge) {
        return (gauge < 0 ? "0".repeat(1 - gauge) : Integer.toString(gauge)) + " AWG";
    }

    /**
     * A conductor by nominal cross-section. Where IEC 60228 gives a maximum it is used, because less copper than the
     * nominal area may be in the wire; other sizes follow from the resistivity of IEC 60028.
     *
     * @param areaMm2 nominal cross-section in mm2
     * @param coated true for metal-coated (tinned) copper
     */
    public static Conductor crossSection(double areaMm2, Strands strands, boolean coated) {
        Require.positive(areaMm2, "cross-section", "mm2");
        String name = Figures.of(areaMm2) + " mm2";
        return Iec60228.maximumOhmPerKm(areaMm2, strands, coated)
                .map(maximum -> new Conductor(name, maximum, Derivation.of(new Derivation.Step("r20",
                        String.format(Locale.ROOT, "maximum for %s mm2, %s, %s copper", Figures.of(areaMm2),
                                strands.iecClass(), coated ? "metal-coated" : "plain"),
                        "", maximum, "ohm/km", "IEC 60228, maximum resistance at 20 degC"))))
                .orElseGet(() -> byResistivity(name, areaMm2));
    }

    private static Conductor byResistivity(String name, double areaMm2) {
        double ohmPerKm = COPPER_OHM_MM2_PER_KM / areaMm2;
        return new Conductor(name, ohmPerKm, Derivation.of(new Derivation.Step("r20", "17.241 / A",
                "17.241 / " + Figures.of(areaMm2), ohmPerKm, "ohm/km", "annealed copper, IEC 60028")));
    }
}
