package org.girandole.studio.views.swt;

import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.SourcePlace;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.site.SitePainter;
import org.girandole.studio.views.site.SiteState;
import org.girandole.studio.views.site.TriedWind;

/** The site on the screen. */
public final class SiteCanvas extends DrawnCanvas {
    private static final double ZOOM = 1.25;
    private static final double REACH = 12;
    private static final int STEP_PX = 40;

    private final SiteState state;
    private final Consumer<SourcePlace> reveal;
    private Point dragged;
    private boolean turning;

    /** @param reveal shows a line of a script in an editor */
    public SiteCanvas(Composite parent, TriedWind tried, Consumer<SourcePlace> reveal) {
        super(parent, SWT.NONE);
        state = new SiteState(tried);
        this.reveal = reveal;
        addListener(SWT.MouseDown, this::mouseDown);
        addListener(SWT.MouseMove, this::mouseMove);
        addListener(SWT.MouseUp, event -> dragged = null);
        addListener(SWT.MouseWheel, event -> {
            state.zoom(event.count > 0 ? ZOOM : 1 / ZOOM);
            redraw();
        });
    }

    /** What it shows, for keys and tests. */
    public SiteState state() {
        return state;
    }

    /** An answer has come. */
    public void site(SiteView site) {
        state.show(site);
        redraw();
    }

    @Override
    protected String title() {
        return "Site";
    }

    @Override
    protected String description() {
        return SitePainter.description(state);
    }

    @Override
    protected String keys() {
        return "Left and right: turn the wind. Up and down: stronger and weaker. S: the wind of the script. P and O: next position and the one before. L: all words, or few."
                + " Enter: go to the position's line. Plus and minus: zoom. 0: whole site. With Control the arrows move the plan.";
    }

    @Override
    protected void draw(Pen pen, Palette palette, Point size) {
        state.arrange(size.x, size.y, pen);
        new SitePainter(pen, palette, state).paint();
    }

    @Override
    protected boolean key(Event event) {
        int shift = (event.stateMask & SWT.MOD1) != 0 ? STEP_PX : 0;
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> moveOrTurn(shift, 0, -1, 0);
            case SWT.ARROW_RIGHT -> moveOrTurn(-shift, 0, 1, 0);
            case SWT.ARROW_UP -> moveOrTurn(0, shift, 0, 1);
            case SWT.ARROW_DOWN -> moveOrTurn(0, -shift, 0, -1);
            case SWT.CR, SWT.KEYPAD_CR -> state.selected().ifPresent(position -> reveal.accept(position.source()));
            case SWT.ESC -> state.selectNone();
            default -> {
                return character(event.character);
            }
        }
        return true;
    }

    private void moveOrTurn(int dx, int dy, int turns, int speeds) {
        if (dx != 0 || dy != 0) {
            state.move(dx, dy);
        } else {
            state.turnWind(turns, speeds);
        }
    }

    private boolean character(char character) {
        switch (Character.toLowerCase(character)) {
            case '+', '=' -> state.zoom(ZOOM);
            case '-' -> state.zoom(1 / ZOOM);
            case '0' -> state.fit();
            case 's' -> state.scriptWind();
            case 'l' -> state.fold();
            case 'p' -> state.stepPosition(1);
            case 'o' -> state.stepPosition(-1);
            default -> {
                return false;
            }
        }
        return true;
    }

    private void mouseDown(Event event) {
        dragged = new Point(event.x, event.y);
        turning = state.rose().holds(event.x, event.y);
        if (turning) {
            state.tryWind(state.rose().dragged(event.x, event.y, state.wind()));
        } else {
            state.at(event.x, event.y, REACH).ifPresentOrElse(position -> {
                state.selectPosition(position.name());
                reveal.accept(position.source());
            }, state::selectNone);
        }
        redraw();
    }

    private void mouseMove(Event event) {
        if (dragged == null) {
            return;
        }
        if (turning) {
            state.tryWind(state.rose().dragged(event.x, event.y, state.wind()));
        } else {
            state.move(event.x - dragged.x, event.y - dragged.y);
            dragged = new Point(event.x, event.y);
        }
        redraw();
    }
}
