package org.girandole.studio.views.timeline;

import java.util.ArrayList;
import java.util.List;

/**
 * A position with what is fired from it, in firing order.
 *
 * @param position its name
 * @param known whether the site has it
 */
public final class Lane {
    private final String position;
    private final boolean known;
    private final List<Glyph> glyphs;
    private final int cues;
    private final long longestUs;

    Lane(String position, boolean known, List<Glyph> glyphs) {
        this.position = position;
        this.known = known;
        this.glyphs = List.copyOf(glyphs);
        this.cues = glyphs.stream().mapToInt(glyph -> glyph.numbers().size()).sum();
        this.longestUs = glyphs.stream().mapToLong(glyph -> glyph.endUs() - glyph.fireUs()).max().orElse(0);
    }

    public String position() {
        return position;
    }

    public boolean known() {
        return known;
    }

    public List<Glyph> glyphs() {
        return glyphs;
    }

    /** How many cues of the soundtrack are fired from here. */
    public int cues() {
        return cues;
    }

    /** What of it may be seen between two moments; found by halving, so that its cost does not grow with the show. */
    public List<Glyph> between(long fromUs, long toUs) {
        return glyphs.subList(first(fromUs - longestUs), first(toUs + 1));
    }

    /** Index of the first glyph that is fired then or later. */
    int first(long us) {
        int low = 0;
        int high = glyphs.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (glyphs.get(middle).fireUs() < us) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    static Lane of(String position, boolean known, List<Glyph> glyphs) {
        List<Glyph> sorted = new ArrayList<>(glyphs);
        sorted.sort((a, b) -> Long.compare(a.fireUs(), b.fireUs()));
        return new Lane(position, known, sorted);
    }
}
