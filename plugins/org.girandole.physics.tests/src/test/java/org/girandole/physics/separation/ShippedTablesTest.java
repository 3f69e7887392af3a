package org.girandole.physics.separation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.DEBRIS_RANGE;
import static org.girandole.physics.separation.Quantity.HEIGHT;
import static org.girandole.physics.separation.Quantity.SLOPE;
import static org.girandole.physics.separation.Quantity.STRUCTURE;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ShippedTablesTest {
    private static final double SOUTH = 180;

    private static FiringCase shell(double calibreMm) {
        return FiringCase.of(ArticleKind.SHELL).with(CALIBRE, calibreMm / 1000).towards(SOUTH);
    }

    private static FiringCase shell(double calibreMm, double burstM) {
        return shell(calibreMm).with(HEIGHT, burstM);
    }

    private static Requirement ask(String table, FiringCase firing) {
        return ShippedTables.named(table).orElseThrow().evaluate(firing);
    }

    private static double metres(String table, FiringCase firing) {
        return ask(table, firing).metres().orElseThrow();
    }

    /** 1. SprengV Annex 6, BGBl. I 2017, 1627-1631, as stored in bundestag/gesetze at 77abca2c; cases worked by hand. */
    @Nested
    class German {
        private static final String TABLE = "GermanTable";

        @ParameterizedTest
        @CsvSource({"100, 120, 96", "100, 90, 80", "75, 105, 84", "150, 140, 120", "50, 30, 40"})
        void colourShells(double calibreMm, double burstM, double metres) {
            // no. 3.3.2: max(80 % of the burst height, 0.8 m per mm)
            assertThat(metres(TABLE, shell(calibreMm, burstM))).isCloseTo(metres, within(1e-9));
        }

        @ParameterizedTest
        @CsvSource({"100, 120, 120", "100, 90, 100", "40, 30, 40"})
        void reportShells(double calibreMm, double burstM, double metres) {
            // no. 3.3.3: max(100 % of the burst height, 1 m per mm), at every calibre
            var salute = FiringCase.of(ArticleKind.SALUTE).with(CALIBRE, calibreMm / 1000).with(HEIGHT, burstM);
            assertThat(metres(TABLE, salute)).isCloseTo(metres, within(1e-9));
            assertThat(metres(TABLE, shell(calibreMm, burstM).with(Flag.REPORT))).isCloseTo(metres, within(1e-9));
        }

        @Test
        void dayShells() {
            // no. 3.3.4: 80 % of the burst height, whatever the calibre
            assertThat(metres(TABLE, shell(150, 100).with(Flag.DAY_EFFECT))).isCloseTo(80, within(1e-9));
        }

        @Test
        void tiltTowards() {
            // no. 3.4.3
            assertThat(metres(TABLE, shell(100, 120).tilted(4.9, SOUTH))).isCloseTo(96, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(5, SOUTH))).isCloseTo(96 * 1.4, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(10, SOUTH))).isCloseTo(134.4, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(10.5, SOUTH))).isCloseTo(96 * 1.6, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(15, SOUTH))).isCloseTo(96 * 1.6, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(18, SOUTH))).isCloseTo(96 * 1.8, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).tilted(20, SOUTH))).isCloseTo(96 * 1.8, within(1e-9));
        }

        @Test
        void tiltAwayMayReduceByFortyPercent() {
            var away = ask(TABLE, shell(100, 120).tilted(10, 0));
            assertThat(away.metres().orElseThrow()).isCloseTo(96, within(1e-9));
            assertThat(away.reducibleToM().orElseThrow()).isCloseTo(57.6, within(1e-9));
            assertThat(away.metBy(90)).as("a reduction is a decision, not a default").isFalse();
        }

        @Test
        void tiltAboveTwentyHasNoNumber() {
            var steep = ask(TABLE, shell(100, 120).tilted(25, SOUTH));
            assertThat(steep.assessmentNeeded()).isTrue();
            assertThat(steep.assessment()).contains("a tilt above 20 deg needs an individual assessment");
            assertThat(steep.metBy(1e6)).isFalse();
            assertThat(steep.applied()).extracting(rule -> rule.citation().section()).containsExactly("no. 3.3.2", "no. 3.4.3");
            assertThat(ask(TABLE, FiringCase.of(ArticleKind.COMET).with(HEIGHT, 45).tilted(25, SOUTH)).assessmentNeeded())
                    .isTrue();
        }

        @Test
        void wind() {
            // no. 3.4.4; wind from the north blows to the south
            var tilted = shell(100, 120).tilted(10, SOUTH);
            assertThat(metres(TABLE, tilted.inWind(0, 9))).isCloseTo(134.4, within(1e-9));
            assertThat(metres(TABLE, tilted.inWind(0, 11))).isCloseTo(268.8, within(1e-9));
            assertThat(metres(TABLE, tilted.inWind(0, 13))).isCloseTo(268.8, within(1e-9));
            assertThat(metres(TABLE, tilted.inWind(0, 13.1))).isCloseTo(403.2, within(1e-9));
            assertThat(metres(TABLE, tilted.inWind(90, 11))).as("across").isCloseTo(134.4, within(1e-9));
            var upwind = ask(TABLE, shell(100, 120).inWind(SOUTH, 11));
            assertThat(upwind.metres().orElseThrow()).isCloseTo(96, within(1e-9));
            assertThat(upwind.reducibleToM().orElseThrow()).isCloseTo(57.6, within(1e-9));
        }

        @Test
        void windOfUnknownDirectionBlowsEverywhere() {
            assertThat(metres(TABLE, shell(100, 120).with(Quantity.WIND, 11))).isCloseTo(192, within(1e-9));
        }

        @Test
        void structuresAndSlopes() {
            // nos. 3.4.1 and 3.4.2: 0.8 * (120 + 25); 96 * 1.2
            assertThat(metres(TABLE, shell(100, 120).with(STRUCTURE, 25))).isCloseTo(116, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).with(SLOPE, 12))).isCloseTo(115.2, within(1e-9));
            assertThat(ask(TABLE, shell(100, 120).with(SLOPE, 30)).assessmentNeeded()).isTrue();
        }

        @Test
        void modifiersInTheOrderOfTheText() {
            // roof, then slope, then tilt, then wind: 0.8 * (120 + 25) * 1.2 * 1.4 * 2
            assertThat(metres(TABLE, shell(100, 120).with(STRUCTURE, 25).with(SLOPE, 10).tilted(8, SOUTH).inWind(0, 12)))
                    .isCloseTo(116 * 1.2 * 1.4 * 2, within(1e-9));
        }

        @Test
        void otherArticles() {
            // nos. 3.3.5 and 3.3.6
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.COMET).with(HEIGHT, 28))).isEqualTo(30);
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.COMET).with(HEIGHT, 30))).isEqualTo(30);
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.COMET).with(HEIGHT, 45))).isEqualTo(50);
            assertThat(metres(TABLE, shell(45, 60))).as("a shell below 50 mm").isEqualTo(50);
            // no. 3.3.1: neither tilt nor wind touches ground fireworks
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.FOUNTAIN).inWind(0, 11).towards(SOUTH))).isEqualTo(20);
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.WHEEL))).isEqualTo(20);
        }

        @Test
        void rockets() {
            // no. 3.3.7
            var rocket = FiringCase.of(ArticleKind.ROCKET).tilted(10, SOUTH);
            assertThat(metres(TABLE, rocket.towards(SOUTH))).isEqualTo(200);
            assertThat(metres(TABLE, rocket.towards(0))).isEqualTo(125);
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.ROCKET))).as("upright: every direction").isEqualTo(200);
        }

        @Test
        void thrownDebris() {
            // no. 3.3.8: 1.1 times the range where it is further than the distance
            assertThat(metres(TABLE, shell(100, 120).with(DEBRIS_RANGE, 100))).isCloseTo(110, within(1e-9));
            assertThat(metres(TABLE, shell(100, 120).with(DEBRIS_RANGE, 90))).isCloseTo(96, within(1e-9));
        }

        @Test
        void onWaterNoNumber() {
            // no. 3.3.9
            assertThat(ask(TABLE, shell(100, 120).with(Flag.WATER)).assessment())
                    .contains("articles used on water are assessed case by case");
        }

        @Test
        void missingDataGivesNoNumber() {
            assertThat(ask(TABLE, shell(100)).assessment()).contains("the burst height of this shell is not known");
            assertThat(ask(TABLE, FiringCase.of(ArticleKind.SHELL).with(HEIGHT, 120)).assessment())
                    .contains("the calibre of this shell is not known");
            assertThat(ask(TABLE, FiringCase.of(ArticleKind.COMET)).assessmentNeeded()).isTrue();
        }

        @Test
        void whatIsAssumedIsSaid() {
            assertThat(ask(TABLE, shell(100, 120)).assumptions()).contains("wind not given, 0 m/s assumed",
                    "tilt not given, 0 deg assumed", "slope of the ground not given, 0 % assumed");
            assertThat(ask(TABLE, shell(100, 120).tilted(0, 0).inWind(0, 0).with(SLOPE, 0).with(STRUCTURE, 0)).assumptions())
                    .isEmpty();
        }

        @Test
        void estimatesStayEstimates() {
            assertThat(ask(TABLE, shell(100).withEstimated(HEIGHT, 120)).estimated()).containsExactly(HEIGHT);
            assertThat(ask(TABLE, shell(100, 120)).estimated()).isEmpty();
            assertThat(ask("UsTable", shell(100).withEstimated(HEIGHT, 120)).estimated())
                    .as("a value that the rule does not use").isEmpty();
        }

        @Test
        void theRequirementExplainsItself() {
            var requirement = ask(TABLE, shell(100, 120).tilted(10, SOUTH));
            assertThat(requirement.basis()).isEqualTo("shells of 50 mm and more: 80 % of the burst height, at least 0.8 m per mm of calibre:"
                    + " 1. SprengV, Annex 6 (BGBl. I 2017, 1627), no. 3.3.2 (text read); then tilted by 5 to 10 deg, where it leans: 40 % more:"
                    + " 1. SprengV, Annex 6 (BGBl. I 2017, 1627), no. 3.4.3 (text read)");
            assertThat(requirement.derivation().orElseThrow().text())
                    .contains("calibre = given = 100 mm [calibre]")
                    .contains("d = d * 1.4 = 96 * 1.4 = 134.4 m [1. SprengV, Annex 6 (BGBl. I 2017, 1627), no. 3.4.3 (text read)]");
            assertThat(requirement.derivation().orElseThrow().result().value()).isCloseTo(134.4, within(1e-9));
        }
    }

    /** Oregon OAR 837-012-0840 (3)(a): not less than 70 ft per inch of aerial shell diameter. */
    @Nested
    class SeventyFeetPerInch {
        private static final String TABLE = "UsTable";

        @ParameterizedTest
        @CsvSource({"3, 210, 64.0", "4, 280, 85.3", "5, 350, 106.7", "6, 420, 128.0", "8, 560, 170.7", "10, 700, 213.4",
                "12, 840, 256.0"})
        void byInch(double inches, double feet, double metres) {
            double asked = metres(TABLE, shell(inches * 25.4));
            assertThat(asked / 0.3048).isCloseTo(feet, within(1e-6));
            assertThat(asked).isCloseTo(metres, within(0.05));
        }

        @ParameterizedTest
        @CsvSource({"50, 42.0", "75, 63.0", "100, 84.0", "125, 105.0", "150, 126.0", "200, 168.0", "300, 252.0"})
        void byMillimetre(double calibreMm, double metres) {
            assertThat(metres(TABLE, shell(calibreMm))).isCloseTo(metres, within(1e-9));
        }

        @Test
        void ninetyMetresAreEnoughForAHundredMillimetres() {
            assertThat(ask(TABLE, shell(100)).metBy(90)).isTrue();
            assertThat(ask(TABLE, shell(100)).metBy(84)).isTrue();
            assertThat(ask(TABLE, shell(100)).metBy(83.99)).isFalse();
        }

        @Test
        void specialOccupanciesAreDoubled() {
            // OAR 837-012-0840 (4), (5)
            assertThat(metres(TABLE, shell(100).with(Flag.SPECIAL_OCCUPANCY))).isCloseTo(168, within(1e-9));
        }

        @Test
        void groundPieces() {
            // Columbus, Indiana: 75 ft; 125 ft for large drivers
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.FOUNTAIN))).isCloseTo(22.86, within(1e-9));
            assertThat(metres(TABLE, FiringCase.of(ArticleKind.WHEEL).with(Flag.LARGE_DRIVER))).isCloseTo(38.1, within(1e-9));
        }

        @Test
        void tiltedShells() {
            // from memory of NFPA 1123: the firing place a third of the radius off the centre
            assertThat(metres(TABLE, shell(150).tilted(10, SOUTH))).isCloseTo(168, within(1e-9));
            var away = ask(TABLE, shell(150).tilted(10, 0));
            assertThat(away.metres().orElseThrow()).isCloseTo(126, within(1e-9));
            assertThat(away.reducibleToM().orElseThrow()).isCloseTo(84, within(1e-9));
        }

        @Test
        void eachRuleKeepsItsOwnMarkAndTheWorstCountsForTheNumber() {
            assertThat(ask(TABLE, shell(150)).verification()).isEqualTo(Verification.TEXT_READ);
            var tilted = ask(TABLE, shell(150).tilted(10, SOUTH));
            assertThat(tilted.applied()).extracting(rule -> rule.citation().verification())
                    .containsExactly(Verification.TEXT_READ, Verification.FROM_MEMORY);
            assertThat(tilted.basis()).contains("(3)(a) (text read); then tilted tube").endsWith("(from memory, not checked)");
            assertThat(tilted.verification()).isEqualTo(Verification.FROM_MEMORY);
        }

        /** Behind a tilted tube the full distance stands: that less might be allowed, from memory, is no part of it. */
        @Test
        void aReductionThatIsNotMadeDoesNotMarkTheNumber() {
            var behind = ask(TABLE, shell(150).tilted(10, SOUTH + 180));
            assertThat(behind.metres().orElseThrow()).isCloseTo(126, within(1e-9));
            assertThat(behind.basis()).contains("may be enough");
            assertThat(behind.verification()).isEqualTo(Verification.TEXT_READ);
        }

        @Test
        void chainsInUnprovedRacksAreDoubled() {
            assertThat(metres(TABLE, shell(75).with(Flag.CHAIN_IN_UNPROVED_RACK))).isCloseTo(126, within(1e-9));
        }

        @Test
        void beyondTheFamilyNoNumber() {
            assertThat(ask(TABLE, shell(406)).assessment().orElseThrow()).contains("the authority decides");
            assertThat(ask(TABLE, FiringCase.of(ArticleKind.ROCKET)).assessment()).contains("the 70 ft per inch rule has no rule for this rocket");
        }
    }

    /** Tokyo standard as quoted by hey.org/hanabi. */
    @Nested
    class Tokyo {

        @ParameterizedTest
        @CsvSource({"75, 100, 100, 40, 65, 25, 40", "90, 100, 140, 65, 100, 40, 60", "120, 110, 150, 75, 110, 45, 65",
                "150, 150, 210, 130, 180, 100, 130", "180, 220, 220, 190, 190, 130, 130", "240, 250, 250, 210, 210, 130, 130",
                "300, 290, 290, 240, 240, 150, 150", "450, 300, 300, 250, 250, 150, 150", "600, 400, 400, 300, 300, 200, 200"})
        void bySize(double calibreMm, double soft1, double hard1, double soft2, double hard2, double soft3, double hard3) {
            var hard = shell(calibreMm);
            var soft = hard.with(Flag.SOFT_BREAK);
            assertThat(metres("TokyoClass1", soft)).isEqualTo(soft1);
            assertThat(metres("TokyoClass1", hard)).isEqualTo(hard1);
            assertThat(metres("TokyoClass2", soft)).isEqualTo(soft2);
            assertThat(metres("TokyoClass2", hard)).isEqualTo(hard2);
            assertThat(metres("TokyoClass3", soft)).isEqualTo(soft3);
            assertThat(metres("TokyoClass3", hard)).isEqualTo(hard3);
        }

        @Test
        void betweenSizesTheNextRow() {
            assertThat(metres("TokyoClass1", shell(76))).isEqualTo(140);
            assertThat(metres("TokyoClass1", shell(100))).isEqualTo(150);
            assertThat(metres("TokyoClass1", shell(125))).isEqualTo(210);
        }

        @Test
        void stopInTenMetresASecond() {
            assertThat(metres("TokyoClass1", shell(75).inWind(0, 9.9))).isEqualTo(100);
            assertThat(ask("TokyoClass1", shell(75).inWind(0, 10)).assessment().orElseThrow()).contains("the display is stopped");
        }

        @Test
        void beyondTheTableNoNumber() {
            assertThat(ask("TokyoClass1", shell(610)).assessment())
                    .contains("the calibre of 610 mm is beyond the table");
            assertThat(ask("TokyoClass1", FiringCase.of(ArticleKind.FOUNTAIN)).assessmentNeeded()).isTrue();
        }
    }

    @Test
    void everyTableSaysWhereItIsFrom() {
        assertThat(ShippedTables.all()).extracting(DistanceTable::name)
                .containsExactly("UsTable", "GermanTable", "TokyoClass1", "TokyoClass2", "TokyoClass3");
        assertThat(ShippedTables.all()).allSatisfy(table -> {
            assertThat(table.document().document()).isNotBlank();
            assertThat(table.rules()).allSatisfy(rule -> assertThat(rule.citation().section()).isNotBlank());
            assertThat(table.modifiers()).allSatisfy(modifier -> assertThat(modifier.citation().section()).isNotBlank());
            assertThat(table.notes()).isNotEmpty();
        });
    }

    @ParameterizedTest
    @EnumSource(ArticleKind.class)
    void anArticleOfWhichNothingIsKnownNeverGetsLessThanOneOfWhichMuchIs(ArticleKind kind) {
        for (DistanceTable table : ShippedTables.all()) {
            Requirement nothing = table.evaluate(FiringCase.of(kind));
            Requirement known = table.evaluate(FiringCase.of(kind).with(CALIBRE, 0.1).with(HEIGHT, 80));
            if (nothing.metres().isPresent()) {
                assertThat(nothing.metres().getAsDouble()).isGreaterThanOrEqualTo(known.metres().orElseThrow());
            }
        }
    }
}
