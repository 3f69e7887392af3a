package org.girandole.studio.views.swt;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Rectangle;
import org.girandole.studio.views.draw.Pen;

/** A pen on an SWT drawing surface. */
final class SwtPen implements Pen {
    private final GC gc;
    private final Fonts fonts;
    private final Map<Integer, Color> colours = new HashMap<>();
    private int foreground = -1;
    private int background = -1;
    private int alpha = -1;
    private int width = -1;
    private Stroke style;
    private Letters letters;

    SwtPen(GC gc, Fonts fonts) {
        this.gc = gc;
        this.fonts = fonts;
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int colour, int alpha) {
        fill(colour, alpha);
        int left = round(x);
        int top = round(y);
        gc.fillRectangle(left, top, Math.max(1, round(x + width) - left), Math.max(1, round(y + height) - top));
    }

    @Override
    public void frame(double x, double y, double width, double height, int colour, double thickness) {
        stroke(colour, 255, thickness, Stroke.SOLID);
        gc.drawRectangle(round(x), round(y), round(width), round(height));
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int colour, int alpha, double thickness, Stroke stroke) {
        stroke(colour, alpha, thickness, stroke);
        gc.drawLine(round(x1), round(y1), round(x2), round(y2));
    }

    @Override
    public void area(double[] xy, int colour, int alpha) {
        fill(colour, alpha);
        gc.fillPolygon(rounded(xy));
    }

    @Override
    public void outline(double[] xy, boolean closed, int colour, int alpha, double thickness, Stroke stroke) {
        stroke(colour, alpha, thickness, stroke);
        if (closed) {
            gc.drawPolygon(rounded(xy));
        } else {
            gc.drawPolyline(rounded(xy));
        }
    }

    @Override
    public void disc(double x, double y, double radius, int colour, int alpha) {
        fill(colour, alpha);
        int size = Math.max(2, round(radius * 2));
        gc.fillOval(round(x - radius), round(y - radius), size, size);
    }

    @Override
    public void ring(double x, double y, double radius, int colour, int alpha, double thickness, Stroke stroke) {
        stroke(colour, alpha, thickness, stroke);
        int size = Math.max(2, round(radius * 2));
        gc.drawOval(round(x - radius), round(y - radius), size, size);
    }

    @Override
    public void text(String text, double x, double y, Align align, Letters size, int colour) {
        if (text.isEmpty()) {
            return;
        }
        use(size);
        stroke(colour, 255, 1, Stroke.SOLID);
        double shift = align == Align.LEFT ? 0 : width(text, size) * (align == Align.RIGHT ? 1 : 0.5);
        gc.drawText(text, round(x - shift), round(y), SWT.DRAW_TRANSPARENT);
    }

    @Override
    public double width(String text, Letters size) {
        return fonts.width(gc, text, size, () -> use(size));
    }

    @Override
    public double height(Letters size) {
        return fonts.height(size);
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        gc.setClipping(round(x), round(y), round(width), round(height));
    }

    @Override
    public void unclip() {
        gc.setClipping((Rectangle) null);
    }

    private void use(Letters size) {
        if (letters != size) {
            Font font = fonts.font(size);
            gc.setFont(font);
            letters = size;
        }
    }

    private void fill(int colour, int opacity) {
        if (background != colour) {
            gc.setBackground(colour(colour));
            background = colour;
        }
        see(opacity);
    }

    private void stroke(int colour, int opacity, double thickness, Stroke stroke) {
        if (foreground != colour) {
            gc.setForeground(colour(colour));
            foreground = colour;
        }
        see(opacity);
        int wide = Math.max(1, round(thickness));
        if (wide != width) {
            gc.setLineWidth(wide);
            width = wide;
        }
        if (stroke != style) {
            gc.setLineStyle(switch (stroke) {
                case SOLID -> SWT.LINE_SOLID;
                case DASHED -> SWT.LINE_DASH;
                case DOTTED -> SWT.LINE_DOT;
            });
            style = stroke;
        }
    }

    private void see(int opacity) {
        if (opacity != alpha) {
            gc.setAlpha(opacity);
            alpha = opacity;
        }
    }

    private Color colour(int rgb) {
        return colours.computeIfAbsent(rgb, key -> new Color(key >> 16 & 0xFF, key >> 8 & 0xFF, key & 0xFF));
    }

    private static int round(double value) {
        return (int) Math.round(value);
    }

    private static int[] rounded(double[] xy) {
        int[] out = new int[xy.length];
        for (int i = 0; i < xy.length; i++) {
            out[i] = round(xy[i]);
        }
        return out;
    }
}
