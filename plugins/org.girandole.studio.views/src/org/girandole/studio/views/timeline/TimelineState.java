package org.girandole.studio.views.timeline;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.girandole.protocol.CueView;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.stage.Stage;

/** What the timeline shows and how keys and clicks change it. Knows no toolkit. */
public final class TimelineState {
    private static final double ZOOM = 1.5;
    private static final double PAGE = 0.8;
    /** How near to a sign a click must be, in lines of letters. */
    private static final double REACH = 0.6;

    private final Stage stage;
    private Score score;
    private Window window;
    private Wave wave;
    private Frame frame;
    private boolean fitted = true;

    public TimelineState(Stage stage) {
        this.stage = stage;
        wave = new Wave(stage.wave());
        score = Score.of(stage.plan(), stage.track());
        window = Window.whole(score, 1);
    }

    public Score score() {
        return score;
    }

    public Window window() {
        return window;
    }

    public Wave wave() {
        return wave;
    }

    public Frame frame() {
        return frame;
    }

    /** The drawing has another size. The whole stays the whole, a stretch stays as it is. */
    public void arrange(Frame arranged) {
        frame = arranged;
        window = (fitted ? whole() : window.zoomed(1, 0, score, width())).scrolledBy(0, lanesHeight(), frame.room());
    }

    /** Takes in what has changed on the stage. */
    public void changed(Stage.Change change) {
        switch (change) {
            case SHOW, TRACK -> {
                boolean other = change == Stage.Change.TRACK
                        || !score.track().map(TrackView::name).equals(stage.track().map(TrackView::name));
                score = Score.of(stage.plan(), stage.track());
                wave = new Wave(stage.wave());
                fitted |= other;
                if (frame != null) {
                    arrange(frame);
                }
            }
            case WAVE -> wave = new Wave(stage.wave());
            case SELECTION -> stage.selected().ifPresent(this::bringIntoView);
            case PLAYHEAD -> {
                if (stage.playing() && !fitted) {
                    window = window.showing(stage.playheadUs(), score, width());
                }
            }
            default -> {
                // Whether it plays changes nothing here.
            }
        }
    }

    private double width() {
        return frame == null ? 1 : frame.timeWidth();
    }

    private void bringIntoView(CueView cue) {
        if (frame == null) {
            return;
        }
        window = fitted ? window : window.showing(cue.burstUs(), score, width());
        int lane = score.laneOf(cue);
        double above = frame.top() - frame.laneTop(lane, window);
        double below = frame.laneTop(lane, window) + frame.laneHeight() - frame.bottom();
        window = window.scrolledBy(above > 0 ? -above : Math.max(0, below), lanesHeight(), frame.room());
    }

    /** Closer about the selection, or the playhead. */
    public void zoomIn() {
        zoom(1 / ZOOM, focusPx());
    }

    public void zoomOut() {
        zoom(ZOOM, focusPx());
    }

    /** @param aboutPx pixels from the left edge of the time */
    public void zoom(double factor, double aboutPx) {
        window = window.zoomed(factor, aboutPx, score, width());
        fitted = window.usPerPx() >= Window.whole(score, width()).usPerPx();
    }

    /** The whole soundtrack. */
    public void fit() {
        fitted = true;
        window = whole();
    }

    /** The whole soundtrack, with the lanes where they are. */
    private Window whole() {
        Window whole = Window.whole(score, width());
        return new Window(whole.fromUs(), whole.usPerPx(), window.top());
    }

    private double focusPx() {
        double x = window.x(stage.selected().map(CueView::burstUs).orElse(stage.playheadUs()));
        return x < 0 || x > width() ? width() / 2 : x;
    }

    public void scroll(double px) {
        window = window.movedBy(px, score, width());
    }

    public void page(int direction) {
        scroll(direction * width() * PAGE);
    }

    /** How much room all lanes take, seen or not. */
    public double lanesHeight() {
        return frame == null ? 0 : frame.laneHeight() * score.lanes().size();
    }

    public void scrollLanes(double px) {
        if (frame == null) {
            return;
        }
        window = window.scrolledBy(px, lanesHeight(), frame.room());
    }

    /** Selects the next cue of the lane in time, or the one before; without a selection the first after the playhead. */
    public void step(int direction) {
        Optional<CueView> selected = stage.selected();
        if (selected.isEmpty()) {
            Stream<Glyph> all = score.lanes().stream().flatMap(lane -> lane.glyphs().stream());
            all.filter(glyph -> glyph.burstUs() >= stage.playheadUs()).min(Comparator.comparingLong(Glyph::burstUs)).ifPresent(this::select);
            return;
        }
        List<Glyph> glyphs = score.lanes().get(score.laneOf(selected.get())).glyphs();
        int next = glyphs.indexOf(score.glyphOf(selected.get()).orElse(null)) + direction;
        if (next >= 0 && next < glyphs.size()) {
            select(glyphs.get(next));
        }
    }

    /** Selects the cue nearest in time in the next lane that has one. */
    public void stepLane(int direction) {
        Optional<CueView> selected = stage.selected();
        if (selected.isEmpty()) {
            step(1);
            return;
        }
        long us = selected.get().burstUs();
        for (int lane = score.laneOf(selected.get()) + direction; lane >= 0 && lane < score.lanes().size(); lane += direction) {
            Optional<Glyph> nearest = score.lanes().get(lane).glyphs().stream().min(Comparator.comparingLong(glyph -> Math.abs(glyph.burstUs() - us)));
            if (nearest.isPresent()) {
                select(nearest.get());
                return;
            }
        }
    }

    /** Selects the next cue with a finding that nobody agreed to, after the selected one; from the last on to the first. */
    public void nextFinding() {
        Predicate<Glyph> open = glyph -> !glyph.severity().isEmpty() && !glyph.severity().equals(Glyph.WAIVED);
        List<Glyph> found = score.lanes().stream().flatMap(lane -> lane.glyphs().stream()).filter(open)
                .sorted(Comparator.comparingInt(glyph -> glyph.cue().number())).toList();
        int after = stage.selected().map(CueView::number).orElse(0);
        found.stream().filter(glyph -> glyph.cue().number() > after).findFirst().or(() -> found.stream().findFirst()).ifPresent(this::select);
    }

    private void select(Glyph glyph) {
        stage.select(glyph.cue().number());
    }

    /** The glyph at a point of the drawing: the nearest whose sign, foot or line is within reach. */
    public Optional<Glyph> at(double px, double py) {
        if (frame == null || px < frame.left() || py < frame.top() || py >= frame.bottom()) {
            return Optional.empty();
        }
        int index = (int) Math.floor((py - frame.top() + window.top()) / frame.laneHeight());
        if (index < 0 || index >= score.lanes().size()) {
            return Optional.empty();
        }
        double reach = frame.unit() * REACH;
        long from = window.us(px - frame.left() - reach);
        long to = window.us(px - frame.left() + reach);
        return score.lanes().get(index).between(from, to).stream().filter(glyph -> distance(glyph, index, px, py) <= reach)
                .min(Comparator.comparingDouble(glyph -> distance(glyph, index, px, py)));
    }

    private double distance(Glyph glyph, int lane, double px, double py) {
        double footX = frame.left() + window.x(glyph.fireUs());
        double topX = frame.left() + window.x(glyph.burstUs());
        double footY = frame.floor(lane, window);
        double topY = glyph.rises() ? frame.sky(lane, window) : frame.low(lane, window);
        double dx = topX - footX;
        double dy = topY - footY;
        double along = Math.max(0, Math.min(1, ((px - footX) * dx + (py - footY) * dy) / Math.max(1e-9, dx * dx + dy * dy)));
        return Math.hypot(px - footX - along * dx, py - footY - along * dy);
    }

    /** The moment at a point of the ruler, the waveform or the overview; empty elsewhere. */
    public Optional<Long> momentAt(double px, double py) {
        if (frame == null || px < frame.left()) {
            return Optional.empty();
        }
        if (py >= frame.overviewTop() && py < frame.overviewTop() + frame.overviewHeight()) {
            return Optional.of(Window.whole(score, width()).us(px - frame.left()));
        }
        return py < frame.top() ? Optional.of(window.us(px - frame.left())) : Optional.empty();
    }

    /** Puts the playhead, kept inside of the soundtrack, and shows where it is. */
    public void seek(long us) {
        stage.playhead(Math.max(score.fromUs(), Math.min(score.toUs(), us)));
        if (!fitted && frame != null) {
            window = window.showing(stage.playheadUs(), score, width());
        }
    }
}
