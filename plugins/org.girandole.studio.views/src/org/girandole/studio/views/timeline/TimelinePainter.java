package org.girandole.studio.views.timeline;

import java.util.List;
import java.util.Optional;
import org.girandole.protocol.CueView;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.draw.Marks;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;
import org.girandole.studio.views.draw.Tints;
import org.girandole.studio.views.stage.Words;

/** Draws the timeline: everything but the playhead, which moves too often. Only what is in the window is looked at. */
public final class TimelinePainter {
    private static final int OPAQUE = 255;
    private static final int VEIL = 58;
    private static final int BAR_ALPHA = 120;
    private static final int LEAST_NAME = 8;
    private static final double CROWDED_PX = 14;
    private static final double CROWD_COLUMN_PX = 3;

    private final Pen pen;
    private final Palette palette;
    private final PlanView plan;
    private final Score score;
    private final Window window;
    private final Frame frame;
    private double offerFrom;
    private double offerTo;

    public TimelinePainter(Pen pen, Palette palette, PlanView plan, Score score, Window window, Frame frame) {
        this.pen = pen;
        this.palette = palette;
        this.plan = plan;
        this.score = score;
        this.window = window;
        this.frame = frame;
    }

    /**
     * Draws it.
     *
     * @param wave the waveform, or one without columns
     * @param selected the selected cue, if there is one
     * @param status what stands at the foot
     */
    public void paint(Wave wave, Optional<CueView> selected, String status) {
        pen.rectangle(0, 0, frame.width(), frame.height(), palette.paper(), OPAQUE);
        if (score.track().isEmpty()) {
            String why = plan.nothing() == null ? "The show has no soundtrack with a score yet." : plan.nothing();
            pen.middle(why, frame.width(), frame.height(), palette.faint());
            return;
        }
        TrackView track = score.track().get();
        sections(track);
        ruler(track);
        wave(wave, track);
        lanes(track, selected);
        overview(track);
        status(status);
    }

    private double x(long us) {
        return frame.left() + window.x(us);
    }

    private boolean inView(long fromUs, long toUs) {
        return x(toUs) >= frame.left() && x(fromUs) <= frame.width();
    }

    private void sections(TrackView track) {
        double height = frame.rulerTop();
        pen.rectangle(0, 0, frame.width(), height, palette.band(), OPAQUE);
        String slot = ", slot " + track.slot();
        double room = frame.headWidth() - frame.unit() - pen.width(slot, Letters.BOLD);
        head(pen.fitted(track.label(), room, Letters.BOLD) + slot, height * 0.16, Letters.BOLD, palette.ink());
        pen.clip(frame.left(), 0, frame.timeWidth(), height);
        for (TrackView.Span section : track.sections()) {
            if (inView(section.fromUs(), section.toUs())) {
                double from = Math.max(frame.left(), x(section.fromUs()));
                double to = Math.min(frame.width(), x(section.toUs()));
                pen.rectangle(x(section.fromUs()) + 1, height * 0.1, x(section.toUs()) - x(section.fromUs()) - 2, height * 0.8, palette.paper(), OPAQUE);
                pen.rectangle(x(section.fromUs()) + 1, height * 0.1, 3, height * 0.8, palette.faint(), OPAQUE);
                pen.text(pen.fitted(section.label(), to - from - frame.unit(), Letters.NORMAL), from + frame.unit() * 0.6, height * 0.16, Align.LEFT,
                        Letters.NORMAL, palette.ink());
            }
        }
        pen.unclip();
    }

    private void ruler(TrackView track) {
        double top = frame.rulerTop();
        double line = frame.unit();
        head("time", top, Letters.SMALL, palette.faint());
        head(track.bars().isEmpty() ? "no tempo" : "bar", top + line, Letters.SMALL, palette.faint());
        head("marks", top + line * 1.95, Letters.SMALL, palette.faint());
        pen.clip(frame.left(), top, frame.timeWidth(), frame.bottom() - top);
        long step = Steps.time(window.usPerPx() * pen.width("00:00", Letters.SMALL) * 1.8);
        for (long us = -Math.floorDiv(-window.fromUs(), step) * step; x(us) < frame.width(); us += step) {
            pen.text(Steps.label(us, step), x(us) + 3, top, Align.LEFT, Letters.SMALL, palette.faint());
            pen.line(x(us), top, x(us), top + line * 0.5, palette.faint(), OPAQUE, 1, Stroke.SOLID);
        }
        bars(track, top + line);
        for (TrackView.Mark mark : track.marks()) {
            if (inView(mark.atUs(), mark.atUs() + Math.round(window.usPerPx() * frame.unit() * 12))) {
                mark(mark, track, top + line * 1.95);
            }
        }
        pen.unclip();
    }

    private void bars(TrackView track, double top) {
        List<TrackView.Bar> bars = track.bars();
        if (bars.isEmpty()) {
            return;
        }
        int first = Steps.firstBar(bars, window.fromUs());
        double barPx = first + 1 < bars.size() ? (bars.get(first + 1).atUs() - bars.get(first).atUs()) / window.usPerPx() : frame.unit();
        int every = Steps.bars(barPx, pen.width("000", Letters.SMALL) * 1.5);
        for (int i = first; i < bars.size() && x(bars.get(i).atUs()) <= frame.width(); i++) {
            TrackView.Bar bar = bars.get(i);
            if ((bar.number() - 1) % every == 0) {
                pen.line(x(bar.atUs()), top, x(bar.atUs()), frame.bottom(), palette.grid(), OPAQUE, 1, Stroke.SOLID);
                pen.text(String.valueOf(bar.number()), x(bar.atUs()) + 3, top, Align.LEFT, Letters.SMALL, palette.ink());
            }
            if (barPx > frame.unit() * 4) {
                for (int beat = 1; beat < bar.beatsUs().size(); beat++) {
                    double at = x(bar.beatsUs().get(beat));
                    pen.line(at, frame.waveTop(), at, frame.bottom(), palette.grid(), BAR_ALPHA, 1, Stroke.DOTTED);
                }
            }
        }
    }

    private void mark(TrackView.Mark mark, TrackView track, double top) {
        double at = x(mark.atUs());
        double next = track.marks().stream().mapToLong(TrackView.Mark::atUs).filter(us -> us > mark.atUs()).mapToObj(this::x).min(Double::compare)
                .orElse(frame.width());
        double h = frame.unit() * 0.42;
        pen.area(new double[] {at, top + h * 0.3, at + h, top + h, at, top + h * 1.7}, palette.ink(), OPAQUE);
        pen.line(at, top, at, frame.bottom(), palette.ink(), 90, 1, Stroke.DASHED);
        pen.text(pen.fitted(mark.name(), next - at - h * 2, Letters.SMALL), at + h * 1.4, top, Align.LEFT, Letters.SMALL, palette.ink());
    }

    private void wave(Wave wave, TrackView track) {
        double top = frame.waveTop();
        double middle = top + frame.waveHeight() / 2;
        head("sound", middle - frame.unit() * 0.5, Letters.SMALL, palette.faint());
        pen.clip(frame.left(), top, frame.timeWidth(), frame.waveHeight());
        pen.line(frame.left(), middle, frame.width(), middle, palette.grid(), OPAQUE, 1, Stroke.SOLID);
        if (wave.empty()) {
            silence(track, middle);
        } else {
            wave.paint(pen, palette, window, frame.left(), frame.timeWidth(), middle, frame.waveHeight() / 2 - 2);
        }
        pen.unclip();
        pen.line(0, frame.top(), frame.width(), frame.top(), palette.faint(), OPAQUE, 1, Stroke.SOLID);
    }

    private void silence(TrackView track, double middle) {
        String offer = track.piece() == null ? "" : "Play " + Words.fileName(track.piece()) + " into a recording (M)";
        String why = track.silence() == null ? "" : "No sound: " + track.silence() + (offer.isEmpty() ? "" : ".");
        // The moment of the playhead stands before it when that is at the beginning.
        double left = frame.left() + frame.unit() * 6;
        double top = middle - frame.unit() * 0.5;
        double room = frame.width() - left - frame.unit();
        offerTo = offer.isEmpty() ? 0 : left + Math.min(room, pen.width(offer, Letters.SMALL));
        offerFrom = left;
        // What can be done stands first: it must not be what is cut off.
        String done = pen.fitted(offer, room, Letters.SMALL);
        double begin = offer.isEmpty() ? left : offerTo + frame.unit();
        String words = pen.fitted(why, Math.max(0, left + room - begin), Letters.SMALL);
        pen.rectangle(left, top, begin - left + pen.width(words, Letters.SMALL) + frame.unit() * 0.5, frame.unit(), palette.paper(), OPAQUE);
        pen.text(done, left, top, Align.LEFT, Letters.SMALL, palette.accent());
        if (!offer.isEmpty()) {
            pen.line(left, top + frame.unit() * 0.95, offerTo, top + frame.unit() * 0.95, palette.accent(), OPAQUE, 1, Stroke.SOLID);
        }
        pen.text(words, begin, top, Align.LEFT, Letters.SMALL, palette.faint());
    }

    /** Whether a point of the finished drawing is on the words that offer to play the piece. */
    public boolean offers(double px, double py) {
        return px >= offerFrom && px < offerTo && py >= frame.waveTop() && py < frame.waveTop() + frame.waveHeight();
    }

    private void lanes(TrackView track, Optional<CueView> selected) {
        pen.clip(0, frame.top(), frame.width(), frame.room());
        int first = (int) Math.max(0, Math.floor(window.top() / frame.laneHeight()));
        for (int i = first; i < score.lanes().size() && frame.laneTop(i, window) < frame.bottom(); i++) {
            laneGround(i);
        }
        pen.unclip();
        pen.clip(frame.left(), frame.top(), frame.timeWidth(), frame.room());
        marksAndBars(track);
        for (int i = first; i < score.lanes().size() && frame.laneTop(i, window) < frame.bottom(); i++) {
            glyphs(i, selected);
        }
        track.holds().forEach(this::hold);
        pen.unclip();
    }

    /** The grounds of the lanes lie over the lines of the ruler: those that guide through the lanes are drawn once more. */
    private void marksAndBars(TrackView track) {
        List<TrackView.Bar> bars = track.bars();
        if (!bars.isEmpty()) {
            int first = Steps.firstBar(bars, window.fromUs());
            double barPx = first + 1 < bars.size() ? (bars.get(first + 1).atUs() - bars.get(first).atUs()) / window.usPerPx() : frame.unit();
            int every = Steps.bars(barPx, pen.width("000", Letters.SMALL) * 1.5);
            for (int i = first; i < bars.size() && x(bars.get(i).atUs()) <= frame.width(); i++) {
                if ((bars.get(i).number() - 1) % every == 0) {
                    pen.line(x(bars.get(i).atUs()), frame.top(), x(bars.get(i).atUs()), frame.bottom(), palette.grid(), OPAQUE, 1, Stroke.SOLID);
                }
            }
        }
        for (TrackView.Mark mark : track.marks()) {
            if (inView(mark.atUs(), mark.atUs())) {
                pen.line(x(mark.atUs()), frame.top(), x(mark.atUs()), frame.bottom(), palette.ink(), 90, 1, Stroke.DASHED);
            }
        }
    }

    private void laneGround(int index) {
        Lane lane = score.lanes().get(index);
        double top = frame.laneTop(index, window);
        pen.rectangle(0, top, frame.width(), frame.laneHeight(), index % 2 == 0 ? palette.band() : palette.paper(), OPAQUE);
        pen.line(frame.left(), frame.floor(index, window), frame.width(), frame.floor(index, window), palette.grid(), OPAQUE, 1, Stroke.SOLID);
        double middle = top + frame.laneHeight() / 2;
        double room = frame.headWidth() - frame.unit();
        String count = lane.known() ? lane.cues() + (lane.cues() == 1 ? " cue" : " cues") : "off the site";
        int colour = lane.known() ? palette.faint() : palette.error();
        if (frame.narrowLanes()) {
            double width = pen.width(count, Letters.SMALL);
            String name = pen.fitted(lane.position(), room - width - frame.unit() * 0.4, Letters.BOLD);
            pen.text(name, frame.unit() * 0.5, middle - pen.height(Letters.BOLD) / 2, Align.LEFT, Letters.BOLD, palette.ink());
            pen.text(count, frame.unit() * 0.5 + room, middle - pen.height(Letters.SMALL) / 2, Align.RIGHT, Letters.SMALL, colour);
            return;
        }
        pen.text(pen.fitted(lane.position(), room, Letters.LARGE), frame.unit() * 0.5, middle - pen.height(Letters.LARGE) * 0.95, Align.LEFT,
                Letters.LARGE, palette.ink());
        pen.text(pen.fitted(count, room, Letters.SMALL), frame.unit() * 0.5, middle + frame.unit() * 0.15, Align.LEFT, Letters.SMALL, colour);
    }

    private void glyphs(int index, Optional<CueView> selected) {
        Lane lane = score.lanes().get(index);
        List<Glyph> visible = lane.between(window.fromUs(), window.us(frame.timeWidth()));
        if (visible.size() > frame.timeWidth() / CROWDED_PX) {
            crowd(index, visible);
        } else {
            // Names stand beside their own kind, what burst above, what begins at the ground below; in a low lane there is one line for all.
            double[] next = {frame.width(), frame.width()};
            for (int i = visible.size() - 1; i >= 0; i--) {
                int row = visible.get(i).rises() && !frame.narrowLanes() ? 1 : 0;
                if (selected.isEmpty() || !visible.get(i).numbers().contains(selected.get().number())) {
                    glyph(index, visible.get(i), next[row], 0, false);
                }
                next[row] = Math.min(next[row], x(visible.get(i).burstUs()) - frame.sign());
            }
        }
        selected.filter(cue -> cue.position().equals(lane.position())).flatMap(score::glyphOf).ifPresent(glyph -> {
            glyph(index, glyph, frame.width(), frame.sign() * 0.7, true);
            halo(index, glyph);
        });
    }

    /** So many that none can be told from the next: how many there are in each few pixels. */
    private void crowd(int index, List<Glyph> visible) {
        int columns = (int) Math.ceil(frame.timeWidth() / CROWD_COLUMN_PX) + 1;
        int[] counts = new int[columns];
        boolean[] grave = new boolean[columns];
        for (Glyph glyph : visible) {
            int column = (int) (window.x(glyph.burstUs()) / CROWD_COLUMN_PX);
            if (column >= 0 && column < columns) {
                counts[column] += glyph.numbers().size();
                grave[column] |= glyph.severity().equals("error");
            }
        }
        double floor = frame.floor(index, window);
        double room = floor - frame.laneTop(index, window) - frame.unit() * 0.5;
        for (int i = 0; i < columns; i++) {
            if (counts[i] > 0) {
                double height = room * Math.min(1, 0.3 + 0.2 * Math.log(counts[i]) / Math.log(2));
                pen.rectangle(frame.left() + i * CROWD_COLUMN_PX, floor - height, CROWD_COLUMN_PX - 1, height, palette.ink(), 170);
                if (grave[i]) {
                    Marks.finding(pen, "error", false, frame.left() + i * CROWD_COLUMN_PX, floor - height, frame.unit() * 0.25, palette);
                }
            }
        }
    }

    private void glyph(int index, Glyph glyph, double next, double aside, boolean plate) {
        int colour = Tints.of(glyph.cue().colour(), palette);
        double floor = frame.floor(index, window);
        double foot = x(glyph.fireUs());
        double top = x(glyph.burstUs());
        double y = glyph.rises() ? frame.sky(index, window) : frame.low(index, window);
        double r = frame.sign();
        double end = x(glyph.endUs());
        double under = y + r * 1.2;
        if (end - top > r) {
            pen.rectangle(top, under, end - top, Math.max(2, r * 0.3), colour, BAR_ALPHA);
            pen.line(end, under - r * 0.3, end, under + r * 0.6, colour, OPAQUE, 1, Stroke.SOLID);
        }
        if (glyph.rises()) {
            pen.line(foot, floor, top, y, palette.faint(), OPAQUE, Math.max(1, frame.unit() / 14),
                    glyph.cue().estimated() ? Stroke.DASHED : Stroke.SOLID);
        } else {
            pen.line(foot, floor, top, y, palette.faint(), BAR_ALPHA, 1, Stroke.SOLID);
        }
        pen.rectangle(foot - r * 0.25, floor - r * 0.25, r * 0.5, r * 0.5, palette.ink(), OPAQUE);
        for (CueView.Item item : glyph.cue().items()) {
            pen.line(x(item.burstUs()), y - r * 0.7, x(item.burstUs()), y + r * 0.7, colour, OPAQUE, 1.5, Stroke.SOLID);
        }
        Marks.effect(pen, glyph.cue().kind(), top, y, r, colour);
        double last = glyph.cue().items().stream().mapToDouble(item -> x(item.burstUs())).max().orElse(top);
        double textX = Math.max(top + r * 1.5, last + r * 0.8) + aside;
        if (glyph.numbers().size() > 1 || glyph.cue().pieces() > 1) {
            String times = "\u00d7" + Math.max(glyph.numbers().size(), glyph.cue().pieces());
            if (next - textX > pen.width(times, Letters.SMALL)) {
                pen.text(times, textX, y - frame.unit() * 0.5, Align.LEFT, Letters.SMALL, palette.ink());
                textX += pen.width(times, Letters.SMALL) + 3;
            }
        }
        label(glyph, textX, y, next, plate);
        if (!glyph.severity().isEmpty()) {
            boolean waived = glyph.severity().equals(Glyph.WAIVED);
            Marks.finding(pen, waived ? "info" : glyph.severity(), waived, foot, floor - r * 1.3, r * 0.62, palette);
        }
    }

    /** The name, where there is room for most of it before the next sign. */
    private void label(Glyph glyph, double textX, double y, double next, boolean plate) {
        String name = pen.fitted(glyph.cue().label(), next - textX - frame.unit() * 0.3, Letters.SMALL);
        if (name.equals(glyph.cue().label()) || name.length() > LEAST_NAME) {
            if (plate) {
                pen.rectangle(textX - 2, y - frame.unit() * 0.5, pen.width(name, Letters.SMALL) + 4, frame.unit(), palette.paper(), OPAQUE);
            }
            pen.text(name, textX, y - frame.unit() * 0.5, Align.LEFT, Letters.SMALL, palette.ink());
        }
    }

    private void halo(int index, Glyph glyph) {
        double y = glyph.rises() ? frame.sky(index, window) : frame.low(index, window);
        double r = frame.sign();
        pen.ring(x(glyph.burstUs()), y, r * 1.7, palette.accent(), OPAQUE, Math.max(2, frame.unit() / 8), Stroke.SOLID);
        pen.frame(x(glyph.fireUs()) - r * 0.6, frame.floor(index, window) - r * 0.6, r * 1.2, r * 1.2, palette.accent(), Math.max(2, frame.unit() / 8));
    }

    private void hold(TrackView.Span hold) {
        if (!inView(hold.fromUs(), hold.toUs())) {
            return;
        }
        double from = x(hold.fromUs());
        double to = x(hold.toUs());
        double left = Math.max(frame.left(), from);
        double width = Math.min(frame.width(), to) - left;
        pen.rectangle(left, frame.top(), width, frame.room(), palette.hold(), VEIL);
        Marks.hatch(pen, left, frame.top(), width, frame.room(), frame.unit() * 0.9, palette.hold(), 90);
        pen.line(from, frame.top(), from, frame.bottom(), palette.hold(), OPAQUE, 2, Stroke.SOLID);
        pen.line(to, frame.top(), to, frame.bottom(), palette.hold(), OPAQUE, 2, Stroke.SOLID);
        String words = "HOLD " + hold.label();
        String label = pen.width(words, Letters.SMALL) < width - 6 ? words : "HOLD";
        double room = pen.width(label, Letters.SMALL) + frame.unit() * 0.6;
        pen.rectangle(left, frame.bottom() - frame.unit() * 1.2, room, frame.unit() * 1.1, palette.paper(), 235);
        pen.text(label, left + frame.unit() * 0.3, frame.bottom() - frame.unit() * 1.15, Align.LEFT, Letters.SMALL, palette.hold());
    }

    private void overview(TrackView track) {
        double top = frame.overviewTop();
        double height = frame.overviewHeight();
        pen.rectangle(0, top, frame.width(), height, palette.band(), OPAQUE);
        head("whole show", top + (height - pen.height(Letters.SMALL)) / 2, Letters.SMALL, palette.faint());
        Window whole = Window.whole(score, frame.timeWidth());
        int[] counts = score.counts((int) Math.ceil(frame.timeWidth() / CROWD_COLUMN_PX) + 1, whole, CROWD_COLUMN_PX);
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                double bar = height * 0.8 * Math.min(1, 0.25 + 0.2 * Math.log(counts[i]) / Math.log(2));
                pen.rectangle(frame.left() + i * CROWD_COLUMN_PX, top + height * 0.9 - bar, CROWD_COLUMN_PX - 1, bar, palette.faint(), OPAQUE);
            }
        }
        for (TrackView.Span hold : track.holds()) {
            Marks.hatch(pen, frame.left() + whole.x(hold.fromUs()), top, whole.x(hold.toUs()) - whole.x(hold.fromUs()), height, 5, palette.hold(), OPAQUE);
        }
        double from = frame.left() + Math.max(0, whole.x(window.fromUs()));
        double to = frame.left() + Math.min(frame.timeWidth(), whole.x(window.us(frame.timeWidth())));
        pen.rectangle(from, top, to - from, height, palette.accent(), VEIL);
        pen.frame(from, top + 1, to - from, height - 2, palette.accent(), 2);
    }

    private void status(String status) {
        pen.rectangle(0, frame.statusTop(), frame.width(), frame.statusHeight(), palette.paper(), OPAQUE);
        pen.line(0, frame.statusTop(), frame.width(), frame.statusTop(), palette.grid(), OPAQUE, 1, Stroke.SOLID);
        pen.text(pen.fitted(status, frame.width() - frame.unit(), Letters.NORMAL), frame.unit() * 0.5,
                frame.statusTop() + (frame.statusHeight() - frame.unit()) / 2, Align.LEFT, Letters.NORMAL, palette.ink());
    }

    private void head(String text, double y, Letters letters, int colour) {
        pen.text(pen.fitted(text, frame.headWidth() - frame.unit() * 0.8, letters), frame.unit() * 0.5, y, Align.LEFT, letters, colour);
    }

    /** What stands at the foot: the selected cue with its findings, else how the show stands. */
    public static String status(PlanView plan, Optional<CueView> selected) {
        if (selected.isPresent()) {
            StringBuilder out = new StringBuilder(Words.cue(selected.get()));
            for (FindingView finding : plan.findings()) {
                if (finding.cues().contains(selected.get().number())) {
                    out.append("  \u2014  ").append(finding.waived() ? "waived " : "").append(finding.severity()).append(": ").append(finding.message());
                }
            }
            return out.toString();
        }
        return plan.label() + ": " + plan.errors() + (plan.errors() == 1 ? " error, " : " errors, ") + plan.warnings()
                + (plan.warnings() == 1 ? " warning, " : " warnings, ") + plan.waived() + " waived; release stamp " + plan.stamp();
    }

    /** Draws the playhead over a finished drawing. */
    public static void playhead(Pen pen, Palette palette, Window window, Frame frame, long us) {
        double x = frame.left() + window.x(us);
        if (x < frame.left() || x > frame.width()) {
            return;
        }
        double h = frame.unit() * 0.55;
        pen.line(x, frame.rulerTop(), x, frame.bottom(), palette.accent(), OPAQUE, 2, Stroke.SOLID);
        pen.area(new double[] {x - h, frame.rulerTop(), x + h, frame.rulerTop(), x, frame.rulerTop() + h * 1.4}, palette.accent(), OPAQUE);
        String clock = Words.clock(us);
        double width = pen.width(clock, Letters.SMALL) + h;
        double left = Math.min(x + 2, frame.width() - width);
        pen.rectangle(left, frame.top() - frame.unit() * 1.15, width, frame.unit() * 1.1, palette.accent(), OPAQUE);
        pen.text(clock, left + h / 2, frame.top() - frame.unit() * 1.1, Align.LEFT, Letters.SMALL, palette.paper());
    }
}
