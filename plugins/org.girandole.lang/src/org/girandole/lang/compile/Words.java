package org.girandole.lang.compile;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Small help with the words of messages. */
public final class Words {
    private static final int LONGEST_SHOWN = 40;
    private static final int SHORTEST_MISSPELT = 3;

    private Words() {
    }

    /** The known word nearest to a misspelt one, if any is near enough to be what was meant. */
    public static Optional<String> nearest(String word, Collection<String> known) {
        String wanted = word.toLowerCase(Locale.ROOT);
        // Of names as short as A and B, one is never a slip for the other.
        int limit = wanted.length() < SHORTEST_MISSPELT ? 0 : Math.max(1, wanted.length() / 3);
        String best = null;
        int bestDistance = limit + 1;
        for (String candidate : known) {
            if (Math.abs(candidate.length() - word.length()) > limit) {
                continue;
            }
            int distance = distance(wanted, candidate.toLowerCase(Locale.ROOT), bestDistance);
            if (distance < bestDistance || distance == bestDistance && best != null && candidate.compareTo(best) < 0) {
                best = candidate;
                bestDistance = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Insertions, deletions, replacements and swaps of neighbours needed; at least {@code enough} once it is known to be that many. */
    private static int distance(String a, String b, int enough) {
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            int least = i;
            for (int j = 1; j <= b.length(); j++) {
                int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], before[j - 2] + 1);
                }
                least = Math.min(least, row[j]);
            }
            if (least > enough) {
                return least;
            }
            int[] spare = before;
            before = last;
            last = row;
            row = spare;
        }
        return last[b.length()];
    }

    /** {@code a, b or c}. */
    public static String or(Collection<String> words) {
        return joined(words, " or ");
    }

    /** {@code a, b and c}. */
    public static String and(Collection<String> words) {
        return joined(words, " and ");
    }

    private static String joined(Collection<String> words, String lastJoint) {
        StringBuilder text = new StringBuilder();
        int i = 0;
        for (String word : words) {
            text.append(i == 0 ? "" : i == words.size() - 1 ? lastJoint : ", ").append(word);
            i++;
        }
        return text.toString();
    }

    /** Text from a script, short enough for a message. */
    public static String shown(String text) {
        String line = text.strip().replaceAll("\\s+", " ");
        return line.length() <= LONGEST_SHOWN ? line : line.substring(0, LONGEST_SHOWN - 1) + "…";
    }

    /** Words without their article. */
    public static String bare(String words) {
        return words.startsWith("a ") || words.startsWith("an ") ? words.substring(words.indexOf(' ') + 1) : words;
    }

    /** {@code 1 tube}, {@code 2 tubes}. */
    public static String count(long number, String one) {
        return number + " " + one + (number == 1 ? "" : "s");
    }
}
