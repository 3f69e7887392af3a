package org.girandole.studio.views.draw;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws on something: a canvas, an image, a list that a test reads. Coordinates grow to the right and down. Colours are 0xRRGGBB, alpha 0
 * to 255.
 */
public interface Pen {
    /** How a line is drawn. */
    enum Stroke {
        SOLID, DASHED, DOTTED
    }

    /** Sizes of text. */
    enum Letters {
        SMALL, NORMAL, BOLD, LARGE
    }

    /** Where a text lies from its point: its left end, middle or right end. */
    enum Align {
        LEFT, CENTRE, RIGHT
    }

    void rectangle(double x, double y, double width, double height, int colour, int alpha);

    void frame(double x, double y, double width, double height, int colour, double thickness);

    void line(double x1, double y1, double x2, double y2, int colour, int alpha, double thickness, Stroke stroke);

    /** @param xy x and y of one point after the other */
    void area(double[] xy, int colour, int alpha);

    /** @param xy x and y of one point after the other */
    void outline(double[] xy, boolean closed, int colour, int alpha, double thickness, Stroke stroke);

    void disc(double x, double y, double radius, int colour, int alpha);

    void ring(double x, double y, double radius, int colour, int alpha, double thickness, Stroke stroke);

    /** @param y of the top of the letters */
    void text(String text, double x, double y, Align align, Letters letters, int colour);

    double width(String text, Letters letters);

    double height(Letters letters);

    /** Until {@link #unclip} nothing is drawn outside of this. */
    void clip(double x, double y, double width, double height);

    void unclip();

    /** The longest beginning of a text that fits, with an ellipsis if it was cut; empty if not even that fits. */
    default String fitted(String text, double room, Letters letters) {
        if (width(text, letters) <= room) {
            return text;
        }
        for (int length = text.length() - 1; length > 1; length--) {
            String cut = text.substring(0, length).stripTrailing() + "\u2026";
            if (width(cut, letters) <= room) {
                return cut;
            }
        }
        return "";
    }

    /** A sentence in the middle of an empty drawing, in as many lines as it needs. */
    default void middle(String sentence, double width, double height, int colour) {
        double line = height(Letters.NORMAL);
        List<String> lines = wrapped(sentence, width - line, Letters.NORMAL);
        for (int i = 0; i < lines.size(); i++) {
            text(lines.get(i), width / 2, (height - line * lines.size()) / 2 + line * i, Align.CENTRE, Letters.NORMAL, colour);
        }
    }

    /** A text in as many lines as it takes, broken between words; what is too long for a line alone is cut. */
    default List<String> wrapped(String text, double room, Letters letters) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && width(longer, letters) > room) {
                lines.add(fitted(line, room, letters));
                longer = word;
            }
            line = longer;
        }
        lines.add(fitted(line, room, letters));
        return lines;
    }
}
