package org.girandole.lang.parsing;

import java.util.List;
import java.util.function.BiPredicate;

/**
 * What a list still has of what it was.
 *
 * @param first how many at the beginning are the same
 * @param last how many at the end are, of the others
 */
public record SharedEnds(int first, int last) {
    /** Of two lists, as long as {@code same} holds. */
    public static <T> SharedEnds of(List<T> before, List<T> now, BiPredicate<T, T> same) {
        int most = Math.min(before.size(), now.size());
        int first = 0;
        while (first < most && same.test(before.get(first), now.get(first))) {
            first++;
        }
        int last = 0;
        while (last < most - first && same.test(before.get(before.size() - 1 - last), now.get(now.size() - 1 - last))) {
            last++;
        }
        return new SharedEnds(first, last);
    }

    /** What stands between the ends in one of the two. */
    public <T> List<T> between(List<T> list) {
        return list.subList(first, list.size() - last);
    }
}
