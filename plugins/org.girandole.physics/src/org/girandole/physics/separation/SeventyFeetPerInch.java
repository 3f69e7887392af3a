package org.girandole.physics.separation;

import static org.girandole.physics.separation.ArticleKind.CAKE;
import static org.girandole.physics.separation.ArticleKind.CANDLE;
import static org.girandole.physics.separation.ArticleKind.COMET;
import static org.girandole.physics.separation.ArticleKind.FLARE;
import static org.girandole.physics.separation.ArticleKind.FOUNTAIN;
import static org.girandole.physics.separation.ArticleKind.MINE;
import static org.girandole.physics.separation.ArticleKind.SALUTE;
import static org.girandole.physics.separation.ArticleKind.SHELL;
import static org.girandole.physics.separation.ArticleKind.WHEEL;
import static org.girandole.physics.separation.Condition.above;
import static org.girandole.physics.separation.Condition.aboveUpTo;
import static org.girandole.physics.separation.Condition.atMost;
import static org.girandole.physics.separation.Condition.between;
import static org.girandole.physics.separation.Condition.below;
import static org.girandole.physics.separation.Condition.has;
import static org.girandole.physics.separation.Condition.isA;
import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.TILT;

import java.util.List;

/** The family of rules in the United States that asks for 70 ft of distance for each inch of shell. */
final class SeventyFeetPerInch {
    private static final double FOOT_M = 0.3048;
    private static final double INCH_M = 0.0254;
    private static final double METRES_PER_METRE = 70 * FOOT_M / INCH_M;

    private static final Citation RULE = new Citation("Oregon OAR 837-012-0840 (NFPA 1123 family)", "(3)(a)",
            Verification.TEXT_READ);
    private static final Citation DOUBLE = new Citation("Oregon OAR 837-012-0840 (NFPA 1123 family)", "(4), (5)",
            Verification.TEXT_READ);
    private static final Citation GROUND = new Citation("Columbus, Indiana, fire department's fireworks rules (NFPA 1123 family)",
            "ground displays", Verification.QUOTED);
    private static final Citation FANNED = new Citation("Columbus, Indiana, fire department's fireworks rules (NFPA 1123 family)",
            "fanned racks and boxes", Verification.QUOTED);
    private static final Citation CODE = new Citation("NFPA 1123", "aerial shell site table; check the edition in force",
            Verification.FROM_MEMORY);

    static final DistanceTable TABLE = new DistanceTable("UsTable", "the 70 ft per inch rule", RULE,
            DistanceTable.DEFAULT_SECTOR_DEG, rules(), modifiers(), List.of(
                    "The rule is the floor of its family: the table of the edition in force, and the authority, may ask for more. In Oregon it is"
                            + " the least to which the distances of that rule's own table, which was not read, may be reduced.",
                    "Wind has no number in this family; the authority and the operator decide.",
                    "Tilted tubes: the firing place is taken to lie a third of the radius from the centre of the circle, from memory."));

    private SeventyFeetPerInch() {
    }

    private static List<BaseRule> rules() {
        return List.of(
                new BaseRule("driven", "ground pieces with large drivers or wings: 125 ft",
                        List.of(isA(FOUNTAIN, WHEEL, FLARE), has(Flag.LARGE_DRIVER)), Formula.fixed(125 * FOOT_M), GROUND),
                new BaseRule("ground", "ground pieces: 75 ft", List.of(isA(FOUNTAIN, WHEEL, FLARE)),
                        Formula.fixed(75 * FOOT_M), GROUND),
                new BaseRule("shells", "aerial shells: 70 ft per inch of shell",
                        List.of(isA(SHELL, SALUTE), between(CALIBRE, 0.050, 12 * INCH_M)),
                        Formula.times(METRES_PER_METRE, CALIBRE, "70 ft per inch (0.84 m per mm) * calibre"), RULE),
                new BaseRule("small shells", "aerial shells below 50 mm: 140 ft",
                        List.of(isA(SHELL, SALUTE), below(CALIBRE, 0.050)), Formula.fixed(140 * FOOT_M), CODE),
                new BaseRule("large shells", "aerial shells above 12 in: the authority decides", List.of(isA(SHELL, SALUTE)),
                        Formula.noNumber("shells above 12 in have no number in this family; the authority decides"), CODE),
                new BaseRule("tubes", "mines, comets, candles and cakes: 70 ft per inch of the tube's inside diameter",
                        List.of(isA(MINE, COMET, CANDLE, CAKE), atMost(CALIBRE, 12 * INCH_M)),
                        Formula.times(METRES_PER_METRE, CALIBRE, "70 ft per inch (0.84 m per mm) * calibre"), CODE));
    }

    private static List<Modifier> modifiers() {
        List<String> shells = List.of("shells", "small shells");
        List<String> tubes = List.of("tubes");
        return List.of(
                new Modifier("chain-fused in a rack of unproved strength: doubled", shells,
                        List.of(has(Flag.CHAIN_IN_UNPROVED_RACK)), Where.EVERYWHERE, new Change.MultiplyBy(2), CODE),
                new Modifier("tilted tube, where it leans: four thirds of the radius", shells,
                        List.of(aboveUpTo(TILT, 0, 20)), Where.TOWARDS_TILT, new Change.MultiplyBy(4.0 / 3), CODE),
                new Modifier("tilted tube, behind it: two thirds of the radius may be enough", shells,
                        List.of(aboveUpTo(TILT, 0, 20)), Where.AGAINST_TILT, new Change.MayReduceBy(1.0 / 3), CODE),
                new Modifier("shells tilted by more than 20 deg: no number", shells, List.of(above(TILT, 20)),
                        Where.EVERYWHERE,
                        new Change.NoNumber("a shell tilted above 20 deg has no number in this family; assess the case"), CODE),
                new Modifier("fanned tubes, where they lean: 10 % more", tubes, List.of(aboveUpTo(TILT, 0, 45)),
                        Where.TOWARDS_TILT, Change.addPercent(10), FANNED),
                new Modifier("tilted by more than 45 deg: no number", tubes, List.of(above(TILT, 45)), Where.EVERYWHERE,
                        new Change.NoNumber("a tilt above 45 deg has no number in this family; assess the case"), CODE),
                new Modifier("hospital, place of detention, bulk storage of dangerous goods: doubled", List.of(),
                        List.of(has(Flag.SPECIAL_OCCUPANCY)), Where.EVERYWHERE, new Change.MultiplyBy(2), DOUBLE));
    }
}
