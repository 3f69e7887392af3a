package org.girandole.protocol;

import java.util.List;

/**
 * A show as planned.
 *
 * @param nothing why there is no show to draw, in a sentence; null when there is one
 * @param stamp hash of the inputs
 * @param clean whether no error is open that nobody agreed to
 * @param files URIs of every script that the show is read from
 * @param tracks in slot order
 * @param lanes one a firing position, in the order of the site; positions that the site does not have come last
 * @param cues one an igniter, in firing order
 */
public record PlanView(String uri, String nothing, String show, String label, String stamp, boolean clean, int errors, int warnings,
        int waived, List<String> files, List<TrackView> tracks, List<LaneView> lanes, List<CueView> cues, List<FindingView> findings) {
    /** An answer that says why there is none. */
    public static PlanView nothing(String uri, String why) {
        return new PlanView(uri, why, "", "", "", false, 0, 0, 0, List.of(), List.of(), List.of(), List.of(), List.of());
    }
}
