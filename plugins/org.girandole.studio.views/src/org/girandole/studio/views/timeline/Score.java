package org.girandole.studio.views.timeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.protocol.CueView;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.LaneView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.TrackView;

/**
 * A soundtrack of a show, arranged for drawing: lanes in the order of the site, and how far it reaches.
 *
 * @param fromUs the first moment at which anything happens, the first note at the latest
 * @param toUs the last one
 */
public record Score(Optional<TrackView> track, List<Lane> lanes, long fromUs, long toUs) {
    /** Seen for so long when the script does not say. */
    private static final long USUAL_US = 1_500_000;
    private static final long EMPTY_US = 60_000_000;
    private static final List<String> GRAVITY = List.of("", Glyph.WAIVED, "info", "warning", "error");

    public Score {
        lanes = List.copyOf(lanes);
    }

    /** A soundtrack of a plan; without one everything is empty. */
    public static Score of(PlanView plan, Optional<TrackView> track) {
        Map<Integer, String> severities = severities(plan);
        Map<String, List<Glyph>> byPosition = new HashMap<>();
        long first = 0;
        long last = track.map(TrackView::lengthUs).orElse(0L);
        for (Glyph glyph : glyphs(plan, track, severities)) {
            byPosition.computeIfAbsent(glyph.cue().position(), key -> new ArrayList<>()).add(glyph);
            first = Math.min(first, glyph.fireUs());
            last = Math.max(last, glyph.endUs());
        }
        List<Lane> lanes = new ArrayList<>();
        for (LaneView lane : plan.lanes()) {
            lanes.add(Lane.of(lane.position(), lane.known(), byPosition.getOrDefault(lane.position(), List.of())));
        }
        return new Score(track, lanes, first, last > 0 ? last : EMPTY_US);
    }

    private static List<Glyph> glyphs(PlanView plan, Optional<TrackView> track, Map<Integer, String> severities) {
        if (track.isEmpty()) {
            return List.of();
        }
        Map<List<Object>, List<CueView>> together = new LinkedHashMap<>();
        for (CueView cue : plan.cues()) {
            if (cue.slot() == track.get().slot()) {
                together.computeIfAbsent(List.of(cue.position(), cue.fireUs(), cue.burstUs(), cue.what(), cue.source()), key -> new ArrayList<>())
                        .add(cue);
            }
        }
        return together.values().stream().map(cues -> glyph(cues, severities)).toList();
    }

    private static Glyph glyph(List<CueView> cues, Map<Integer, String> severities) {
        String gravest = cues.stream().map(cue -> severities.getOrDefault(cue.number(), "")).max((a, b) -> gravity(a) - gravity(b)).orElse("");
        return new Glyph(cues.get(0), cues.stream().map(CueView::number).toList(), end(cues.get(0)), gravest);
    }

    private static int gravity(String severity) {
        return GRAVITY.indexOf(severity);
    }

    private static Map<Integer, String> severities(PlanView plan) {
        Map<Integer, String> severities = new HashMap<>();
        for (FindingView finding : plan.findings()) {
            String severity = finding.waived() ? Glyph.WAIVED : finding.severity();
            finding.cues().forEach(cue -> severities.merge(cue, severity, (a, b) -> gravity(a) >= gravity(b) ? a : b));
        }
        return severities;
    }

    private static long end(CueView cue) {
        long last = cue.items().stream().mapToLong(CueView.Item::burstUs).max().orElse(cue.burstUs());
        return Math.max(last, cue.burstUs()) + (cue.lastsUs() == null ? USUAL_US : cue.lastsUs());
    }

    /** How many cues burst in each column of a drawing of the whole. */
    int[] counts(int columns, Window whole, double columnPx) {
        int[] counts = new int[columns];
        for (Lane lane : lanes) {
            for (Glyph glyph : lane.glyphs()) {
                int column = (int) (whole.x(glyph.burstUs()) / columnPx);
                if (column >= 0 && column < columns) {
                    counts[column] += glyph.numbers().size();
                }
            }
        }
        return counts;
    }

    /** The lane that a cue is in, -1 if it is in none. */
    public int laneOf(CueView cue) {
        for (int i = 0; i < lanes.size(); i++) {
            if (lanes.get(i).position().equals(cue.position())) {
                return i;
            }
        }
        return -1;
    }

    /** The glyph that holds a cue. */
    public Optional<Glyph> glyphOf(CueView cue) {
        int lane = laneOf(cue);
        return lane < 0 ? Optional.empty() : lanes.get(lane).between(cue.fireUs(), cue.fireUs()).stream()
                .filter(glyph -> glyph.numbers().contains(cue.number())).findFirst();
    }
}
