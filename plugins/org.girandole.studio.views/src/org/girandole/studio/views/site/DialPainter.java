package org.girandole.studio.views.site;

import org.girandole.protocol.WindView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;

/** Draws the dial on which the wind is dragged, and says the wind. */
final class DialPainter {
    private static final int OPAQUE = 255;

    private final Pen pen;
    private final Palette palette;
    private final SiteState state;
    private final double unit;

    DialPainter(Pen pen, Palette palette, SiteState state) {
        this.pen = pen;
        this.palette = palette;
        this.state = state;
        this.unit = pen.height(Letters.NORMAL);
    }

    void paint() {
        Rose rose = state.rose();
        WindView wind = state.wind();
        double r = rose.radius();
        pen.disc(rose.x(), rose.y(), r * 1.2, palette.paper(), 225);
        pen.ring(rose.x(), rose.y(), r, palette.ink(), OPAQUE, 1, Stroke.SOLID);
        pen.ring(rose.x(), rose.y(), r / 2, palette.grid(), OPAQUE, 1, Stroke.SOLID);
        for (int deg = 0; deg < 360; deg += 30) {
            double a = Math.toRadians(deg);
            double inner = deg % 90 == 0 ? 0.86 : 0.93;
            pen.line(rose.x() + Math.sin(a) * r * inner, rose.y() - Math.cos(a) * r * inner, rose.x() + Math.sin(a) * r, rose.y() - Math.cos(a) * r,
                    palette.ink(), OPAQUE, 1, Stroke.SOLID);
        }
        if (!state.layout().brief()) {
            pen.text("0\u00b0", rose.x(), rose.y() - r - unit * 1.05, Align.CENTRE, Letters.SMALL, palette.faint());
        }
        double kx = rose.knobX(wind);
        double ky = rose.knobY(wind);
        int colour = state.trying() ? palette.accent() : palette.ink();
        arrow(kx, ky, rose.x() - (kx - rose.x()) * 0.6, rose.y() - (ky - rose.y()) * 0.6, colour);
        pen.disc(kx, ky, unit * 0.45, colour, OPAQUE);
        pen.ring(kx, ky, unit * 0.45, palette.paper(), OPAQUE, 1, Stroke.SOLID);
        words(rose.y() + r + unit * 0.4);
    }

    private void words(double top) {
        double right = state.ground().width() - unit * 0.3;
        double y = top;
        for (SiteWords.Wind line : new SiteWords(pen, state).wind(state.layout().brief())) {
            double width = pen.width(line.text(), Letters.SMALL);
            // In a column of its own it stands under the dial.
            double left = Math.min(right - width, state.small() ? state.rose().x() - width / 2 : right);
            pen.rectangle(left - unit * 0.2, y, width + unit * 0.4, unit, palette.paper(), 215);
            pen.text(line.text(), left, y, Align.LEFT, Letters.SMALL, switch (line.kind()) {
                case WIND -> palette.ink();
                case SCRIPT -> palette.faint();
                case TRIED -> palette.accent();
                case MISSING -> palette.warning();
            });
            y += unit;
        }
    }

    private void arrow(double x1, double y1, double x2, double y2, int colour) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        if (length < 2) {
            return;
        }
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        double h = unit * 0.5;
        pen.line(x1, y1, x2 - ux * h, y2 - uy * h, colour, OPAQUE, Math.max(2, unit / 7), Stroke.SOLID);
        pen.area(new double[] {x2, y2, x2 - ux * h * 1.4 - uy * h * 0.7, y2 - uy * h * 1.4 + ux * h * 0.7, x2 - ux * h * 1.4 + uy * h * 0.7,
            y2 - uy * h * 1.4 - ux * h * 0.7}, colour, OPAQUE);
    }
}
