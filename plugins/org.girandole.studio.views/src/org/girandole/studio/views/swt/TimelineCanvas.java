package org.girandole.studio.views.swt;

import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ScrollBar;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.stage.Transport;
import org.girandole.studio.views.stage.Words;
import org.girandole.studio.views.timeline.Frame;
import org.girandole.studio.views.timeline.NightPainter;
import org.girandole.studio.views.timeline.TimelinePainter;
import org.girandole.studio.views.timeline.TimelineState;

/** The timeline on the screen. All but the playhead is kept as a picture until something else changes. */
public final class TimelineCanvas extends DrawnCanvas {
    private static final double WHEEL_ZOOM = 1.2;
    private static final int WHEEL_PX = 60;

    private final Stage stage;
    private final Transport transport;
    private final TimelineState state;
    private final Consumer<SourcePlace> reveal;
    private final Consumer<String> render;
    private final Stage.Listener listener = this::changed;
    private Image kept;
    private Palette keptPalette;
    private Point keptSize;
    private Point dragged;
    private boolean seeking;
    private TimelinePainter painter;

    /**
     * @param reveal shows a line of a script in an editor
     * @param render plays a piece, given by its URI, into the recording that is missing
     */
    public TimelineCanvas(Composite parent, Stage stage, Transport transport, Consumer<SourcePlace> reveal, Consumer<String> render) {
        super(parent, SWT.V_SCROLL);
        this.stage = stage;
        this.transport = transport;
        this.reveal = reveal;
        this.render = render;
        state = new TimelineState(stage);
        stage.listen(listener);
        addListener(SWT.Dispose, event -> {
            stage.unlisten(listener);
            forget();
        });
        addListener(SWT.MouseDown, this::mouseDown);
        addListener(SWT.MouseMove, this::mouseMove);
        addListener(SWT.MouseUp, event -> dragged = null);
        addListener(SWT.MouseDoubleClick, event -> revealSelected());
        addListener(SWT.MouseWheel, this::wheel);
        getVerticalBar().addListener(SWT.Selection, event -> {
            state.scrollLanes(getVerticalBar().getSelection() - state.window().top());
            forget();
            redraw();
        });
    }

    /** What it shows, for keys and tests. */
    public TimelineState state() {
        return state;
    }

    @Override
    protected String title() {
        return "Timeline";
    }

    @Override
    protected String description() {
        return "Playhead at " + Words.clock(stage.playheadUs()) + ". " + status();
    }

    private String status() {
        return NightPainter.words(stage.night(), stage.rehearsed(), stage.selected()) + TimelinePainter.status(stage.plan(), stage.selected());
    }

    @Override
    protected String keys() {
        return "Left and right: cue before and after. Up and down: lane. Plus and minus: zoom. 0: whole show. Enter: go to the line."
                + " Space: play and stop. Page up and down: scroll. Home and End: to the ends. F: next finding. T: next soundtrack. R: next rehearsal."
                + " M: play the soundtrack's MIDI file into the missing recording.";
    }

    @Override
    protected void draw(Pen pen, Palette palette, Point size) {
        paintAll(pen, palette, size);
        playhead(pen, palette);
    }

    private void playhead(Pen pen, Palette palette) {
        if (state.score().track().isPresent()) {
            TimelinePainter.playhead(pen, palette, state.window(), state.frame(), stage.playheadUs());
        }
    }

    private void paintAll(Pen pen, Palette palette, Point size) {
        state.arrange(Frame.of(pen, size.x, size.y, state.score().lanes().size()));
        painter = new TimelinePainter(pen, palette, stage.plan(), state.score(), state.window(), state.frame());
        painter.paint(state.wave(), stage.selected(), status());
        new NightPainter(pen, palette, stage.night(), state.score(), state.window(), state.frame()).paint();
    }

    /** While the show plays only the playhead moves: the rest comes from a picture. */
    @Override
    protected void drawOnScreen(GC gc, Pen pen, Palette palette, Point size) {
        if (!stage.playing()) {
            forget();
            draw(pen, palette, size);
            bar();
            return;
        }
        if (kept == null || !size.equals(keptSize) || keptPalette != palette) {
            forget();
            kept = new Image(getDisplay(), size.x, size.y);
            keptSize = size;
            keptPalette = palette;
            GC on = new GC(kept);
            paintAll(pen(on), palette, size);
            on.dispose();
        }
        gc.drawImage(kept, 0, 0);
        playhead(pen, palette);
    }

    /** The scroll bar is there when there are more lanes than fit. */
    private void bar() {
        int all = (int) Math.ceil(state.lanesHeight());
        int room = (int) Math.max(1, state.frame().room());
        ScrollBar bar = getVerticalBar();
        if (all > room + 1) {
            int lane = (int) Math.max(1, state.frame().laneHeight());
            bar.setValues((int) Math.round(state.window().top()), 0, all, room, lane, Math.max(lane, room - lane));
        }
        if (bar.getVisible() != all > room + 1) {
            bar.setVisible(all > room + 1);
        }
    }

    private void forget() {
        if (kept != null) {
            kept.dispose();
            kept = null;
        }
    }

    private void changed(Stage.Change change) {
        if (isDisposed()) {
            return;
        }
        var before = state.window();
        state.changed(change);
        if (change != Stage.Change.PLAYHEAD || !before.equals(state.window())) {
            forget();
        }
        redraw();
    }

    @Override
    protected boolean key(Event event) {
        forget();
        if (state.frame() == null) {
            return false;
        }
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> state.step(-1);
            case SWT.ARROW_RIGHT -> state.step(1);
            case SWT.ARROW_UP -> state.stepLane(-1);
            case SWT.ARROW_DOWN -> state.stepLane(1);
            case SWT.PAGE_UP -> state.page(-1);
            case SWT.PAGE_DOWN -> state.page(1);
            case SWT.HOME -> state.seek(state.score().fromUs());
            case SWT.END -> state.seek(state.score().toUs());
            case SWT.CR, SWT.KEYPAD_CR -> revealSelected();
            default -> {
                return character(event.character);
            }
        }
        return true;
    }

    private boolean character(char character) {
        switch (Character.toLowerCase(character)) {
            case '+', '=' -> state.zoomIn();
            case '-' -> state.zoomOut();
            case '0' -> state.fit();
            case ' ' -> transport.toggle();
            case 'f' -> state.nextFinding();
            case 't' -> stage.nextTrack();
            case 'r' -> stage.nextRehearsal();
            case 'm' -> renderPiece();
            default -> {
                return false;
            }
        }
        return true;
    }

    private void revealSelected() {
        stage.selected().ifPresent(cue -> reveal.accept(cue.source()));
    }

    /** Plays the piece of the soundtrack into the missing recording, if there is one to play. */
    public void renderPiece() {
        stage.track().map(TrackView::piece).ifPresent(render);
    }

    private void mouseDown(Event event) {
        if (painter != null && painter.offers(event.x, event.y)) {
            renderPiece();
            return;
        }
        dragged = new Point(event.x, event.y);
        seeking = state.momentAt(event.x, event.y).isPresent();
        if (seeking) {
            state.momentAt(event.x, event.y).ifPresent(transport::seek);
            return;
        }
        state.at(event.x, event.y).ifPresent(glyph -> {
            stage.select(glyph.cue().number());
            reveal.accept(glyph.cue().source());
        });
    }

    private void mouseMove(Event event) {
        if (dragged == null) {
            setCursor(painter != null && painter.offers(event.x, event.y) ? getDisplay().getSystemCursor(SWT.CURSOR_HAND) : null);
            state.at(event.x, event.y).ifPresentOrElse(glyph -> setToolTipText(Words.cue(glyph.cue())), () -> setToolTipText(null));
            return;
        }
        if (seeking) {
            state.momentAt(event.x, dragged.y).ifPresent(transport::seek);
        } else {
            state.scroll(dragged.x - event.x);
            state.scrollLanes(dragged.y - event.y);
            dragged = new Point(event.x, event.y);
            forget();
            redraw();
        }
    }

    private void wheel(Event event) {
        Rectangle area = getClientArea();
        if (state.frame() == null || area.isEmpty()) {
            return;
        }
        // Else the scroll bar would take it too.
        event.doit = false;
        if ((event.stateMask & SWT.MOD1) != 0) {
            state.zoom(event.count > 0 ? 1 / WHEEL_ZOOM : WHEEL_ZOOM, event.x - state.frame().left());
        } else if ((event.stateMask & SWT.SHIFT) != 0) {
            state.scrollLanes(-Integer.signum(event.count) * WHEEL_PX);
        } else {
            state.scroll(-Integer.signum(event.count) * WHEEL_PX);
        }
        forget();
        redraw();
    }
}
