package org.girandole.studio.views.swt;

import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;

/** A canvas that is drawn with a {@link Pen}, can be reached by keys, and says to assistive technology what it shows. */
public abstract class DrawnCanvas extends Canvas {
    private static final int HALF = 128;

    private Fonts fonts;
    private double scale = 1;
    private Boolean dark;

    /**
     * @param parent its colours decide between light and dark, unless {@link #dark} says otherwise
     * @param bars which scroll bars it has
     */
    protected DrawnCanvas(Composite parent, int bars) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND | bars);
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.Resize, event -> redraw());
        addListener(SWT.Dispose, event -> disposeFonts());
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.MouseDown, event -> setFocus());
        addListener(SWT.KeyDown, this::keyDown);
        addListener(SWT.Traverse, event -> {
            // Arrow keys are for what is drawn; Tab leaves the canvas as it leaves every other.
            event.doit = event.detail != SWT.TRAVERSE_ARROW_NEXT && event.detail != SWT.TRAVERSE_ARROW_PREVIOUS && event.detail != SWT.TRAVERSE_RETURN;
        });
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = title();
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = description();
            }

            @Override
            public void getHelp(AccessibleEvent event) {
                event.result = keys();
            }
        });
    }

    /** What it is called. */
    protected abstract String title();

    /** What it shows now, in a sentence. */
    protected abstract String description();

    /** Which keys do what. */
    protected abstract String keys();

    /** Draws everything. */
    protected abstract void draw(Pen pen, Palette palette, Point size);

    /** Draws on the screen: the same, unless a drawing knows a shorter way. */
    protected void drawOnScreen(GC gc, Pen pen, Palette palette, Point size) {
        draw(pen, palette, size);
    }

    /** A key was pressed; true if it was for the drawing. */
    protected abstract boolean key(Event event);

    /** Letters this many times as large as the platform's. */
    public void scale(double factor) {
        scale = factor;
        disposeFonts();
        redraw();
    }

    /** Light or dark, whatever the platform has. */
    public void dark(boolean darkly) {
        dark = darkly;
        redraw();
    }

    protected Palette palette() {
        if (dark != null) {
            return Palette.of(dark);
        }
        var ground = getParent().getBackground();
        return Palette.of((ground.getRed() * 3 + ground.getGreen() * 6 + ground.getBlue()) / 10 < HALF);
    }

    /** Draws on an image of this size, as it would on the screen. */
    public Image picture(int width, int height) {
        Image image = new Image(getDisplay(), width, height);
        GC gc = new GC(image);
        try {
            drawOn(gc, width, height);
        } finally {
            gc.dispose();
        }
        return image;
    }

    /** Draws on any surface of this size, as it would on the screen. */
    public void drawOn(GC gc, int width, int height) {
        draw(pen(gc), palette(), new Point(width, height));
    }

    /** A pen for measuring and drawing with the letters of this canvas. */
    protected Pen pen(GC gc) {
        if (fonts == null) {
            fonts = new Fonts(getDisplay(), getFont(), scale, gc);
        }
        return new SwtPen(gc, fonts);
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        if (area.width <= 0 || area.height <= 0) {
            return;
        }
        Palette palette = palette();
        Pen pen = pen(gc);
        drawOnScreen(gc, pen, palette, new Point(area.width, area.height));
        if (isFocusControl()) {
            pen.frame(0, 0, area.width - 1, area.height - 1, palette.accent(), 1);
        }
    }

    private void keyDown(Event event) {
        if (key(event)) {
            event.doit = false;
            redraw();
            // Who hears the drawing hears what the key has changed.
            getAccessible().sendEvent(ACC.EVENT_DESCRIPTION_CHANGED, null);
        }
    }

    private void disposeFonts() {
        if (fonts != null) {
            fonts.dispose();
            fonts = null;
        }
    }
}
