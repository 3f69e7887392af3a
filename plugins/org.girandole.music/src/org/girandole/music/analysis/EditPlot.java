package org.girandole.music.analysis;

import java.util.Locale;

/** Draws an {@link EditMap} as SVG: the old track along the top, the new one below, bands between what both have. */
public final class EditPlot {
    private static final double WIDTH = 1000;
    private static final double MARGIN = 20;
    private static final double TOP = 50;
    private static final double BOTTOM = 210;
    private static final double BAR = 24;

    private final EditMap map;
    private final double scale;
    private final StringBuilder out = new StringBuilder();

    private EditPlot(EditMap map) {
        this.map = map;
        this.scale = (WIDTH - 2 * MARGIN) / Math.max(1, Math.max(map.oldLengthUs(), map.newLengthUs()));
    }

    /** A whole SVG document, readable in black and white. */
    public static String svg(EditMap map) {
        return new EditPlot(map).draw();
    }

    private String draw() {
        line("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1000 270\" font-family=\"sans-serif\" font-size=\"13\">");
        line("<defs><pattern id=\"gone\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
                + "<rect width=\"2.5\" height=\"6\" fill=\"#444\"/></pattern></defs>");
        track("old edit", TOP - BAR, map.oldLengthUs());
        track("new edit", BOTTOM, map.newLengthUs());
        for (EditMap.Stretch s : map.stretches()) {
            line(format("<polygon points=\"%.2f,%.2f %.2f,%.2f %.2f,%.2f %.2f,%.2f\" fill=\"#ccd6e0\" stroke=\"#567\"/>",
                    x(s.oldStartUs()), TOP, x(s.oldEndUs()), TOP, x(s.newEndUs()), BOTTOM, x(s.newStartUs()), BOTTOM));
        }
        for (EditMap.Change c : map.changes()) {
            hatched(c.oldStartUs(), c.oldEndUs(), TOP - BAR);
            hatched(c.newStartUs(), c.newEndUs(), BOTTOM);
        }
        line("</svg>");
        return out.toString();
    }

    private void track(String name, double y, long lengthUs) {
        line(format("<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"#fff\" stroke=\"#000\"/>", x(0), y,
                lengthUs * scale, BAR));
        double textY = y < TOP ? y - 6 : y + BAR + 16;
        line(format("<text x=\"%.2f\" y=\"%.2f\">%s, %d:%06.3f</text>", x(0), textY, name, lengthUs / 60_000_000,
                lengthUs % 60_000_000 / 1e6));
    }

    private void hatched(long fromUs, long toUs, double y) {
        if (toUs > fromUs) {
            line(format("<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"url(#gone)\" stroke=\"#000\"/>", x(fromUs),
                    y, (toUs - fromUs) * scale, BAR));
        }
    }

    private double x(long us) {
        return MARGIN + us * scale;
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    private void line(String text) {
        out.append(text).append('\n');
    }
}
