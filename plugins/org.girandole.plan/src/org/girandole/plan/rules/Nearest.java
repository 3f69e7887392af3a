package org.girandole.plan.rules;

import java.util.Comparator;
import java.util.Optional;

/** The rule that somebody who mistyped an id most likely meant. */
final class Nearest {
    private Nearest() {
    }

    /** The nearest id, if it is near: at most a third of the letters differ. */
    static Optional<String> of(String id) {
        return Rules.infos().stream().map(RuleInfo::id)
                .min(Comparator.<String>comparingInt(known -> distance(id, known)).thenComparing(Comparator.naturalOrder()))
                .filter(known -> distance(id, known) * 3 <= Math.max(id.length(), known.length()));
    }

    /** Levenshtein's distance: letters to insert, delete or replace. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
