package org.girandole.physics.separation;

import static org.girandole.physics.separation.ArticleKind.SALUTE;
import static org.girandole.physics.separation.ArticleKind.SHELL;
import static org.girandole.physics.separation.Condition.atLeast;
import static org.girandole.physics.separation.Condition.has;
import static org.girandole.physics.separation.Condition.isA;
import static org.girandole.physics.separation.Quantity.CALIBRE;
import static org.girandole.physics.separation.Quantity.TILT;
import static org.girandole.physics.separation.Quantity.WIND;

import java.util.List;

/** The Tokyo metropolitan standard for the use of fireworks, one table for each of its three grades of distance. */
final class TokyoTables {
    private static final Citation STANDARD = new Citation("Tokyo Metropolis, standard for the use of fireworks",
            "table of protective distances, as quoted by hey.org/hanabi", Verification.QUOTED);
    private static final Citation STOP = new Citation("Tokyo Metropolis, standard for the use of fireworks",
            "stopping a display, as quoted by hey.org/hanabi", Verification.QUOTED);

    /** Greatest calibre of each row in metres: sizes 2.5, 3, 4, 5, 6, 8, 10, 15, 20. */
    private static final double[] UP_TO_M = {0.075, 0.090, 0.120, 0.150, 0.180, 0.240, 0.300, 0.450, 0.600};
    private static final double[][] HARD_M = {
            {100, 140, 150, 210, 220, 250, 290, 300, 400},
            {65, 100, 110, 180, 190, 210, 240, 250, 300},
            {40, 60, 65, 130, 130, 130, 150, 150, 200}};
    /** From size 6 the table does not tell soft and hard break apart. */
    private static final double[][] SOFT_M = {
            {100, 100, 110, 150, 220, 250, 290, 300, 400},
            {40, 65, 75, 130, 190, 210, 240, 250, 300},
            {25, 40, 45, 100, 130, 130, 150, 150, 200}};

    static final List<DistanceTable> TABLES = List.of(table(0), table(1), table(2));

    private TokyoTables() {
    }

    private static DistanceTable table(int grade) {
        return new DistanceTable("TokyoClass" + (grade + 1), "the Tokyo standard, grade " + (grade + 1), STANDARD,
                DistanceTable.DEFAULT_SECTOR_DEG,
                List.of(
                        new BaseRule("soft", "soft-breaking shells by calibre", List.of(isA(SHELL), has(Flag.SOFT_BREAK)),
                                rows(SOFT_M[grade]), STANDARD),
                        new BaseRule("hard", "hard-breaking shells by calibre", List.of(isA(SHELL, SALUTE)),
                                rows(HARD_M[grade]), STANDARD)),
                List.of(new Modifier("tilted by 5 deg or more: no number", List.of(), List.of(atLeast(TILT, 5)), Where.EVERYWHERE,
                                new Change.NoNumber("the standard says nothing of tubes tilted by 5 deg or more; assess the case"), STANDARD),
                        new Modifier("wind of 10 m/s and more: the display is stopped", List.of(), List.of(atLeast(WIND, 10)),
                        Where.EVERYWHERE, new Change.NoNumber("in wind of 10 m/s and more the display is stopped"), STOP)),
                List.of("Grade 1 is for places with dense housing or many spectators, grade 2 for others; contents and manner of"
                                + " firing may relax a grade. Which grade applies is for the authority to say.",
                        "Sizes are the bore of the mortar: 7.5 cm for size 2.5, 30 cm for size 10.",
                        "The table says nothing of tilt and slopes, and has no ground pieces. Tilts below 5 deg are read as upright."));
    }

    private static Formula rows(double[] metres) {
        Formula.Row[] rows = new Formula.Row[metres.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = new Formula.Row(UP_TO_M[i], metres[i]);
        }
        return Formula.steps(CALIBRE, rows);
    }
}
