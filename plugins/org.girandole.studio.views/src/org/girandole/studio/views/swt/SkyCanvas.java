package org.girandole.studio.views.swt;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.sky.Flights;
import org.girandole.studio.views.sky.SkyPainter;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.stage.Transport;
import org.girandole.studio.views.stage.Words;

/** The sky on the screen. */
public final class SkyCanvas extends DrawnCanvas {
    private static final long STEP_US = 100_000;
    private static final long JUMP_US = 5_000_000;

    private final Stage stage;
    private final Transport transport;
    private final Stage.Listener listener = this::changed;
    private SiteView site = SiteView.nothing("", "");
    private Flights flights;

    public SkyCanvas(Composite parent, Stage stage, Transport transport) {
        super(parent, SWT.NONE);
        this.stage = stage;
        this.transport = transport;
        flights = new Flights(stage.plan(), stage.track());
        stage.listen(listener);
        addListener(SWT.Dispose, event -> stage.unlisten(listener));
    }

    /** Where the positions are and which way the audience looks. */
    public void site(SiteView shown) {
        site = shown;
        redraw();
    }

    @Override
    protected String title() {
        return "Sky";
    }

    @Override
    protected String description() {
        return SkyPainter.description(flights, stage.playheadUs());
    }

    @Override
    protected String keys() {
        return "Space: play and stop. Left and right: a tenth of a second back and on. Page up and down: five seconds. At " + Words.clock(stage.playheadUs());
    }

    @Override
    protected void draw(Pen pen, Palette palette, Point size) {
        new SkyPainter(pen, palette, stage.plan(), site, flights, size.x, size.y).paint(stage.playheadUs(), stage.selected().map(cue -> cue.number()).orElse(0));
    }

    private void changed(Stage.Change change) {
        if (isDisposed()) {
            return;
        }
        if (change == Stage.Change.SHOW || change == Stage.Change.TRACK) {
            flights = new Flights(stage.plan(), stage.track());
        }
        redraw();
    }

    @Override
    protected boolean key(Event event) {
        long us = stage.playheadUs();
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> transport.seek(us - STEP_US);
            case SWT.ARROW_RIGHT -> transport.seek(us + STEP_US);
            case SWT.PAGE_UP -> transport.seek(us - JUMP_US);
            case SWT.PAGE_DOWN -> transport.seek(us + JUMP_US);
            case SWT.HOME -> transport.seek(0);
            default -> {
                if (event.character != ' ') {
                    return false;
                }
                transport.toggle();
            }
        }
        return true;
    }
}
