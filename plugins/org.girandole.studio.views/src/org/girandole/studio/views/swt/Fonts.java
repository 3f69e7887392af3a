package org.girandole.studio.views.swt;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Device;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.girandole.studio.views.draw.Pen.Letters;

/** Letters in the sizes of the drawings, all from one font of the platform; a larger font there gives larger drawings. */
final class Fonts {
    private static final int MOST_WIDTHS = 5_000;

    private final Map<Letters, Font> fonts = new EnumMap<>(Letters.class);
    private final Map<Letters, Integer> heights = new EnumMap<>(Letters.class);
    private final Map<Letters, Map<String, Integer>> widths = new EnumMap<>(Letters.class);

    /** @param scale 1 for the size of the given font, 2 for twice that */
    Fonts(Device device, Font base, double scale, GC measuring) {
        for (Letters size : Letters.values()) {
            FontData[] data = Arrays.stream(base.getFontData()).map(each -> new FontData(each.getName(),
                    Math.max(6, (int) Math.round(each.getHeight() * scale * factor(size))), bold(size) ? SWT.BOLD : SWT.NORMAL)).toArray(FontData[]::new);
            Font font = new Font(device, data);
            measuring.setFont(font);
            fonts.put(size, font);
            heights.put(size, measuring.getFontMetrics().getHeight());
            widths.put(size, new HashMap<>());
        }
    }

    private static double factor(Letters size) {
        return switch (size) {
            case SMALL -> 0.88;
            case NORMAL, BOLD -> 1;
            case LARGE -> 1.3;
        };
    }

    private static boolean bold(Letters size) {
        return size == Letters.BOLD || size == Letters.LARGE;
    }

    Font font(Letters size) {
        return fonts.get(size);
    }

    int height(Letters size) {
        return heights.get(size);
    }

    /** Width of a text; measured once, for measuring costs more than drawing. */
    int width(GC gc, String text, Letters size, Runnable use) {
        Map<String, Integer> known = widths.get(size);
        Integer width = known.get(text);
        if (width == null) {
            use.run();
            width = gc.textExtent(text, SWT.DRAW_TRANSPARENT).x;
            if (known.size() > MOST_WIDTHS) {
                known.clear();
            }
            known.put(text, width);
        }
        return width;
    }

    void dispose() {
        fonts.values().forEach(Font::dispose);
    }
}
