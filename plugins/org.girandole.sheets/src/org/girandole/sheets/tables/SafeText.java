package org.girandole.sheets.tables;

import java.util.regex.Pattern;
import org.girandole.plan.table.Cell;

/**
 * Keeps words of a script from becoming formulas. A spreadsheet runs a cell that begins with one of {@code = + - @}, and takes a tab
 * or a line end in the middle of a text for the end of a cell. Numbers, also negative ones, are no formulas and stay as they are.
 */
final class SafeText {
    /** Signs that begin a formula, the full-width forms included: some spreadsheets narrow them. */
    private static final String SIGNS = "=+\\-@\\uFF1D\\uFF0B\\uFF0D\\uFF20";
    /** A formula at the beginning, or after a character that another spreadsheet may take for the border of a cell. */
    private static final Pattern FORMULA = Pattern.compile("(^|[;,|])([\\s\"']*)(?=[" + SIGNS + "])");
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\p{Digit}+([.,]\\p{Digit}+)?");
    private static final Pattern CONTROLS = Pattern.compile("[\\p{Cntrl}\\u2028\\u2029\\uFFFE\\uFFFF]");

    private SafeText() {
    }

    /** The text of a cell as it may stand in a file. */
    static String of(Cell cell) {
        return cell instanceof Cell.Text text ? of(text.text()) : cell.text();
    }

    /** Words as they may stand in a file: an apostrophe goes before what would run; control characters become spaces. */
    static String of(String text) {
        String line = CONTROLS.matcher(text).replaceAll(" ");
        return NUMBER.matcher(line).matches() ? line : FORMULA.matcher(line).replaceAll("$1$2'");
    }
}
