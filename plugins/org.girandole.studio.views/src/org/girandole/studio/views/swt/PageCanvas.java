package org.girandole.studio.views.swt;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.sheets.SheetsState;

/** One page of paper, which can be moved when it is larger than the view. */
public final class PageCanvas extends DrawnCanvas {
    private static final int STEP_PX = 60;
    private static final int MARGIN_PX = 12;

    private final SheetsState state;
    private final Runnable moved;
    private Image picture;
    private int left;
    private int top;
    private Point dragged;

    PageCanvas(Composite parent, SheetsState state, Runnable moved) {
        super(parent, SWT.NONE);
        this.state = state;
        this.moved = moved;
        addListener(SWT.Dispose, event -> picture(null));
        addListener(SWT.MouseDown, event -> dragged = new Point(event.x, event.y));
        addListener(SWT.MouseUp, event -> dragged = null);
        addListener(SWT.MouseMove, this::drag);
        addListener(SWT.MouseWheel, event -> {
            top += Integer.signum(event.count) * STEP_PX;
            redraw();
        });
    }

    void picture(Image image) {
        if (picture != null) {
            picture.dispose();
        }
        picture = image;
    }

    /** Width in pixels that a page should have. */
    public int wantedWidthPx() {
        int room = Math.max(100, getClientArea().width - 2 * MARGIN_PX);
        return (int) Math.round(room * state.zoom());
    }

    @Override
    protected String title() {
        return "Page";
    }

    @Override
    protected String description() {
        return state.words();
    }

    @Override
    protected String keys() {
        return "Page up and down: pages. Arrows: move. Plus and minus: larger and smaller. 0: as wide as the view.";
    }

    @Override
    protected void draw(Pen pen, Palette palette, Point size) {
        pen.rectangle(0, 0, size.x, size.y, palette.band(), 255);
        if (picture == null || state.page().nothing() != null) {
            pen.middle(state.words(), size.x, size.y, palette.faint());
        }
    }

    @Override
    protected void drawOnScreen(GC gc, Pen pen, Palette palette, Point size) {
        draw(pen, palette, size);
        drawPage(gc, pen, palette, size);
    }

    @Override
    public Image picture(int width, int height) {
        Image image = super.picture(width, height);
        GC gc = new GC(image);
        drawPage(gc, pen(gc), palette(), new Point(width, height));
        gc.dispose();
        return image;
    }

    private void drawPage(GC gc, Pen pen, Palette palette, Point size) {
        if (picture == null || state.page().nothing() != null) {
            return;
        }
        Rectangle page = picture.getBounds();
        int width = (int) Math.round((size.x - 2 * MARGIN_PX) * state.zoom());
        int height = width * page.height / page.width;
        left = within(left, size.x - 2 * MARGIN_PX - width);
        top = within(top, size.y - 2 * MARGIN_PX - height);
        int x = MARGIN_PX + (width < size.x - 2 * MARGIN_PX ? (size.x - 2 * MARGIN_PX - width) / 2 : left);
        gc.setAlpha(255);
        gc.setInterpolation(SWT.HIGH);
        gc.drawImage(picture, 0, 0, page.width, page.height, x, MARGIN_PX + top, width, height);
        pen.frame(x, MARGIN_PX + top, width, height, palette.faint(), 1);
    }

    private static int within(int value, int room) {
        return Math.max(Math.min(0, room), Math.min(0, value));
    }

    private void drag(Event event) {
        if (dragged != null) {
            left += event.x - dragged.x;
            top += event.y - dragged.y;
            dragged = new Point(event.x, event.y);
            redraw();
        }
    }

    @Override
    protected boolean key(Event event) {
        switch (event.keyCode) {
            case SWT.PAGE_UP -> step(-1);
            case SWT.PAGE_DOWN -> step(1);
            case SWT.ARROW_UP -> top += STEP_PX;
            case SWT.ARROW_DOWN -> top -= STEP_PX;
            case SWT.ARROW_LEFT -> left += STEP_PX;
            case SWT.ARROW_RIGHT -> left -= STEP_PX;
            default -> {
                return character(event.character);
            }
        }
        moved.run();
        return true;
    }

    private void step(int direction) {
        state.step(direction);
        top = 0;
    }

    private boolean character(char character) {
        switch (character) {
            case '+', '=' -> state.zoom(1);
            case '-' -> state.zoom(-1);
            case '0' -> state.fit();
            default -> {
                return false;
            }
        }
        moved.run();
        return true;
    }
}
