package org.girandole.studio.views.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.draw.Marks;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;

/** Draws the site from above. */
public final class SitePainter {
    private static final int OPAQUE = 255;
    private static final double[] BARS_M = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
    private static final int MOST_LINES = 9;
    /** Lines of letters in the height of the view for each line of words in the corner. */
    private static final double LINES_TO_WORDS = 4;
    /** Lines of words in the corner while they are folded. */
    private static final int FOLDED_LINES = 3;
    private static final double LEAST_SQUARE_PX = 2.5;

    private static final String KEY = "Solid: inside it 99 of 100 unburst shells of each kind come down. Dotted: 99 of 100 pieces of debris. "
            + "Dashed circle: distance asked.";
    private static final String SHORT_KEY = "Inside: 99 of 100 unburst shells (solid), pieces of debris (dotted). Dashed circle: distance asked.";

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
        positions();
        legend();
        rose();
        scale();
        foot();
    }

    private void boundary() {
        if (site.boundary() == null) {
            return;
        }
        double[] xy = ground.xy(site.boundary().points());
        pen.area(xy, palette.band(), OPAQUE);
        pen.outline(xy, true, palette.ink(), OPAQUE, Math.max(2, unit / 8), Stroke.SOLID);
        // The other corner at the foot has the scale near it.
        Spot corner = site.boundary().points().stream().max(Comparator.comparingDouble(spot -> spot.x() - spot.y())).orElseThrow();
        pen.text("boundary", ground.px(corner.x()) - unit * 0.5, ground.py(corner.y()) - unit * 1.2, Align.RIGHT, Letters.SMALL, palette.ink());
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
        double x = ground.px(place.points().stream().mapToDouble(Spot::x).average().orElse(0));
        double y = ground.py(place.points().stream().mapToDouble(Spot::y).average().orElse(0));
        double below = y;
        if (place.radiusM() != null) {
            double r = place.radiusM() * ground.pxPerM();
            pen.disc(x, y, r, palette.hold(), 50);
            pen.ring(x, y, r, palette.hold(), OPAQUE, 2, Stroke.SOLID);
            double half = r * 0.7;
            Marks.hatch(pen, x - half, y - half, half * 2, half * 2, unit * 0.6, palette.hold(), 150);
            below += r;
        } else {
            pen.area(ground.xy(place.points()), palette.hold(), 60);
            pen.outline(ground.xy(place.points()), true, palette.hold(), OPAQUE, 2, Stroke.SOLID);
        }
        plate("protected: " + place.name(), x, below + unit * 0.3, Align.CENTRE, palette.hold());
    }

    private void audience(SiteView.Outline line) {
        double[] xy = ground.xy(line.points());
        pen.outline(xy, false, palette.info(), OPAQUE, Math.max(4, unit / 3), Stroke.SOLID);
        Spot middle = line.points().get(line.points().size() / 2);
        double x = (ground.px(line.points().get(0).x()) + ground.px(middle.x())) / 2;
        double y = (ground.py(line.points().get(0).y()) + ground.py(middle.y())) / 2;
        if (line.points().size() > 2) {
            x = ground.px(middle.x());
            y = ground.py(middle.y());
        }
        plate("audience: " + line.name(), x, y - unit * 1.5, Align.CENTRE, palette.info());
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

    /** Where positions lie close, their squares are smaller, and a name that would lie on another gives way; that of the selected one never. */
    private void positions() {
        double nearest = Double.MAX_VALUE;
        for (SiteView.Position one : site.positions()) {
            for (SiteView.Position other : site.positions()) {
                if (one != other) {
                    nearest = Math.min(nearest, Math.hypot(one.at().x() - other.at().x(), one.at().y() - other.at().y()) * ground.pxPerM());
                }
            }
        }
        double r = Math.max(LEAST_SQUARE_PX, Math.min(unit * 0.32, nearest * 0.35));
        site.positions().forEach(position -> square(position, r));
        List<double[]> taken = new ArrayList<>();
        state.selected().ifPresent(position -> name(position, r, taken));
        site.positions().stream().filter(position -> state.selected().filter(position::equals).isEmpty()).forEach(position -> name(position, r, taken));
    }

    private void name(SiteView.Position position, double r, List<double[]> taken) {
        double x = ground.px(position.at().x());
        double y = ground.py(position.at().y()) + r * 1.5;
        double half = pen.width(position.name(), Letters.BOLD) / 2;
        if (taken.stream().noneMatch(other -> Math.abs(other[0] - x) < other[1] + half + 2 && Math.abs(other[2] - y) < unit)) {
            taken.add(new double[] {x, half, y});
            pen.text(position.name(), x, y, Align.CENTRE, Letters.BOLD, palette.ink());
        }
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

    private void legend() {
        List<String> lines = new ArrayList<>();
        if (state.selected().isPresent()) {
            SiteView.Position at = state.selected().get();
            lines.add("Position " + at.name() + ": " + at.cues() + (at.cues() == 1 ? " cue" : " cues") + state(at));
            site.distances().stream().filter(line -> line.position().equals(at.name())).sorted(Comparator.comparing(SiteView.Distance::met))
                    .forEach(line -> lines.add(state.folded() && !line.met() ? gist(line) : words(line)));
            site.findings().stream().filter(finding -> finding.positions().isEmpty() || finding.positions().contains(at.name()))
                    .map(finding -> (finding.waived() ? "waived: " : "NOT CLEAN: ") + finding.message()).distinct().forEach(lines::add);
        } else {
            lines.add(site.name());
            Map<String, List<String>> unmet = new LinkedHashMap<>();
            site.distances().stream().filter(line -> !line.met())
                    .forEach(line -> unmet.computeIfAbsent(gist(line) + agreed(line), key -> new ArrayList<>()).add(line.position()));
            if (state.folded() && allAgreed()) {
                lines.add("only what was agreed to in writing");
            }
            unmet.forEach((words, positions) -> lines.add(String.join(", ", positions) + " " + words));
            site.findings().stream().filter(finding -> !finding.waived()).map(finding -> "NOT CLEAN: " + finding.message()).distinct().forEach(lines::add);
            long met = site.distances().stream().filter(SiteView.Distance::met).count();
            lines.add(met + " of " + site.distances().size() + " distances are met");
            lines.add("distances by " + site.table());
        }
        double room = Math.max(unit * 6, state.rose().x() - state.rose().radius() * 1.3 - unit * 2);
        List<String> shown = new ArrayList<>(pen.wrapped(lines.get(0), room, Letters.BOLD));
        int titles = shown.size();
        // What is wrong comes first, and the first of it is always whole; what does not fit is counted.
        double high = ground.height() / unit;
        int most = (int) Math.max(FOLDED_LINES, state.folded() ? FOLDED_LINES : state.unfolded() ? high - state.foot() / unit - 2
                : Math.min(MOST_LINES, high / LINES_TO_WORDS));
        for (int i = 1; i < lines.size(); i++) {
            List<String> next = pen.wrapped(lines.get(i), room, Letters.SMALL);
            if (i > 1 && shown.size() + next.size() + (i + 1 < lines.size() ? 1 : 0) > most) {
                shown.add("and " + (lines.size() - i) + " more" + (state.unfolded() ? "" : " (L)"));
                break;
            }
            shown.addAll(next);
        }
        words(shown, titles);
    }

    /** The words in the corner, on a ground of their own. */
    private void words(List<String> lines, int titles) {
        double line = pen.height(Letters.SMALL) * 1.15;
        double width = 0;
        for (int i = 0; i < lines.size(); i++) {
            width = Math.max(width, pen.width(lines.get(i), i < titles ? Letters.BOLD : Letters.SMALL));
        }
        pen.rectangle(unit * 0.4, unit * 0.4, width + unit, line * lines.size() + unit * 0.8, palette.paper(), 225);
        pen.frame(unit * 0.4, unit * 0.4, width + unit, line * lines.size() + unit * 0.8, palette.grid(), 1);
        for (int i = 0; i < lines.size(); i++) {
            boolean bad = (lines.get(i).contains("NOT ") || lines.get(i).contains("ASSESSMENT")) && !lines.get(i).contains("agreed to");
            pen.text(lines.get(i), unit * 0.9, unit * 0.8 + i * line, Align.LEFT, i < titles ? Letters.BOLD : Letters.SMALL,
                    bad ? palette.error() : palette.ink());
        }
    }

    private String state(SiteView.Position position) {
        return switch (position.state()) {
            case "clean" -> ", nothing found in this wind";
            case "waived" -> ", only what was agreed to";
            case "unchecked" -> ", NOT CHECKED";
            default -> ", NOT CLEAN in this wind";
        };
    }

    /** Whether something was found, all of it was agreed to in writing, and nothing is unknown. */
    private boolean allAgreed() {
        return site.falloutUnknown().isEmpty() && site.positions().stream().allMatch(at -> at.state().equals("clean") || at.state().equals("waived"))
                && site.positions().stream().anyMatch(at -> at.state().equals("waived")) && site.findings().stream().allMatch(FindingView::waived);
    }

    /** Whether all that was found at the position was agreed to in writing. */
    private String agreed(SiteView.Distance line) {
        return site.positions().stream().filter(at -> at.name().equals(line.position())).anyMatch(at -> at.state().equals("waived"))
                ? " (agreed to in writing)" : "";
    }

    private String gist(SiteView.Distance line) {
        String assessment = ": ASSESSMENT needed" + (state.folded() ? "" : ", " + line.assessment());
        return "to " + line.place() + (line.askedM() == null ? assessment : ": " + metres(line.askedM()) + " asked, NOT MET");
    }

    private static String words(SiteView.Distance line) {
        String found = "to " + line.place() + ": " + metres(line.foundM()) + " there, ";
        if (line.askedM() == null) {
            return found + "ASSESSMENT needed: " + line.assessment();
        }
        return found + (line.estimated() ? "\u2248 " : "") + metres(line.askedM()) + " asked" + (line.met() ? ", met" : ", NOT MET");
    }

    private void rose() {
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
        pen.text("0\u00b0", rose.x(), rose.y() - r - unit * 1.05, Align.CENTRE, Letters.SMALL, palette.faint());
        double kx = rose.knobX(wind);
        double ky = rose.knobY(wind);
        int colour = state.trying() ? palette.accent() : palette.ink();
        arrow(kx, ky, rose.x() - (kx - rose.x()) * 0.6, rose.y() - (ky - rose.y()) * 0.6, colour);
        pen.disc(kx, ky, unit * 0.45, colour, OPAQUE);
        pen.ring(kx, ky, unit * 0.45, palette.paper(), OPAQUE, 1, Stroke.SOLID);
        double y = rose.y() + r + unit * 0.4;
        line("wind " + words(wind), y, palette.ink(), Letters.SMALL);
        if (state.trying()) {
            line("TRIED, not in the script", y + unit, palette.accent(), Letters.SMALL);
            line(site.scriptWind() == null ? "script: none" : "script " + words(site.scriptWind()), y + unit * 2, palette.faint(), Letters.SMALL);
            if (!state.settled()) {
                line("computing\u2026", y + unit * 3, palette.accent(), Letters.SMALL);
            }
        } else if (site.scriptWind() == null) {
            line("the script says none", y + unit, palette.warning(), Letters.SMALL);
        }
    }

    private void line(String text, double y, int colour, Letters letters) {
        double x = ground.width() - unit * 0.6;
        double width = pen.width(text, letters);
        pen.rectangle(x - width - unit * 0.2, y, width + unit * 0.4, unit, palette.paper(), 215);
        pen.text(text, x, y, Align.RIGHT, letters, colour);
    }

    private static String words(WindView wind) {
        return String.format(Locale.ROOT, "from %.0f\u00b0 at %.1f m/s", wind.fromDeg(), wind.speedMps());
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

    private void scale() {
        double wanted = Math.min(unit * 8, ground.width() / 6) / ground.pxPerM();
        double bar = BARS_M[0];
        for (double each : BARS_M) {
            if (each <= wanted) {
                bar = each;
            }
        }
        double x = unit;
        double y = ground.height() - state.foot() - unit * 1.2;
        double length = bar * ground.pxPerM();
        pen.rectangle(x - unit * 0.4, y - unit * 1.3, Math.max(length, unit * 3) + unit * 0.8, unit * 1.9, palette.paper(), 215);
        pen.line(x, y, x + length, y, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.line(x, y - unit * 0.3, x, y + unit * 0.3, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.line(x + length, y - unit * 0.3, x + length, y + unit * 0.3, palette.ink(), OPAQUE, 2, Stroke.SOLID);
        pen.text(metres(bar), x + unit * 0.3, y - unit * 1.2, Align.LEFT, Letters.SMALL, palette.ink());
    }

    private void foot() {
        double line = pen.height(Letters.SMALL) * 1.15;
        double room = ground.width() - unit;
        String caution = site.falloutUnknown().isEmpty() ? "A computed distance is a floor to start from, not permission."
                : "FALLOUT NOT KNOWN: " + String.join("; ", site.falloutUnknown());
        List<String> cautions = pen.wrapped(caution, room, Letters.SMALL);
        String key = pen.width(KEY, Letters.SMALL) <= room ? KEY : SHORT_KEY;
        List<String> lines = new ArrayList<>(state.folded() ? List.of() : pen.wrapped(key, room, Letters.SMALL));
        lines.addAll(cautions);
        double top = Math.min(ground.height() - state.foot(), ground.height() - line * lines.size() - unit * 0.4);
        pen.rectangle(0, top, ground.width(), ground.height() - top, palette.paper(), OPAQUE);
        pen.line(0, top, ground.width(), top, palette.grid(), OPAQUE, 1, Stroke.SOLID);
        for (int i = 0; i < lines.size(); i++) {
            boolean bad = !site.falloutUnknown().isEmpty() && i >= lines.size() - cautions.size();
            pen.text(lines.get(i), unit * 0.5, top + unit * 0.25 + i * line, Align.LEFT, Letters.SMALL, bad ? palette.error() : palette.ink());
        }
    }

    private void plate(String text, double x, double y, Align align, int colour) {
        double width = pen.width(text, Letters.SMALL) + unit * 0.5;
        double left = Math.max(0, Math.min(align == Align.CENTRE ? x - width / 2 : x, ground.width() - width));
        // The dial and its words are in the upper right corner.
        boolean hidden = left + width > dialLeft() && y < dialBottom();
        double top = hidden ? dialBottom() : y;
        pen.rectangle(left, top, width, unit * 1.05, palette.paper(), 215);
        pen.text(text, left + unit * 0.25, top, Align.LEFT, Letters.SMALL, colour);
    }

    private double dialLeft() {
        return Math.min(state.rose().x() - state.rose().radius() * 1.2, ground.width() - unit * 1.2 - pen.width("wind " + words(state.wind()), Letters.SMALL));
    }

    private double dialBottom() {
        int lines = state.trying() ? 4 : site.scriptWind() == null ? 2 : 1;
        return state.rose().y() + state.rose().radius() + unit * (0.5 + lines);
    }

    /** All of the view in a sentence, for those who hear it. */
    public static String description(SiteState state) {
        SiteView site = state.site();
        if (site.nothing() != null) {
            return site.nothing();
        }
        long unmet = site.distances().stream().filter(line -> !line.met()).count();
        return site.name() + ", wind " + words(state.wind()) + (state.trying() ? " tried" : "") + "; " + unmet + " distances not met"
                + state.selected().map(at -> "; position " + at.name() + site.distances().stream().filter(line -> line.position().equals(at.name()))
                        .map(line -> ", " + words(line)).reduce("", String::concat)).orElse("");
    }

    private static String metres(double m) {
        return String.format(Locale.ROOT, m == Math.rint(m) ? "%.0f m" : "%.1f m", m);
    }
}
