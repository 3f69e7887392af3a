package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How far a line of a score has been written: its time, its places, its effect.
 *
 * @param expects what may come next, the likeliest first
 * @param places the places written so far
 */
record CueSlot(List<Expected> expects, List<String> places) {
    enum Expected {
        ANCHOR, BAR_NUMBER, BEAT_WORD, TIME_UNIT, STEP, STEP_UNIT, PLACE, PLACE_END, EFFECT, OPTION, OTHER
    }

    private static final Set<String> UNITS = Set.of("beat", "beats", "bar", "bars", "s", "ms", "min", "frame", "frames");

    /** @param words after {@code at} */
    static CueSlot of(List<Word> words) {
        int[] next = {0};
        Expected time = time(words, next);
        if (time != null) {
            List<Expected> expects = new ArrayList<>(List.of(time));
            if (time == Expected.TIME_UNIT || time == Expected.STEP_UNIT || time == Expected.BEAT_WORD) {
                // The number may also stand alone: "at 0 A", "bar 17 A".
                expects.add(Expected.STEP);
                expects.add(Expected.PLACE);
            }
            return new CueSlot(expects, List.of());
        }
        int i = next[0];
        if (i >= words.size()) {
            return new CueSlot(List.of(Expected.PLACE, Expected.STEP), List.of());
        }
        if (words.get(i).is("+") || words.get(i).is("-")) {
            return new CueSlot(List.of(Expected.STEP_UNIT), List.of());
        }
        List<String> places = new ArrayList<>();
        while (i < words.size()) {
            if (!words.get(i).isName()) {
                return new CueSlot(List.of(Expected.OTHER), places);
            }
            places.add(words.get(i++).name());
            if (i < words.size() && (words.get(i).is(",") || words.get(i).is(".."))) {
                places.add(words.get(i).text());
                i++;
                if (i >= words.size()) {
                    return new CueSlot(List.of(Expected.PLACE), places);
                }
            } else {
                break;
            }
        }
        if (i < words.size() && words.get(i).isNumber()) {
            i++;
            if (i >= words.size()) {
                return new CueSlot(List.of(Expected.OTHER), places);
            }
            if (words.get(i).is("x") || words.get(i).is("×")) {
                i++;
            }
        }
        if (i >= words.size()) {
            return new CueSlot(List.of(Expected.EFFECT, Expected.PLACE_END), places);
        }
        return new CueSlot(List.of(Expected.OPTION), places);
    }

    /** Reads a time; null when it is whole, and {@code next} then says where it ends. */
    private static Expected time(List<Word> words, int[] next) {
        int i = next[0];
        if (i >= words.size()) {
            return Expected.ANCHOR;
        }
        Word first = words.get(i);
        if (first.is("bar")) {
            i++;
            if (i >= words.size()) {
                return Expected.BAR_NUMBER;
            }
            i++;
            if (i >= words.size()) {
                return Expected.BEAT_WORD;
            }
            if (words.get(i).is("beat")) {
                i++;
                if (i >= words.size()) {
                    return Expected.BAR_NUMBER;
                }
                i = number(words, i);
            }
        } else if (first.is("-") || first.isNumber()) {
            i = number(words, first.is("-") ? i + 1 : i);
            if (i >= words.size()) {
                return Expected.TIME_UNIT;
            }
            i += UNITS.contains(words.get(i).text()) ? 1 : 0;
        } else {
            i++;
        }
        while (i < words.size() && (words.get(i).is("+") || words.get(i).is("-"))) {
            i++;
            if (i >= words.size()) {
                next[0] = i - 1;
                return Expected.STEP;
            }
            if (words.get(i).isNumber()) {
                i = number(words, i);
                if (i >= words.size()) {
                    return Expected.STEP_UNIT;
                }
                i += UNITS.contains(words.get(i).text()) ? 1 : 0;
            } else {
                i++;
            }
        }
        next[0] = i;
        return null;
    }

    /** Skips a number with its divisor. */
    private static int number(List<Word> words, int from) {
        int i = Math.min(from + 1, words.size());
        return i + 1 < words.size() && words.get(i).is("/") && words.get(i + 1).isNumber() ? i + 2 : i;
    }
}
