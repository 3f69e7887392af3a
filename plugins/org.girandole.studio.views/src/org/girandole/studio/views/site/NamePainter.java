package org.girandole.studio.views.site;

import java.util.List;
import java.util.Optional;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;

/** Draws the names on the plan of the site, and its scale. */
final class NamePainter {
    private static final int OPAQUE = 255;
    private static final double[] BARS_M = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

    private final Pen pen;
    private final Palette palette;
    private final SiteState state;
    private final SiteView site;
    private final Ground ground;
    private final double unit;
    private final Labels labels;

    NamePainter(Pen pen, Palette palette, SiteState state) {
        this.pen = pen;
        this.palette = palette;
        this.state = state;
        this.site = state.site();
        this.ground = state.ground();
        this.unit = pen.height(Letters.NORMAL);
        this.labels = new Labels(new Box(0, 0, ground.width(), state.layout().foot()));
    }

    /** All names on the plan, and its scale. What would lie on another gives way; the name of the selected position never does. */
    void paint(double half, Box words) {
        labels.take(state.layout().dial());
        labels.take(words);
        site.positions().forEach(position -> labels.take(Labels.about(ground.px(position.at().x()), ground.py(position.at().y()), half)));
        site.audience().forEach(line -> labels.avoid(ground.xy(line.points()), false, unit / 3));
        site.protectedPlaces().forEach(place -> labels.avoid(around(place)));
        if (site.boundary() != null) {
            labels.avoid(ground.xy(site.boundary().points()), true, unit / 4);
        }
        scale();
        state.selected().ifPresent(position -> name(position, half, true));
        site.positions().stream().filter(position -> state.selected().filter(position::equals).isEmpty()).forEach(position -> name(position, half, false));
        site.audience().forEach(line -> labels.take(ground.xy(line.points()), false, unit / 3));
        site.protectedPlaces().forEach(place -> labels.take(around(place)));
        site.audience().forEach(line -> plate("audience: ", line, true, palette.info()));
        site.protectedPlaces().forEach(place -> plate("protected: ", place, false, palette.hold()));
        if (site.boundary() != null) {
            inside(around(site.boundary()), pen.width("boundary", Letters.SMALL))
                    .ifPresent(at -> pen.text("boundary", at.left(), at.top(), Align.LEFT, Letters.SMALL, palette.ink()));
        }
    }

    private void name(SiteView.Position position, double half, boolean selected) {
        double width = pen.width(position.name(), Letters.BOLD) + 2;
        Box at = new Box(0, 0, width, unit).movedTo(ground.px(position.at().x()) - width / 2, ground.py(position.at().y()) + half * 1.5);
        if (selected) {
            labels.take(at);
        }
        if (selected || labels.take(List.of(at)).isPresent()) {
            pen.text(position.name(), at.centreX(), at.top(), Align.CENTRE, Letters.BOLD, palette.ink());
        }
    }

    private Box around(SiteView.Outline outline) {
        double r = (outline.radiusM() == null ? 0 : outline.radiusM()) * ground.pxPerM();
        double[] xy = ground.xy(outline.points());
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int i = 0; i < xy.length; i++) {
            box[i % 2] = Math.min(box[i % 2], xy[i] - r);
            box[2 + i % 2] = Math.max(box[2 + i % 2], xy[i] + r);
        }
        return new Box(box[0], box[1], box[2], box[3]);
    }

    /** A name above or below a thing, or beside it, whole or short, as there is room. */
    private void plate(String kind, SiteView.Outline outline, boolean above, int colour) {
        Box thing = around(outline);
        for (boolean clear : new boolean[] {true, false}) {
            for (String text : new String[] {kind + outline.name(), outline.name()}) {
                Box plate = new Box(0, 0, pen.width(text, Letters.SMALL) + unit * 0.5, unit * 1.05);
                List<Box> places = places(plate, thing, above);
                Optional<Box> free = clear ? labels.takeClear(places) : labels.take(places);
                if (free.isPresent()) {
                    pen.rectangle(free.get().left(), free.get().top(), plate.width(), plate.height(), palette.paper(), 215);
                    pen.text(text, free.get().left() + unit * 0.25, free.get().top(), Align.LEFT, Letters.SMALL, colour);
                    return;
                }
            }
        }
    }

    private List<Box> places(Box plate, Box thing, boolean above) {
        double gap = unit * 0.3;
        double middle = thing.centreX() - plate.width() / 2;
        double inView = Math.max(1, Math.min(middle, ground.width() - plate.width() - 1));
        double beside = (thing.top() + thing.bottom() - plate.height()) / 2;
        double over = thing.top() - gap - plate.height();
        double under = thing.bottom() + gap;
        return List.of(plate.movedTo(middle, above ? over : under), plate.movedTo(middle, above ? under : over), plate.movedTo(inView, above ? over : under),
                plate.movedTo(thing.left() - gap - plate.width(), beside), plate.movedTo(thing.right() + gap, beside));
    }

    private Optional<Box> inside(Box area, double width) {
        double left = area.left() + unit * 0.5;
        double right = area.right() - unit * 0.5 - width;
        double top = area.top() + unit * 0.3;
        double bottom = area.bottom() - unit * 1.2;
        Box box = new Box(0, 0, width, unit);
        return labels.take(List.of(box.movedTo(right, bottom), box.movedTo(left, bottom), box.movedTo(right, top), box.movedTo(left, top)));
    }

    private void scale() {
        double wanted = Math.min(unit * 8, ground.width() / 6) / ground.pxPerM();
        double bar = BARS_M[0];
        for (double each : BARS_M) {
            if (each <= wanted) {
                bar = each;
            }
        }
        double length = bar * ground.pxPerM();
        String words = SiteWords.metres(bar);
        Box box = new Box(0, 0, Math.max(length, pen.width(words, Letters.SMALL) + unit * 0.3) + unit * 0.8, unit * 1.9);
        double left = unit * 0.6;
        double right = ground.width() - unit * 0.6 - box.width();
        double bottom = state.layout().foot() - unit * 0.3 - box.height();
        Box first = box.movedTo(left, bottom);
        Optional<Box> clear = labels.takeClear(List.of(first, box.movedTo(right, bottom), box.movedTo(left, state.layout().plan().top() + unit * 0.3)));
        if (clear.isEmpty() && state.layout().brief()) {
            return;
        }
        Box at = clear.orElse(first);
        labels.take(at);
        double x = at.left() + unit * 0.4;
        double y = at.top() + unit * 1.3;
        pen.rectangle(at.left(), at.top(), at.width(), at.height(), palette.paper(), 215);
        pen.line(x, y, x + length, y, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.line(x, y - unit * 0.3, x, y + unit * 0.3, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.line(x + length, y - unit * 0.3, x + length, y + unit * 0.3, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.text(words, x + unit * 0.3, at.top() + unit * 0.1, Align.LEFT, Letters.SMALL, palette.ink());
    }
}
