package org.girandole.studio.views.swt;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.IntPredicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.girandole.studio.views.HarbourNight;

/** A drawing as pixels. With {@code SCREENSHOTS=1} in the environment it can be kept among the pictures of the documentation. */
final class Pictures {
    private static final int NEAR = 24;

    private final ImageData data;

    private Pictures(ImageData data) {
        this.data = data;
    }

    static Pictures of(DrawnCanvas canvas, int width, int height) {
        Image image = canvas.picture(width, height);
        try {
            return new Pictures(image.getImageData());
        } finally {
            image.dispose();
        }
    }

    int width() {
        return data.width;
    }

    int height() {
        return data.height;
    }

    int at(int x, int y) {
        var rgb = data.palette.getRGB(data.getPixel(x, y));
        return rgb.red << 16 | rgb.green << 8 | rgb.blue;
    }

    /** Pixels of a region that are as wanted. */
    int count(double x, double y, double width, double height, IntPredicate wanted) {
        int count = 0;
        for (int py = Math.max(0, (int) y); py < Math.min(data.height, (int) (y + height)); py++) {
            for (int px = Math.max(0, (int) x); px < Math.min(data.width, (int) (x + width)); px++) {
                count += wanted.test(at(px, py)) ? 1 : 0;
            }
        }
        return count;
    }

    /** Pixels that differ from another picture of the same size. */
    int different(Pictures other, double x, double y, double width, double height) {
        int count = 0;
        for (int py = (int) y; py < Math.min(data.height, (int) (y + height)); py++) {
            for (int px = (int) x; px < Math.min(data.width, (int) (x + width)); px++) {
                count += at(px, py) == other.at(px, py) ? 0 : 1;
            }
        }
        return count;
    }

    /** Whether a pixel is close to a colour. */
    static IntPredicate near(int colour) {
        return pixel -> Math.abs((pixel >> 16 & 0xFF) - (colour >> 16 & 0xFF)) < NEAR && Math.abs((pixel >> 8 & 0xFF) - (colour >> 8 & 0xFF)) < NEAR
                && Math.abs((pixel & 0xFF) - (colour & 0xFF)) < NEAR;
    }

    /** Keeps it for the documentation, if asked to. */
    void keep(String name) throws IOException {
        if ("1".equals(System.getenv("SCREENSHOTS"))) {
            Path folder = Files.createDirectories(HarbourNight.root().resolve("docs").resolve("images"));
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {data};
            loader.save(folder.resolve(name + ".png").toString(), SWT.IMAGE_PNG);
        }
    }
}
