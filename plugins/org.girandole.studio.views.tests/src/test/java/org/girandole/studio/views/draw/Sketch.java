package org.girandole.studio.views.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A pen that writes down what it is told, with letters as wide as half their height. */
public final class Sketch implements Pen {
    private static final double UNIT = 16;

    private final double scale;
    private final List<String> strokes = new ArrayList<>();
    private final List<Text> texts = new ArrayList<>();

    /** A text as drawn. */
    public record Text(String text, double left, double top, double right, double bottom) {
        public boolean overlaps(Text other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    public Sketch(double scale) {
        this.scale = scale;
    }

    /** Everything but texts, one line each, without colours. */
    public List<String> strokes() {
        return strokes;
    }

    public List<Text> texts() {
        return texts;
    }

    private void note(String what, double... numbers) {
        StringBuilder out = new StringBuilder(what);
        Arrays.stream(numbers).forEach(number -> out.append(String.format(Locale.ROOT, " %.2f", number)));
        strokes.add(out.toString());
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int colour, int alpha) {
        note("rectangle", x, y, width, height);
    }

    @Override
    public void frame(double x, double y, double width, double height, int colour, double thickness) {
        note("frame", x, y, width, height);
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int colour, int alpha, double thickness, Stroke stroke) {
        note("line " + stroke, x1, y1, x2, y2);
    }

    @Override
    public void area(double[] xy, int colour, int alpha) {
        note("area", xy);
    }

    @Override
    public void outline(double[] xy, boolean closed, int colour, int alpha, double thickness, Stroke stroke) {
        note("outline " + stroke, xy);
    }

    @Override
    public void disc(double x, double y, double radius, int colour, int alpha) {
        note("disc", x, y, radius);
    }

    @Override
    public void ring(double x, double y, double radius, int colour, int alpha, double thickness, Stroke stroke) {
        note("ring " + stroke, x, y, radius);
    }

    @Override
    public void text(String text, double x, double y, Align align, Letters letters, int colour) {
        double width = width(text, letters);
        double left = x - (align == Align.LEFT ? 0 : align == Align.RIGHT ? width : width / 2);
        if (!text.isEmpty()) {
            texts.add(new Text(text, left, y, left + width, y + height(letters)));
        }
    }

    @Override
    public double width(String text, Letters letters) {
        return text.length() * height(letters) / 2;
    }

    @Override
    public double height(Letters letters) {
        return UNIT * scale * (letters == Letters.SMALL ? 0.9 : letters == Letters.LARGE ? 1.3 : 1);
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        note("clip", x, y, width, height);
    }

    @Override
    public void unclip() {
        note("unclip");
    }
}
