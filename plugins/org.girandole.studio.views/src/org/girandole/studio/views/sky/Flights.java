package org.girandole.studio.views.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.protocol.CueView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.TrackView;

/** What is in the air at any moment of a soundtrack. */
public final class Flights {
    private static final long US_PER_S = 1_000_000;

    private final List<CueView> cues;
    private final long longestUs;

    /** The cues of one soundtrack. */
    public Flights(PlanView plan, Optional<TrackView> track) {
        List<CueView> all = new ArrayList<>();
        for (CueView cue : plan.cues()) {
            if (track.isPresent() && cue.slot() == track.get().slot() && cue.from() != null) {
                all.add(cue);
            }
        }
        all.sort(Comparator.comparingLong(CueView::fireUs));
        cues = List.copyOf(all);
        longestUs = cues.stream().mapToLong(cue -> endUs(cue) - cue.fireUs()).max().orElse(0);
    }

    public List<CueView> all() {
        return cues;
    }

    /** What is seen then, in firing order. */
    public List<CueView> at(long us) {
        List<CueView> found = new ArrayList<>();
        for (int i = first(us - longestUs); i < cues.size() && cues.get(i).fireUs() <= us; i++) {
            if (endUs(cues.get(i)) > us) {
                found.add(cues.get(i));
            }
        }
        return found;
    }

    private int first(long us) {
        int low = 0;
        int high = cues.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (cues.get(middle).fireUs() < us) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** How long it is seen: as the script says, else as things of its kind usually are, for drawing alone. */
    static long lastsUs(CueView cue) {
        if (cue.lastsUs() != null) {
            return Math.max(1, cue.lastsUs());
        }
        return switch (cue.kind()) {
            case "fountain", "wheel", "flare" -> 15 * US_PER_S;
            case "cake", "candle" -> cue.shots() != null && cue.shotGapUs() != null ? cue.shots() * cue.shotGapUs() + 2 * US_PER_S : 20 * US_PER_S;
            case "salute" -> US_PER_S / 2;
            default -> 3 * US_PER_S / 2;
        };
    }

    static long endUs(CueView cue) {
        long last = cue.items().stream().mapToLong(CueView.Item::burstUs).max().orElse(cue.burstUs());
        return Math.max(last, cue.burstUs()) + lastsUs(cue);
    }
}
