package org.girandole.studio.views.site;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.draw.Marks;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;

/** Draws the site from above. */
public final class SitePainter {
    private static final int OPAQUE = 255;
    private static final double LEAST_SQUARE_PX = 2.5;

    private final Pen pen;
    private final Palette palette;
    private final SiteState state;
    private final SiteView site;
    private final Ground ground;
    private final double unit;

    public SitePainter(Pen pen, Palette palette, SiteState state) {
        this.pen = pen;
        this.palette = palette;
        this.state = state;
        this.site = state.site();
        this.ground = state.ground();
        this.unit = pen.height(Letters.NORMAL);
    }

    public void paint() {
        pen.rectangle(0, 0, ground.width(), ground.height(), palette.paper(), OPAQUE);
        if (site.nothing() != null) {
            pen.middle(site.nothing(), ground.width(), ground.height(), palette.faint());
            return;
        }
        boundary();
        envelope("debris", Stroke.DOTTED);
        envelope("unburst", Stroke.SOLID);
        site.fallout().forEach(this::fallout);
        site.protectedPlaces().forEach(this::protectedPlace);
        site.audience().forEach(this::audience);
        site.positions().forEach(this::asked);
        double half = half();
        site.positions().forEach(position -> square(position, half));
        corner(half);
        new DialPainter(pen, palette, state).paint();
        foot();
    }

    private void boundary() {
        if (site.boundary() == null) {
            return;
        }
        double[] xy = ground.xy(site.boundary().points());
        pen.area(xy, palette.band(), OPAQUE);
        pen.outline(xy, true, palette.ink(), OPAQUE, Math.max(2, unit / 8), Stroke.SOLID);
    }

    /** What comes down: whole lines for shells that do not burst, dots for debris; those of the selected position. */
    private void fallout(SiteView.Fallout area) {
        boolean chosen = state.selected().map(SiteView.Position::name).filter(area.position()::equals).isPresent();
        if (chosen) {
            pen.outline(ground.xy(area.outline()), true, palette.danger(), OPAQUE, 1, area.kind().equals("debris") ? Stroke.DOTTED : Stroke.SOLID);
        }
    }

    /** One line about all areas of a kind; it encloses more ground than they do, never less. */
    private void envelope(String kind, Stroke stroke) {
        List<Spot> hull = Hull.of(site.fallout().stream().filter(area -> area.kind().equals(kind)).flatMap(area -> area.outline().stream()).toList());
        if (hull.size() > 2) {
            double[] xy = ground.xy(hull);
            pen.area(xy, palette.danger(), 36);
            pen.outline(xy, true, palette.danger(), OPAQUE, Math.max(2, unit / 9), stroke);
        }
    }

    private void protectedPlace(SiteView.Outline place) {
        if (place.radiusM() != null) {
            double x = ground.px(place.points().get(0).x());
            double y = ground.py(place.points().get(0).y());
            double r = place.radiusM() * ground.pxPerM();
            pen.disc(x, y, r, palette.hold(), 50);
            pen.ring(x, y, r, palette.hold(), OPAQUE, 2, Stroke.SOLID);
            double half = r * 0.7;
            Marks.hatch(pen, x - half, y - half, half * 2, half * 2, unit * 0.6, palette.hold(), 150);
        } else {
            pen.area(ground.xy(place.points()), palette.hold(), 60);
            pen.outline(ground.xy(place.points()), true, palette.hold(), OPAQUE, 2, Stroke.SOLID);
        }
    }

    private void audience(SiteView.Outline line) {
        double[] xy = ground.xy(line.points());
        pen.outline(xy, false, palette.info(), OPAQUE, Math.max(4, unit / 3), Stroke.SOLID);
        Spot middle = line.points().get(line.points().size() / 2);
    }

    /** The largest distance that is asked towards an audience line, as a circle. */
    private void asked(SiteView.Position position) {
        boolean chosen = state.selected().map(SiteView.Position::name).filter(position.name()::equals).isPresent();
        most(position).filter(line -> line.askedM() != null).ifPresent(line -> {
            double r = line.askedM() * ground.pxPerM();
            int colour = line.met() ? palette.ink() : palette.error();
            pen.ring(ground.px(position.at().x()), ground.py(position.at().y()), r, colour, chosen || !line.met() ? OPAQUE : 70,
                    chosen || !line.met() ? 2 : 1, line.estimated() ? Stroke.DOTTED : Stroke.DASHED);
        });
    }

    private Optional<SiteView.Distance> most(SiteView.Position position) {
        return site.distances().stream().filter(line -> line.audience() && line.position().equals(position.name()))
                .max(Comparator.comparingDouble(line -> line.askedM() == null ? Double.MAX_VALUE : line.askedM()));
    }

    /** Where positions lie close, their squares are smaller. */
    private double half() {
        double nearest = Double.MAX_VALUE;
        for (SiteView.Position one : site.positions()) {
            for (SiteView.Position other : site.positions()) {
                if (one != other) {
                    nearest = Math.min(nearest, Math.hypot(one.at().x() - other.at().x(), one.at().y() - other.at().y()) * ground.pxPerM());
                }
            }
        }
        return Math.max(LEAST_SQUARE_PX, Math.min(unit * 0.32, nearest * 0.35));
    }

    private void square(SiteView.Position position, double r) {
        double x = ground.px(position.at().x());
        double y = ground.py(position.at().y());
        boolean chosen = state.selected().filter(position::equals).isPresent();
        pen.rectangle(x - r, y - r, r * 2, r * 2, chosen ? palette.accent() : palette.ink(), OPAQUE);
        if (chosen) {
            pen.ring(x, y, r * 2.4, palette.accent(), OPAQUE, 2, Stroke.SOLID);
        }
        if (!position.state().equals("clean")) {
            Marks.finding(pen, position.state().equals("unchecked") ? "warning" : "error", position.state().equals("waived"), x + r * 2.6, y - r * 1.6,
                    Math.max(unit * 0.2, r * 1.1), palette);
        }
    }

    /** The words in the corner, on a ground of their own, and the names on the plan, which keep clear of them. */
    private void corner(double half) {
        SiteLayout layout = state.layout();
        List<SiteWords.Line> lines = new SiteWords(pen, state).corner(layout.words(), layout.high(), layout.fold());
        double width = lines.stream().mapToDouble(line -> pen.width(line.text(), line.letters())).max().orElse(0) + unit;
        double height = SiteLayout.line(pen) * lines.size() + unit * 0.8;
        Box box = new Box(unit * 0.4, unit * 0.4, unit * 0.4 + width, unit * 0.4 + height);
        new NamePainter(pen, palette, state).paint(half, box);
        pen.rectangle(box.left(), box.top(), width, height, palette.paper(), 225);
        pen.frame(box.left(), box.top(), width, height, palette.grid(), 1);
        write(lines, box.left() + unit * 0.5, box.top() + unit * 0.4);
    }

    private void write(List<SiteWords.Line> lines, double x, double top) {
        double y = top;
        for (SiteWords.Line line : lines) {
            pen.text(line.text(), x, y, Align.LEFT, line.letters(), line.bad() ? palette.error() : palette.ink());
            y += SiteLayout.line(pen);
        }
    }

    private void foot() {
        double top = state.layout().foot();
        pen.rectangle(0, top, ground.width(), ground.height() - top, palette.paper(), OPAQUE);
        pen.line(0, top, ground.width(), top, palette.grid(), OPAQUE, 1, Stroke.SOLID);
        write(new SiteWords(pen, state).foot(ground.width() - unit), unit * 0.5, top + unit * 0.25);
    }

    /** All of the view in a sentence, for those who hear it. */
    public static String description(SiteState state) {
        return SiteWords.description(state);
    }
}
