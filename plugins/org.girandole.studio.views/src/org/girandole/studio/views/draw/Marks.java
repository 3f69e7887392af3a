package org.girandole.studio.views.draw;

import org.girandole.studio.views.draw.Pen.Stroke;

/** Small signs: a shape for each kind of effect and for each severity, so that colour is never the only sign. */
public final class Marks {
    private static final int OPAQUE = 255;

    private Marks() {
    }

    /** The sign of a kind of effect about a middle. An unknown kind is a plain ring. */
    public static void effect(Pen pen, String kind, double x, double y, double r, int colour) {
        double thin = Math.max(1, r / 5);
        switch (kind) {
            case "shell" -> {
                for (int i = 0; i < 4; i++) {
                    double a = Math.PI * i / 4;
                    pen.line(x - Math.sin(a) * r, y + Math.cos(a) * r, x + Math.sin(a) * r, y - Math.cos(a) * r, colour, OPAQUE, thin, Stroke.SOLID);
                }
                pen.disc(x, y, r * 0.3, colour, OPAQUE);
            }
            case "salute" -> pen.area(star(x, y, r, r * 0.32, 4), colour, OPAQUE);
            case "mine" -> {
                for (int i = -2; i <= 2; i++) {
                    double a = Math.toRadians(i * 24);
                    pen.line(x, y + r, x + Math.sin(a) * r * 1.7, y + r - Math.cos(a) * r * 1.8, colour, OPAQUE, thin, Stroke.SOLID);
                }
            }
            case "comet" -> {
                pen.area(new double[] {x - r * 0.5, y - r * 0.3, x + r * 0.5, y - r * 0.3, x, y + r * 1.1}, colour, 150);
                pen.disc(x, y - r * 0.4, r * 0.55, colour, OPAQUE);
            }
            case "candle" -> {
                pen.rectangle(x - r * 0.3, y, r * 0.6, r, colour, OPAQUE);
                for (int i = 0; i < 3; i++) {
                    pen.disc(x, y - r * (0.3 + 0.4 * i), r * 0.17, colour, OPAQUE);
                }
            }
            case "cake" -> {
                pen.rectangle(x - r * 0.7, y + r * 0.3, r * 1.4, r * 0.7, colour, OPAQUE);
                for (int i = -1; i <= 1; i++) {
                    pen.line(x + i * r * 0.35, y + r * 0.2, x + i * r * 0.85, y - r * 0.9, colour, OPAQUE, thin, Stroke.SOLID);
                }
            }
            case "fountain" -> {
                pen.area(new double[] {x, y + r, x - r * 0.75, y - r * 0.8, x, y - r * 0.35, x + r * 0.75, y - r * 0.8}, colour, OPAQUE);
            }
            case "wheel" -> {
                pen.ring(x, y, r * 0.85, colour, OPAQUE, thin, Stroke.SOLID);
                rays(pen, x, y, 0, r * 0.85, 3, 15, colour, thin);
                rays(pen, x, y, 0, r * 0.85, 3, 195, colour, thin);
            }
            case "flare" -> pen.area(new double[] {x, y - r, x + r * 0.6, y, x, y + r, x - r * 0.6, y}, colour, OPAQUE);
            case "rocket" -> {
                pen.area(new double[] {x, y - r, x + r * 0.7, y + r * 0.1, x - r * 0.7, y + r * 0.1}, colour, OPAQUE);
                pen.line(x, y, x, y + r, colour, OPAQUE, thin, Stroke.SOLID);
            }
            default -> pen.ring(x, y, r * 0.8, colour, OPAQUE, thin, Stroke.SOLID);
        }
    }

    /** The sign of a finding: a filled triangle for an error, an open diamond for a warning, a small ring for the rest; struck through once waived. */
    public static void finding(Pen pen, String severity, boolean waived, double x, double y, double r, Palette palette) {
        int colour = colour(severity, palette);
        double thick = Math.max(1.2, r / 4);
        switch (severity) {
            case "error" -> {
                double[] triangle = {x, y - r, x + r, y + r * 0.8, x - r, y + r * 0.8};
                pen.area(triangle, waived ? palette.paper() : colour, OPAQUE);
                pen.outline(triangle, true, colour, OPAQUE, thick, Stroke.SOLID);
            }
            case "warning" -> {
                double[] diamond = {x, y - r, x + r, y, x, y + r, x - r, y};
                pen.area(diamond, palette.paper(), OPAQUE);
                pen.outline(diamond, true, colour, OPAQUE, thick, Stroke.SOLID);
            }
            default -> pen.ring(x, y, r * 0.7, colour, OPAQUE, thick, Stroke.SOLID);
        }
        if (waived) {
            pen.line(x - r, y + r, x + r, y - r, colour, OPAQUE, thick, Stroke.SOLID);
        }
    }

    /** Colour of a severity. */
    public static int colour(String severity, Palette palette) {
        return switch (severity) {
            case "error" -> palette.error();
            case "warning" -> palette.warning();
            default -> palette.info();
        };
    }

    /** Slanted lines over an area, so that it is told from others without colour. */
    public static void hatch(Pen pen, double x, double y, double width, double height, double gap, int colour, int alpha) {
        for (double start = x - height; start < x + width; start += gap) {
            double fromX = Math.max(x, start);
            double toX = Math.min(x + width, start + height);
            if (toX > fromX) {
                pen.line(fromX, y + height - (fromX - start), toX, y + height - (toX - start), colour, alpha, 1, Stroke.SOLID);
            }
        }
    }

    private static void rays(Pen pen, double x, double y, double from, double to, int count, double turnDeg, int colour, double thickness) {
        for (int i = 0; i < count; i++) {
            double a = Math.toRadians(turnDeg + i * 360.0 / count);
            pen.line(x + Math.sin(a) * from, y - Math.cos(a) * from, x + Math.sin(a) * to, y - Math.cos(a) * to, colour, OPAQUE, thickness,
                    Stroke.SOLID);
        }
    }

    private static double[] star(double x, double y, double outer, double inner, int points) {
        double[] xy = new double[points * 4];
        for (int i = 0; i < points * 2; i++) {
            double r = i % 2 == 0 ? outer : inner;
            double a = Math.PI * i / points;
            xy[2 * i] = x + Math.sin(a) * r;
            xy[2 * i + 1] = y - Math.cos(a) * r;
        }
        return xy;
    }
}
