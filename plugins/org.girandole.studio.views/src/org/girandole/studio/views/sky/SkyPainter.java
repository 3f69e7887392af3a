package org.girandole.studio.views.sky;

import java.util.List;
import java.util.SplittableRandom;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;
import org.girandole.studio.views.draw.Tints;
import org.girandole.studio.views.stage.Words;

/** Draws the sky at one moment: a simple shape for each kind of effect. A sketch of time and place, not of beauty. */
public final class SkyPainter {
    private static final int OPAQUE = 255;
    private static final double USUAL_SPREAD_M = 50;
    private static final double USUAL_MINE_M = 30;
    private static final double USUAL_COMET_M = 45;
    private static final double USUAL_FOUNTAIN_M = 6;
    private static final double SHOT_US = 1_400_000;
    private static final long FLICKER_US = 80_000;
    private static final int RAYS = 44;

    private final Pen pen;
    private final Palette palette;
    private final PlanView plan;
    private final SiteView site;
    private final Flights flights;
    private final Stand stand;
    private final double unit;
    private final List<String> caution;

    public SkyPainter(Pen pen, Palette palette, PlanView plan, SiteView site, Flights flights, double width, double height) {
        this.pen = pen;
        this.palette = palette;
        this.plan = plan;
        this.site = site;
        this.flights = flights;
        this.unit = pen.height(Letters.NORMAL);
        this.caution = pen.wrapped("A sketch: what the script does not say of height, width and length is drawn as is usual.", width - unit, Letters.SMALL);
        this.stand = Stand.whole(flights.all(), site.lookDeg(), width, height, unit * (3.2 + caution.size()));
    }

    /** @param selected number of the selected cue, 0 for none */
    public void paint(long us, int selected) {
        pen.rectangle(0, 0, stand.width(), stand.height(), palette.sky(), OPAQUE);
        if (plan.nothing() != null || flights.all().isEmpty()) {
            String why = plan.nothing() != null ? plan.nothing() : "Nothing is fired from a position of the site in this soundtrack.";
            pen.middle(why, stand.width(), stand.height(), palette.faint());
            return;
        }
        heights();
        List<CueView> seen = flights.at(us);
        seen.forEach(cue -> effect(cue, us));
        pen.rectangle(0, stand.groundPx(), stand.width(), stand.height() - stand.groundPx(), palette.earth(), OPAQUE);
        positions();
        seen.stream().filter(cue -> cue.number() == selected).forEach(this::halo);
        foot(us, seen);
    }

    private void heights() {
        double step = 50 * stand.pxPerM() < unit * 2 ? 100 : 50;
        for (double z = step; stand.y(z) > unit; z += step) {
            pen.line(0, stand.y(z), stand.width(), stand.y(z), palette.grid(), 110, 1, Stroke.DOTTED);
            pen.text(Math.round(z) + " m", unit * 0.4, stand.y(z) - pen.height(Letters.SMALL), Align.LEFT, Letters.SMALL, palette.faint());
        }
    }

    private void positions() {
        double last = -Double.MAX_VALUE;
        List<SiteView.Position> inOrder = site.positions().stream().sorted((a, b) -> Double.compare(stand.x(a.at()), stand.x(b.at()))).toList();
        for (SiteView.Position position : inOrder) {
            double x = stand.x(position.at());
            double r = unit * 0.22;
            pen.rectangle(x - r, stand.groundPx() - r, r * 2, r * 2, palette.ink(), OPAQUE);
            if (x - pen.width(position.name(), Letters.SMALL) / 2 > last + 3) {
                pen.text(position.name(), x, stand.groundPx() + unit * 0.3, Align.CENTRE, Letters.SMALL, palette.ink());
                last = x + pen.width(position.name(), Letters.SMALL) / 2;
            }
        }
    }

    private void foot(long us, List<CueView> seen) {
        double y = stand.height() - unit * (1.5 + caution.size());
        long sounding = seen.stream().filter(cue -> cue.burstUs() <= us).count();
        String words = Words.clock(us) + "   " + sounding + " seen, " + (seen.size() - sounding) + " rising";
        pen.text(words, unit * 0.5, y, Align.LEFT, Letters.BOLD, palette.ink());
        for (int i = 0; i < caution.size(); i++) {
            pen.text(caution.get(i), unit * 0.5, y + unit * (1.2 + i), Align.LEFT, Letters.SMALL, palette.faint());
        }
    }

    private void halo(CueView cue) {
        Spot at = cue.burst() == null ? cue.from() : cue.burst();
        double r = cue.burst() == null ? unit * 1.2 : Math.max(unit, spread(cue) / 2 * stand.pxPerM() + unit * 0.4);
        pen.ring(stand.x(at), stand.y(at.z()), r, palette.accent(), OPAQUE, 2, Stroke.DASHED);
    }

    private void effect(CueView cue, long us) {
        int colour = Tints.of(cue.colour(), palette);
        if (!cue.items().isEmpty()) {
            for (CueView.Item item : cue.items()) {
                oneOf(cue, item.lightUs(), item.burstUs(), us, colour);
            }
        } else {
            oneOf(cue, cue.fireUs(), cue.burstUs(), us, colour);
        }
    }

    private void oneOf(CueView cue, long fireUs, long burstUs, long us, int colour) {
        if (us < fireUs) {
            return;
        }
        if (us < burstUs) {
            rising(cue, (double) (us - fireUs) / (burstUs - fireUs), colour);
            return;
        }
        double age = (double) (us - burstUs) / Flights.lastsUs(cue);
        if (age >= 1) {
            return;
        }
        switch (cue.kind()) {
            case "shell", "rocket" -> burst(cue, age, colour);
            case "salute" -> flash(cue, age, colour);
            case "mine" -> mine(cue, age, colour);
            case "comet" -> shot(cue, cue.tiltDeg(), cue.bearingDeg(), age, colour);
            case "candle", "cake" -> shots(cue, us - burstUs, colour);
            case "fountain" -> fountain(cue, us, colour);
            case "wheel" -> wheel(cue, us, colour);
            default -> flare(cue, us, colour);
        }
    }

    /** What glows most: nearly white by night; on light paper it keeps its colour. */
    private int core(int colour) {
        return palette.dark() ? palette.ink() : colour;
    }

    private static double spread(CueView cue) {
        return cue.spreadM() == null ? USUAL_SPREAD_M : cue.spreadM();
    }

    private static double high(CueView cue, double usual) {
        return cue.apexM() == null ? usual : cue.apexM();
    }

    /** Fast at first, slow at the top. */
    private static double eased(double share) {
        return 1 - (1 - share) * (1 - share);
    }

    private void rising(CueView cue, double share, int colour) {
        Spot to = cue.burst() == null ? new Spot(cue.from().x(), cue.from().y(), USUAL_COMET_M) : cue.burst();
        for (int i = 0; i < 5; i++) {
            double p = eased(Math.max(0, share - i * 0.025));
            double x = stand.x(cue.from()) + (stand.x(to) - stand.x(cue.from())) * p;
            double y = stand.y(cue.from().z()) + (stand.y(to.z()) - stand.y(cue.from().z())) * p;
            pen.disc(x, y, Math.max(1, unit * (0.17 - i * 0.025)), i == 0 ? core(colour) : colour, 230 - i * 45);
        }
    }

    private void burst(CueView cue, double age, int colour) {
        double x = stand.x(cue.burst() == null ? cue.from() : cue.burst());
        double y = stand.y(cue.burst() == null ? USUAL_COMET_M : cue.burst().z());
        double opened = 1 - Math.pow(1 - Math.min(1, age * 1.4), 3);
        double r = spread(cue) / 2 * stand.pxPerM() * opened;
        double drop = spread(cue) * 0.18 * stand.pxPerM() * age * age;
        int alpha = (int) (OPAQUE * Math.min(1, 1.6 * (1 - age)));
        SplittableRandom random = new SplittableRandom(cue.number());
        for (int i = 0; i < RAYS; i++) {
            double a = 2 * Math.PI * (i + random.nextDouble() * 0.6) / RAYS;
            // Seen from the front a ball's rays are of all lengths.
            double reach = r * Math.sqrt(0.25 + 0.75 * random.nextDouble());
            double ex = x + Math.sin(a) * reach;
            double ey = y - Math.cos(a) * reach + drop;
            pen.line(x + Math.sin(a) * reach * 0.62, y - Math.cos(a) * reach * 0.62 + drop * 0.5, ex, ey, colour, alpha, Math.max(1, unit / 12),
                    Stroke.SOLID);
            pen.disc(ex, ey, Math.max(1, unit * 0.11), colour, alpha);
        }
        if (age < 0.12) {
            pen.disc(x, y, unit * 0.5, core(colour), 200);
        }
    }

    private void flash(CueView cue, double age, int colour) {
        double x = stand.x(cue.burst() == null ? cue.from() : cue.burst());
        double y = stand.y(cue.burst() == null ? USUAL_COMET_M : cue.burst().z());
        double r = Math.max(unit * 0.6, spread(cue) / 4 * stand.pxPerM());
        int alpha = (int) (OPAQUE * (1 - age));
        pen.disc(x, y, r * (0.5 + age * 0.2), colour, alpha);
        pen.ring(x, y, r * (0.6 + age), colour, alpha, 2, Stroke.SOLID);
    }

    private void mine(CueView cue, double age, int colour) {
        double height = high(cue, USUAL_MINE_M);
        SplittableRandom random = new SplittableRandom(cue.number());
        double lean = stand.lean(cue.tiltDeg(), cue.bearingDeg());
        int alpha = (int) (OPAQUE * Math.min(1, 1.5 * (1 - age)));
        for (int i = -5; i <= 5; i++) {
            double side = i / 5.0 * 0.38 + lean;
            double reach = height * (0.6 + 0.4 * random.nextDouble()) * eased(Math.min(1, age * 1.5));
            double fall = height * 0.25 * age * age;
            double x = stand.x(cue.from()) + side * reach * stand.pxPerM();
            double y = stand.y(cue.from().z() + Math.max(0, reach - fall));
            pen.line(x, y, stand.x(cue.from()) + side * reach * 0.6 * stand.pxPerM(), stand.y(cue.from().z() + Math.max(0, reach * 0.7 - fall)), colour, alpha / 2,
                    Math.max(1, unit / 12), Stroke.SOLID);
            pen.disc(x, y, Math.max(1, unit * 0.13), colour, alpha);
        }
    }

    private void shot(CueView cue, double tiltDeg, double bearingDeg, double age, int colour) {
        double height = high(cue, USUAL_COMET_M);
        double lean = stand.lean(tiltDeg, bearingDeg);
        double up = Math.cos(Math.toRadians(Math.abs(tiltDeg)));
        int alpha = (int) (OPAQUE * Math.min(1, 2 * (1 - age)));
        double head = eased(Math.min(1, age * 1.1));
        double tail = eased(Math.max(0, Math.min(1, age * 1.1) - 0.16));
        double x = stand.x(cue.from());
        double z = cue.from().z();
        pen.line(x + lean * height * tail * stand.pxPerM(), stand.y(z + up * height * tail), x + lean * height * head * stand.pxPerM(),
                stand.y(z + up * height * head), colour, alpha, Math.max(2, unit / 7), Stroke.SOLID);
        pen.disc(x + lean * height * head * stand.pxPerM(), stand.y(z + up * height * head), Math.max(1.5, unit * 0.17), colour, alpha);
    }

    private void shots(CueView cue, long sinceUs, int colour) {
        int count = cue.shots() == null ? 8 : cue.shots();
        long gapUs = cue.shotGapUs() == null ? Flights.lastsUs(cue) / count : cue.shotGapUs();
        boolean box = cue.kind().equals("cake");
        for (int i = 0; i < count; i++) {
            double age = (sinceUs - i * gapUs) / SHOT_US;
            if (age >= 0 && age < 1) {
                double fan = box ? (i % 5 - 2) * 11 : 0;
                double bearing = fan < 0 ? stand.lookDeg() - 90 : stand.lookDeg() + 90;
                shot(cue, box ? fan : cue.tiltDeg(), box ? bearing : cue.bearingDeg(), age, colour);
            }
        }
        stub(cue, colour, box ? 0.5 : 0.2);
    }

    private void stub(CueView cue, int colour, double half) {
        double x = stand.x(cue.from());
        pen.rectangle(x - unit * half, stand.groundPx() - unit * 0.5, unit * half * 2, unit * 0.5, colour, OPAQUE);
    }

    private void fountain(CueView cue, long us, int colour) {
        double height = Math.max(high(cue, USUAL_FOUNTAIN_M) * stand.pxPerM(), unit);
        SplittableRandom random = new SplittableRandom(cue.number() * 1_000_003L + us / FLICKER_US);
        double x = stand.x(cue.from());
        double y = stand.y(cue.from().z());
        for (int i = -6; i <= 6; i++) {
            double reach = height * (0.65 + 0.35 * random.nextDouble());
            pen.line(x, y, x + i / 6.0 * reach * 0.32, y - reach * (1 - Math.abs(i) / 14.0), colour, 190, 1, Stroke.SOLID);
        }
    }

    private void wheel(CueView cue, long us, int colour) {
        double r = Math.max(unit * 0.8, (cue.spreadM() == null ? 4 : cue.spreadM()) / 2 * stand.pxPerM());
        double x = stand.x(cue.from());
        double y = stand.y(cue.from().z()) - r * 1.2;
        double turn = us / 1e6 * 5;
        for (int i = 0; i < 6; i++) {
            double a = turn + i * Math.PI / 3;
            pen.line(x, y, x + Math.sin(a) * r, y - Math.cos(a) * r, colour, OPAQUE, Math.max(1, unit / 10), Stroke.SOLID);
            pen.disc(x + Math.sin(a - 0.3) * r, y - Math.cos(a - 0.3) * r, Math.max(1, unit * 0.1), colour, 150);
        }
        pen.ring(x, y, r, colour, 110, 1, Stroke.SOLID);
    }

    private void flare(CueView cue, long us, int colour) {
        double x = stand.x(cue.from());
        double y = stand.y(cue.from().z()) - unit * 0.4;
        double breath = 1 + 0.12 * Math.sin(us / 1e6 * 9 + cue.number());
        pen.disc(x, y, unit * 1.5 * breath, colour, 45);
        pen.disc(x, y, unit * 0.85 * breath, colour, 90);
        pen.disc(x, y, unit * 0.35, colour, OPAQUE);
    }

    /** What is seen, in a sentence, for those who hear it. */
    public static String description(Flights flights, long us) {
        List<CueView> seen = flights.at(us);
        StringBuilder out = new StringBuilder("Sky at ").append(Words.clock(us)).append(": ");
        if (seen.isEmpty()) {
            return out.append("dark").toString();
        }
        seen.stream().limit(8).forEach(cue -> out.append(cue.label()).append(" from ").append(cue.position()).append(cue.burstUs() > us ? " rising; " : "; "));
        return out.toString();
    }
}
