package org.girandole.studio.views.timeline;

import java.util.Base64;
import org.girandole.protocol.WaveView;
import org.girandole.studio.views.draw.Palette;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Stroke;

/** A waveform unpacked for drawing. */
public final class Wave {
    private static final int FULL_SCALE = 127;
    private static final int OPAQUE = 255;

    private final long columnUs;
    private final byte[] low;
    private final byte[] high;
    private final byte[] rms;

    public Wave(WaveView view) {
        columnUs = Math.max(1, view.columnUs());
        low = Base64.getDecoder().decode(view.low());
        high = Base64.getDecoder().decode(view.high());
        rms = Base64.getDecoder().decode(view.rms());
    }

    public boolean empty() {
        return high.length == 0;
    }

    /** Draws what is in the window: the reach of the samples, and within it how loud it is. */
    void paint(Pen pen, Palette palette, Window window, double left, double width, double middle, double half) {
        int pixels = (int) width;
        for (int px = 0; px < pixels; px++) {
            int from = (int) Math.floorDiv(window.us(px), columnUs);
            int to = Math.max(from + 1, (int) Math.floorDiv(window.us(px + 1), columnUs));
            if (to <= 0 || from >= high.length) {
                continue;
            }
            int top = Byte.MIN_VALUE;
            int bottom = Byte.MAX_VALUE;
            int loud = 0;
            for (int i = Math.max(0, from); i < Math.min(to, high.length); i++) {
                top = Math.max(top, high[i]);
                bottom = Math.min(bottom, low[i]);
                loud = Math.max(loud, rms[i]);
            }
            double x = left + px + 0.5;
            pen.line(x, middle - half * top / FULL_SCALE, x, middle - half * bottom / FULL_SCALE, palette.wave(), 130, 1, Stroke.SOLID);
            pen.line(x, middle - half * loud / FULL_SCALE, x, middle + half * loud / FULL_SCALE, palette.wave(), OPAQUE, 1, Stroke.SOLID);
        }
    }
}
