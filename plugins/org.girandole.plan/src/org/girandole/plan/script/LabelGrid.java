package org.girandole.plan.script;

/**
 * Labels on a sheet of label paper, in rows and columns; metres.
 *
 * @param across labels side by side
 * @param down labels one under the other
 * @param widthM width of one label
 * @param heightM height of one label
 * @param leftM left edge of the paper to the first label
 * @param topM top edge of the paper to the first label
 * @param gapAcrossM from one label to the next beside it
 * @param gapDownM from one label to the next below it
 */
public record LabelGrid(int across, int down, double widthM, double heightM, double leftM, double topM, double gapAcrossM,
        double gapDownM) {

    /** From the left edge of the first label to the right edge of the last. */
    public double totalWidthM() {
        return total(across, widthM, gapAcrossM);
    }

    /** From the top edge of the first label to the bottom edge of the last. */
    public double totalHeightM() {
        return total(down, heightM, gapDownM);
    }

    /** How long so many labels are with the gaps between them. */
    public static double total(int labels, double sideM, double gapM) {
        return labels * sideM + (labels - 1) * gapM;
    }
}
