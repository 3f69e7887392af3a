package org.girandole.studio.views.draw;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Colour words of scripts as colours on light and on dark ground. A word that is not known is drawn in ink, never guessed. */
public final class Tints {
    private static final Map<String, int[]> WORDS = new LinkedHashMap<>();

    static {
        put(0xC02428, 0xFF6B66, "red", "crimson", "scarlet");
        put(0x1D7A37, 0x5FD97F, "green", "emerald", "lime");
        put(0x2456B8, 0x7DA7FF, "blue", "azure");
        put(0x926A00, 0xF5C84C, "gold", "brocade", "kamuro", "amber");
        put(0x5C6773, 0xD5DEE8, "silver", "white", "titanium", "grey", "gray");
        put(0x7A3FB0, 0xC79BFF, "violet", "purple", "lilac");
        put(0x817000, 0xF3E663, "yellow", "lemon");
        put(0xB24E00, 0xFF9A4D, "orange", "willow", "charcoal");
        put(0xB3307E, 0xFF8AC6, "pink", "magenta", "rose");
        put(0x00707C, 0x5FE0EA, "turquoise", "cyan", "aqua", "teal");
    }

    private Tints() {
    }

    private static void put(int light, int dark, String... words) {
        for (String word : words) {
            WORDS.put(word, new int[] {light, dark});
        }
    }

    /**
     * The colour of the first word that is known.
     *
     * @param words as in the script, or null
     */
    public static int of(String words, Palette palette) {
        if (words != null) {
            for (String word : words.toLowerCase(Locale.ROOT).split("[^\\p{L}]+")) {
                int[] known = WORDS.get(word);
                if (known != null) {
                    return known[palette.dark() ? 1 : 0];
                }
            }
        }
        return palette.ink();
    }

    /** All words that have a colour. */
    static Map<String, int[]> words() {
        return WORDS;
    }
}
