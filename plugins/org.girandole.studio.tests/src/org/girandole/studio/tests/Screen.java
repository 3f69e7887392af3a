package org.girandole.studio.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;

/** A window as pixels. With {@code SCREENSHOTS=1} in the environment it can be kept among the pictures of the documentation. */
final class Screen {
    private static final int NEAR = 24;

    private final ImageData data;
    private final Point origin;

    private Screen(ImageData data, Point origin) {
        this.data = data;
        this.origin = origin;
    }

    /** The window as it is on the display now, all that had to be painted being painted. */
    static Screen now() {
        Shell shell = Ui.window().getShell();
        Ui.settle();
        shell.update();
        Ui.settle();
        Rectangle area = shell.getBounds();
        Rectangle inside = shell.getClientArea();
        // Without frame, with the menu.
        area.width = inside.width;
        area.height = shell.toDisplay(0, 0).y - area.y + inside.height;
        Image image = new Image(shell.getDisplay(), area.width, area.height);
        GC gc = new GC(shell.getDisplay());
        try {
            gc.copyArea(image, area.x, area.y);
            return new Screen(image.getImageData(), new Point(area.x, area.y));
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    /** Where a part of a control is in this picture. */
    Rectangle place(Control control, Rectangle part) {
        Point at = control.toDisplay(part.x, part.y);
        return new Rectangle(at.x - origin.x, at.y - origin.y, part.width, part.height);
    }

    Rectangle place(Control control) {
        Point size = control.getSize();
        return place(control, new Rectangle(0, 0, size.x, size.y));
    }

    /** Pixels of a region that are as wanted. */
    int count(Rectangle region, IntPredicate wanted) {
        Rectangle inside = region.intersection(new Rectangle(0, 0, data.width, data.height));
        int count = 0;
        for (int y = inside.y; y < inside.y + inside.height; y++) {
            for (int x = inside.x; x < inside.x + inside.width; x++) {
                count += wanted.test(rgb(data.palette.getRGB(data.getPixel(x, y)))) ? 1 : 0;
            }
        }
        return count;
    }

    /** The share of a region's pixels that are as wanted, 0 to 1. */
    double share(Rectangle region, IntPredicate wanted) {
        return count(region, wanted) / (double) (region.width * region.height);
    }

    static int rgb(RGB colour) {
        return colour.red << 16 | colour.green << 8 | colour.blue;
    }

    /** Whether a pixel is close to a colour. */
    static IntPredicate near(int colour) {
        return pixel -> Math.abs((pixel >> 16 & 0xFF) - (colour >> 16 & 0xFF)) < NEAR && Math.abs((pixel >> 8 & 0xFF) - (colour >> 8 & 0xFF)) < NEAR
                && Math.abs((pixel & 0xFF) - (colour & 0xFF)) < NEAR;
    }

    /** Keeps it for the documentation, if asked to. */
    void keep(String name) throws java.io.IOException {
        if ("1".equals(System.getenv("SCREENSHOTS"))) {
            Path folder = Files.createDirectories(Path.of(System.getProperty("girandole.images")));
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {data};
            loader.save(folder.resolve(name + ".png").toString(), SWT.IMAGE_PNG);
        }
    }

    /** The first control of a kind in the window that is visible. */
    static <T extends Control> T find(Class<T> kind) {
        List<Control> all = new ArrayList<>();
        collect(Ui.window().getShell(), all);
        return all.stream().filter(kind::isInstance).map(kind::cast).findFirst()
                .orElseThrow(() -> new AssertionError("no " + kind.getSimpleName()));
    }

    private static void collect(Control control, List<Control> all) {
        all.add(control);
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                collect(child, all);
            }
        }
    }
}
