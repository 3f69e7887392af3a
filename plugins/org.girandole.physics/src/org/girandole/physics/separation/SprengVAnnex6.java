package org.girandole.physics.separation;

import static org.girandole.physics.separation.ArticleKind.CAKE;
import static org.girandole.physics.separation.ArticleKind.CANDLE;
import static org.girandole.physics.separation.ArticleKind.FLARE;
import static org.girandole.physics.separation.ArticleKind.FOUNTAIN;
import static org.girandole.physics.separation.ArticleKind.MINE;
import static org.girandole.physics.separation.ArticleKind.ROCKET;
import static org.girandole.physics.separation.ArticleKind.SHELL;
import static org.girandole.physics.separation.ArticleKind.WHEEL;
import static org.girandole.physics.separation.Condition.above;
import static org.girandole.physics.separation.Condition.aboveUpTo;
import static org.girandole.physics.separation.Condition.atLeast;
import static org.girandole.physics.separation.Condition.atMost;
import static org.girandole.physics.separation.Condition.between;
import static org.girandole.physics.separation.Condition.facing;
import static org.girandole.physics.separation.Condition.has;
import static org.girandole.physics.separation.Condition.isA;
import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.HEIGHT;
import static org.girandole.physics.separation.Quantity.SLOPE;
import static org.girandole.physics.separation.Quantity.TILT;
import static org.girandole.physics.separation.Quantity.WIND;

import java.util.ArrayList;
import java.util.List;

/** German first ordinance on the explosives act, annex 6 no. 3: fireworks of category F4. */
final class SprengVAnnex6 {
    private static final String DOCUMENT = "1. SprengV, Annex 6 (BGBl. I 2017, 1627)";
    /** The rules that no. 3.4.3 raises for tilt and no. 3.4.1 for structures. */
    private static final List<String> BURSTING = List.of("3.3.3", "3.3.4", "3.3.2");

    static final DistanceTable TABLE = new DistanceTable("GermanTable", "1. SprengV Annex 6", at(""),
            DistanceTable.DEFAULT_SECTOR_DEG, rules(), modifiers(), List.of(
                    "The text read had lost its comparison signs: 50 mm is read as 50 mm and more, 9 m/s as up to 9 m/s,"
                            + " 20 % as up to 20 %.",
                    "Tilts between the bands of no. 3.4.3 are read into the next band: up to 10, up to 15, up to 20 deg;"
                            + " below 5 deg nothing is added.",
                    "Slopes above 20 % have no number; near-vertical rises count as structures.",
                    "In the direction of tilt or wind is read as 60 deg either side.",
                    "Mines, batteries and candles of 50 mm and more are taken to hold shells.",
                    "The wind is that measured at 2 m above the ground before firing, no. 2.1.1.3.",
                    "The maker's distance, where one is on the label, comes before no. 3.3."));

    private SprengVAnnex6() {
    }

    private static Citation at(String number) {
        return new Citation(DOCUMENT, number, Verification.TEXT_READ);
    }

    private static List<BaseRule> rules() {
        return List.of(
                new BaseRule("3.3.9", "articles on water: case by case", List.of(has(Flag.WATER)),
                        Formula.noNumber("articles used on water are assessed case by case"), at("no. 3.3.9")),
                new BaseRule("3.3.7 ahead", "rockets, in the direction of use: 200 m",
                        List.of(isA(ROCKET), facing(Where.TOWARDS_TILT)), Formula.fixed(200), at("no. 3.3.7")),
                new BaseRule("3.3.7 aside", "rockets, in other directions: 125 m", List.of(isA(ROCKET)), Formula.fixed(125),
                        at("no. 3.3.7")),
                new BaseRule("3.3.1", "ground fireworks: 20 m", List.of(isA(FOUNTAIN, WHEEL, FLARE)), Formula.fixed(20),
                        at("no. 3.3.1")),
                new BaseRule("3.3.3", "report shells: 100 % of the burst height, at least 1 m per mm of calibre",
                        List.of(has(Flag.REPORT)), Formula.greatest(
                                Formula.times(1.0, HEIGHT, "100 % of the burst height"),
                                Formula.times(1000, CALIBRE, "1 m per mm * calibre")),
                        at("no. 3.3.3")),
                new BaseRule("3.3.4", "day shells without burning effect: 80 % of the burst height",
                        List.of(isA(SHELL), has(Flag.DAY_EFFECT)), Formula.times(0.8, HEIGHT, "80 % of the burst height"),
                        at("no. 3.3.4")),
                new BaseRule("3.3.2", "shells of 50 mm and more: 80 % of the burst height, at least 0.8 m per mm of calibre",
                        List.of(isA(SHELL, MINE, CAKE, CANDLE), atLeast(CALIBRE, 0.050)), Formula.greatest(
                                Formula.times(0.8, HEIGHT, "80 % of the burst height"),
                                Formula.times(800, CALIBRE, "0.8 m per mm * calibre")),
                        at("no. 3.3.2")),
                new BaseRule("3.3.5", "other articles up to 30 m high: 30 m", List.of(atMost(HEIGHT, 30)), Formula.fixed(30),
                        at("no. 3.3.5")),
                new BaseRule("3.3.6", "other articles above 30 m high: 50 m", List.of(above(HEIGHT, 30)), Formula.fixed(50),
                        at("no. 3.3.6")));
    }

    private static List<Modifier> modifiers() {
        List<String> sloped = new ArrayList<>(BURSTING);
        sloped.addAll(List.of("3.3.7 ahead", "3.3.7 aside"));
        List<String> thrown = new ArrayList<>(sloped);
        thrown.addAll(List.of("3.3.5", "3.3.6"));
        List<String> blown = new ArrayList<>(thrown);
        blown.add("3.3.9");
        List<Modifier> modifiers = new ArrayList<>();
        modifiers.add(new Modifier("on a structure: its height added to the burst height", BURSTING, List.of(),
                Where.EVERYWHERE, new Change.AddToHeight(Quantity.STRUCTURE), at("no. 3.4.1")));
        modifiers.add(new Modifier("debris thrown further: 1.1 times its range", thrown, List.of(), Where.EVERYWHERE,
                new Change.IfBeyond(Quantity.DEBRIS_RANGE, 1.1), at("no. 3.3.8")));
        modifiers.add(new Modifier("sloping ground: 20 % more", sloped, List.of(aboveUpTo(SLOPE, 0, 20)),
                Where.EVERYWHERE, Change.addPercent(20), at("no. 3.4.2")));
        modifiers.add(new Modifier("sloping ground above 20 %: no number", sloped, List.of(above(SLOPE, 20)),
                Where.EVERYWHERE, new Change.NoNumber("a slope above 20 % has no number; assess the case"), at("no. 3.4.2")));
        modifiers.add(tilt(between(TILT, 5, 10), "5 to 10", 40));
        modifiers.add(tilt(aboveUpTo(TILT, 10, 15), "11 to 15", 60));
        modifiers.add(tilt(aboveUpTo(TILT, 15, 20), "16 to 20", 80));
        modifiers.add(new Modifier("tilted by more than 20 deg: individual assessment", List.of(), List.of(above(TILT, 20)),
                Where.EVERYWHERE, new Change.NoNumber("a tilt above 20 deg needs an individual assessment"), at("no. 3.4.3")));
        modifiers.add(new Modifier("opposite to the tilt: may be reduced by at most 40 %", BURSTING,
                List.of(between(TILT, 5, 20)), Where.AGAINST_TILT, new Change.MayReduceBy(0.4), at("no. 3.4.3")));
        modifiers.add(new Modifier("downwind, wind above 9 up to 13 m/s: 100 % more", blown, List.of(aboveUpTo(WIND, 9, 13)),
                Where.DOWNWIND, Change.addPercent(100), at("no. 3.4.4")));
        modifiers.add(new Modifier("downwind, wind above 13 m/s: 200 % more", blown, List.of(above(WIND, 13)),
                Where.DOWNWIND, Change.addPercent(200), at("no. 3.4.4")));
        modifiers.add(new Modifier("upwind, wind above 9 m/s: may be reduced by at most 40 %", blown, List.of(above(WIND, 9)),
                Where.UPWIND, new Change.MayReduceBy(0.4), at("no. 3.4.4")));
        return modifiers;
    }

    private static Modifier tilt(Condition band, String degrees, double percent) {
        return new Modifier("tilted by " + degrees + " deg, where it leans: " + (int) percent + " % more", BURSTING,
                List.of(band), Where.TOWARDS_TILT, Change.addPercent(percent), at("no. 3.4.3"));
    }
}
