package org.girandole.plan.schedule;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.girandole.plan.script.ScoreItem;

/**
 * Gives cues names that survive edits elsewhere in the script; docs/cue-keys.md says how. One instance serves one show.
 */
final class Keys {
    private final Map<String, Integer> lines = new HashMap<>();
    private final Set<String> taken = new HashSet<>();
    /** Few names come again and again. */
    private final Map<String, String> plain = new HashMap<>();

    /**
     * The key of what one cue line makes at one place, without repetition and shot. Asked once for each line and place, however
     * often a repetition comes back to it; the order of asking is the order of the script.
     */
    String line(String soundtrack, String section, ScoreItem.Cue cue, String position) {
        String what = cue.name().map(this::plain)
                .orElseGet(() -> plain(soundtrack) + "/" + (section.isEmpty() ? "-" : plain(section)) + "/" + plain(cue.effect()));
        String place = what + "@" + plain(position);
        int order = lines.merge(place, 1, Integer::sum);
        return cue.name().isPresent() && order == 1 ? place : place + "/" + order;
    }

    /** The whole key: the line's, then {@code r2} for the second time round of each repetition, then {@code s2} for the second shot. */
    String key(String line, List<Integer> rounds, int shot) {
        StringBuilder key = new StringBuilder(line);
        if (rounds.stream().anyMatch(round -> round > 0)) {
            for (int i = 0; i < rounds.size(); i++) {
                key.append(i == 0 ? "r" : ".").append(rounds.get(i) + 1);
            }
        }
        if (shot > 0) {
            key.append('s').append(shot + 1);
        }
        String wanted = key.toString();
        String unique = wanted;
        for (int i = 2; !taken.add(unique); i++) {
            unique = wanted + "~" + i;
        }
        return unique;
    }

    /** Names as they come from the language are words; others lose what would break a line or a key into pieces. */
    private String plain(String name) {
        return plain.computeIfAbsent(name, written -> written.replaceAll("[\\s/@~]", "_"));
    }
}
