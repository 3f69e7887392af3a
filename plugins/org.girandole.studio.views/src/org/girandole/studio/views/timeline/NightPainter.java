package org.girandole.studio.views.timeline;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.girandole.protocol.CueView;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.RehearsalView.Ending;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Align;
import org.girandole.studio.views.draw.Pen.Letters;
import org.girandole.studio.views.draw.Pen.Stroke;

/**
 * Draws a rehearsed night over the show: when there was no timecode, when the control was released, what the controller said, which cues
 * were not fired, and where the others were seen instead. Words and shapes say it; colours only help.
 */
public final class NightPainter {
    private static final int OPAQUE = 255;
    private static final int VEIL = 30;
    private static final double SEEN_PX = 2;
    private static final double US_PER_MS = 1000;

    private final Pen pen;
    private final Palette palette;
    private final RehearsalView night;
    private final Score score;
    private final Window window;
    private final Frame frame;
    private final Map<Integer, Ending> endings = new HashMap<>();

    public NightPainter(Pen pen, Palette palette, RehearsalView night, Score score, Window window, Frame frame) {
        this.pen = pen;
        this.palette = palette;
        this.night = night;
        this.score = score;
        this.window = window;
        this.frame = frame;
        night.cues().forEach(cue -> endings.put(cue.number(), cue));
    }

    /** Draws it, if it is a night of the soundtrack shown. */
    public void paint() {
        if (night.nothing() != null || score.track().filter(track -> track.name().equals(night.track())).isEmpty()) {
            return;
        }
        pen.clip(frame.left(), frame.top(), frame.timeWidth(), frame.room());
        night.lost().forEach(stretch -> stretch(stretch, "NO TIMECODE", palette.error(), 0));
        night.released().forEach(stretch -> stretch(stretch, "RELEASED", palette.warning(), 1));
        for (int lane = 0; lane < score.lanes().size(); lane++) {
            for (Glyph glyph : score.lanes().get(lane).between(window.fromUs(), window.us(frame.timeWidth()))) {
                ending(lane, glyph);
            }
        }
        pen.unclip();
        states();
    }

    private double x(long us) {
        return frame.left() + window.x(us);
    }

    private void stretch(RehearsalView.Stretch stretch, String words, int colour, int row) {
        double from = x(stretch.fromUs());
        double to = x(stretch.toUs());
        pen.rectangle(from, frame.top(), to - from, frame.room(), colour, VEIL);
        pen.line(from, frame.top(), from, frame.bottom(), colour, OPAQUE, 2, Stroke.DASHED);
        pen.line(to, frame.top(), to, frame.bottom(), colour, OPAQUE, 2, Stroke.DASHED);
        double left = Math.max(frame.left(), from);
        double top = frame.top() + frame.unit() * (0.1 + row * 1.2);
        pen.rectangle(left, top, pen.width(words, Letters.SMALL) + frame.unit() * 0.6, frame.unit() * 1.1, palette.paper(), OPAQUE);
        pen.text(words, left + frame.unit() * 0.3, top, Align.LEFT, Letters.SMALL, colour);
    }

    /** A strip above the lanes. While it is locked there is only a line: that is how it should be. */
    private void states() {
        double height = frame.unit() * 1.1;
        double top = frame.top() - height;
        pen.clip(frame.left(), top, frame.timeWidth(), height);
        for (RehearsalView.Said said : night.states()) {
            double from = x(said.fromUs());
            double to = x(said.toUs());
            boolean locked = said.state().equals("locked");
            pen.rectangle(from, top, to - from, height, palette.paper(), OPAQUE);
            if (locked) {
                pen.line(from, top + height / 2, to, top + height / 2, palette.faint(), OPAQUE, 2, Stroke.SOLID);
            } else {
                pen.frame(from, top + 1, to - from, height - 2, palette.ink(), 1);
                String words = pen.fitted(said.state(), Math.min(to, frame.width()) - Math.max(from, frame.left()) - 4, Letters.SMALL);
                pen.text(words, Math.max(from, frame.left()) + 2, top + frame.unit() * 0.1, Align.LEFT, Letters.SMALL, palette.ink());
            }
        }
        pen.unclip();
    }

    private void ending(int lane, Glyph glyph) {
        List<Ending> ends = glyph.numbers().stream().map(endings::get).filter(end -> end != null).toList();
        Optional<Ending> unfired = ends.stream().filter(end -> !end.end().equals("fired")).findFirst();
        double y = glyph.rises() ? frame.sky(lane, window) : frame.low(lane, window);
        double at = x(glyph.burstUs());
        double r = frame.sign() * 1.3;
        if (unfired.isPresent()) {
            pen.line(at - r, y + r, at + r, y - r, palette.error(), OPAQUE, Math.max(2, frame.unit() / 7), Stroke.SOLID);
            // Held back by hand: a cross. Never due: one stroke.
            if (unfired.get().end().equals("suppressed")) {
                pen.line(at - r, y - r, at + r, y + r, palette.error(), OPAQUE, Math.max(2, frame.unit() / 7), Stroke.SOLID);
            }
            return;
        }
        ends.stream().filter(end -> end.lateUs() != null).findFirst().ifPresent(end -> {
            double seen = x(glyph.burstUs() + end.lateUs());
            if (Math.abs(seen - at) >= SEEN_PX) {
                pen.line(at, y, seen, y, palette.accent(), OPAQUE, 1.5, Stroke.DASHED);
                pen.ring(seen, y, frame.sign() * 0.8, palette.accent(), OPAQUE, 2, Stroke.DASHED);
            }
        });
    }

    /** What stands at the foot while a night is shown; empty when none is. */
    public static String words(RehearsalView night, String wanted, Optional<CueView> selected) {
        if (wanted.isEmpty()) {
            return "";
        }
        String name = "rehearsal '" + wanted + "'";
        if (night.nothing() != null) {
            return name + ": " + night.nothing() + "  \u2014  ";
        }
        Optional<Ending> end = selected.flatMap(cue -> night.cues().stream().filter(one -> one.number() == cue.number()).findFirst());
        String words = end.map(NightPainter::words).orElseGet(() -> counted(night, "suppressed") + ", " + counted(night, "skipped") + ", "
                + counted(night, "not loaded") + ", fired at most " + farthest(night));
        return name + ", clock " + night.clock() + ": " + words + "  \u2014  ";
    }

    private static String counted(RehearsalView night, String end) {
        return night.cues().stream().filter(cue -> cue.end().equals(end)).count() + " " + end;
    }

    private static String farthest(RehearsalView night) {
        return night.cues().stream().filter(cue -> cue.lateUs() != null).max((a, b) -> Long.compare(Math.abs(a.lateUs()), Math.abs(b.lateUs())))
                .map(cue -> late(cue.lateUs())).orElse("never");
    }

    private static String words(Ending end) {
        return end.lateUs() == null ? end.end().toUpperCase(Locale.ROOT) : "fired " + late(end.lateUs());
    }

    private static String late(long us) {
        return String.format(Locale.ROOT, "%.1f ms %s", Math.abs(us) / US_PER_MS, us < 0 ? "early" : "late");
    }
}
