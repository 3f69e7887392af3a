package org.girandole.studio.client;

import java.util.Collection;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * All open scripts as the server knows them when it is asked something: its answer is made from all of them, and may change any of them.
 *
 * @param versions of the texts
 */
public record KnownTexts(Map<OpenText, Integer> versions) {
    public static KnownTexts now() {
        return new KnownTexts(ShowClient.get().texts().stream().collect(Collectors.toUnmodifiableMap(text -> text, OpenText::version)));
    }

    /** Whether none of them was changed or closed since, and none that was opened since was changed. */
    public boolean isStill() {
        Collection<OpenText> open = ShowClient.get().texts();
        return open.containsAll(versions.keySet())
                && open.stream().allMatch(text -> text.version() == versions.getOrDefault(text, OpenText.AS_OPENED));
    }
}
