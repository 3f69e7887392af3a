package org.girandole.studio.views.draw;

/**
 * Colours of one theme. Text and signs stand out from the paper by at least 4.5 to 1 (WCAG 2.1, success criterion 1.4.3); a test holds
 * that.
 *
 * @param paper ground of everything
 * @param band every other lane, headers
 * @param ink text and outlines
 * @param faint less important text
 * @param grid lines that only guide the eye
 * @param accent playhead and selection
 * @param error graver findings
 * @param warning lesser ones
 * @param info least ones
 * @param hold times in which nothing may fire
 * @param wave the waveform
 * @param sky ground of the sky
 * @param earth ground of the land below it
 * @param danger where things come down
 */
public record Palette(boolean dark, int paper, int band, int ink, int faint, int grid, int accent, int error, int warning, int info, int hold,
        int wave, int sky, int earth, int danger) {
    /** Dark letters on light paper. */
    public static final Palette LIGHT = new Palette(false, 0xFCFBF8, 0xF1EFE9, 0x23262D, 0x5F646E, 0xD8D4CA, 0x0A6661, 0xA61B1B, 0x855000,
            0x27548F, 0x5D4391, 0x7E97AB, 0xEEF1F5, 0xD9D5C9, 0x9C4A00);
    /** Light letters on dark paper. */
    public static final Palette DARK = new Palette(true, 0x15171C, 0x1D2028, 0xE9E6DF, 0x9BA2AF, 0x333946, 0x55D6C9, 0xFF8F85, 0xFFC56E,
            0x93C5FF, 0xC0ABEE, 0x55708A, 0x090C16, 0x1B1E22, 0xFFA45C);

    private static final double DARKEST = 0.05;

    public static Palette of(boolean dark) {
        return dark ? DARK : LIGHT;
    }

    /** Contrast of two colours, 1 to 21, as WCAG 2.1 defines contrast ratio and relative luminance. */
    public static double contrast(int a, int b) {
        double one = luminance(a) + DARKEST;
        double other = luminance(b) + DARKEST;
        return Math.max(one, other) / Math.min(one, other);
    }

    private static double luminance(int colour) {
        return 0.2126 * linear(colour >> 16 & 0xFF) + 0.7152 * linear(colour >> 8 & 0xFF) + 0.0722 * linear(colour & 0xFF);
    }

    private static double linear(int value) {
        double share = value / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
