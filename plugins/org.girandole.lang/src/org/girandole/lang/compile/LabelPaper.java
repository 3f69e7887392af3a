package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalInt;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.LabelsField;
import org.girandole.lang.show.Quantity;
import org.girandole.plan.script.LabelGrid;

/** The line of a release that describes label paper. */
final class LabelPaper {
    private static final int MOST_ACROSS = 10;
    private static final int MOST_DOWN = 30;
    /** What rounding may add when labels fill the paper exactly. */
    private static final double ROUNDING_M = 1e-6;

    /** The papers of a release. */
    private enum Paper {
        /** ISO 216. */
        A4(0.210, 0.297),
        /** 8.5 in by 11 in. */
        LETTER(0.2159, 0.2794);

        private final double widthM;
        private final double heightM;

        Paper(double widthM, double heightM) {
            this.widthM = widthM;
            this.heightM = heightM;
        }
    }

    private final Compilation compilation;
    private final String paperName;
    private final Paper paper;

    LabelPaper(Compilation compilation, String paperName) {
        this.compilation = compilation;
        this.paperName = paperName;
        this.paper = paperName.equals("Letter") ? Paper.LETTER : Paper.A4;
    }

    /** The grid, in the middle of the paper when no margin is written; empty when any part of it is wrong. */
    Optional<LabelGrid> grid(LabelsField field) {
        OptionalInt across = compilation.quantities().whole(field, eINSTANCE.getLabelsField_Across(), field.getAcross(), "a number of labels", 1,
                MOST_ACROSS);
        OptionalInt down = compilation.quantities().whole(field, eINSTANCE.getLabelsField_Down(), field.getDown(), "a number of labels", 1,
                MOST_DOWN);
        Optional<Double> width = compilation.quantities().si(field.getWidth(), Range.LABEL_WIDTH);
        Optional<Double> height = compilation.quantities().si(field.getHeight(), Range.LABEL_HEIGHT);
        Optional<Double> gapAcross = orNone(field.getGapAcross(), Range.LABEL_GAP);
        Optional<Double> gapDown = orNone(field.getGapDown(), Range.LABEL_GAP);
        if (across.isEmpty() || down.isEmpty() || width.isEmpty() || height.isEmpty() || gapAcross.isEmpty() || gapDown.isEmpty()) {
            return Optional.empty();
        }
        double wideM = LabelGrid.total(across.getAsInt(), width.get(), gapAcross.get());
        double highM = LabelGrid.total(down.getAsInt(), height.get(), gapDown.get());
        Optional<Double> left = margin(field.getLeft(), paper.widthM - wideM);
        Optional<Double> top = margin(field.getTop(), paper.heightM - highM);
        if (left.isEmpty() || top.isEmpty() || !fits(field, left.get() + wideM, paper.widthM, "across")
                || !fits(field, top.get() + highM, paper.heightM, "down")) {
            return Optional.empty();
        }
        return Optional.of(new LabelGrid(across.getAsInt(), down.getAsInt(), width.get(), height.get(), left.get(), top.get(),
                gapAcross.get(), gapDown.get()));
    }

    private Optional<Double> orNone(Quantity written, Range range) {
        return written == null ? Optional.of(0.0) : compilation.quantities().si(written, range);
    }

    private Optional<Double> margin(Quantity written, double restM) {
        return written == null ? Optional.of(Math.max(0, restM / 2)) : compilation.quantities().si(written, Range.LABEL_MARGIN);
    }

    private boolean fits(LabelsField field, double reachM, double sideM, String way) {
        if (reachM <= sideM + ROUNDING_M) {
            return true;
        }
        compilation.problems().report(LanguageRules.NUMBER_RANGE, "These labels do not fit on " + paperName + " paper: " + way + " they reach "
                + millimetres(reachM)).found(millimetres(reachM), "at most " + millimetres(sideM))
                .remedy("measure the label paper, or write fewer labels").at(compilation.sources().whole(field));
        return false;
    }

    private static String millimetres(double m) {
        return BigDecimal.valueOf(m * 1000).setScale(1, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString() + " mm";
    }
}
