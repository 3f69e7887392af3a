package org.girandole.protocol;

import java.util.List;
import org.girandole.protocol.CueView.Spot;

/**
 * The site from above.
 *
 * @param nothing why there is no site to draw; null when there is one
 * @param boundary null when the script has none
 * @param scriptWind wind of the script, or null
 * @param wind the wind that distances and fallout are for, or null when the script has none and none was tried
 * @param lookDeg compass bearing in which the audience looks at the site
 * @param table name of the distance table, or why distances were not looked at
 * @param distances one a position and place, for the firing that asks most; empty when none were looked at
 * @param fallout outlines inside which the share of what comes down comes down
 * @param falloutUnknown sentences on cues whose fallout could not be computed
 * @param findings errors of the rules about distances in this wind, waived ones included
 */
public record SiteView(String uri, String nothing, String name, List<Position> positions, List<Outline> audience, Outline boundary,
        List<Outline> protectedPlaces, WindView scriptWind, WindView wind, double lookDeg, String table, List<Distance> distances,
        List<Fallout> fallout, List<String> falloutUnknown, List<FindingView> findings) {
    /** An answer that says why there is none. */
    public static SiteView nothing(String uri, String why) {
        return new SiteView(uri, why, "", List.of(), List.of(), null, List.of(), null, null, 0, "", List.of(), List.of(), List.of(), List.of());
    }

    /**
     * A firing position.
     *
     * @param state how it fares in this wind by the rules about distances: {@code clean}, {@code waived}, {@code NOT} or {@code unchecked}
     */
    public record Position(String name, Spot at, int cues, String state, SourcePlace source) {
    }

    /**
     * A line, an area, or a circle about its only point.
     *
     * @param radiusM radius of a circle, or null
     */
    public record Outline(String name, List<Spot> points, Double radiusM, SourcePlace source) {
    }

    /**
     * What the distance table asks from a position to a place.
     *
     * @param audience whether the place is an audience line; else it is a protected place
     * @param askedM null when an assessment is needed
     * @param assessment why there is no number, or null
     * @param basis where the number comes from
     * @param cue number of the cue that asks most
     */
    public record Distance(String position, String place, boolean audience, double foundM, Double askedM, String assessment, boolean met,
            boolean estimated, String basis, int cue) {
    }

    /**
     * Where one effect with one tilt comes down when fired from one place.
     *
     * @param cue number of the first cue that does so
     * @param kind {@code unburst} for shells that do not burst, {@code debris} for what is left of those that do
     * @param share of the computed flights that lie inside, such as 0.99
     * @param estimated whether mass, height or rise are estimates
     */
    public record Fallout(int cue, String position, String kind, double share, boolean estimated, List<Spot> outline) {
    }
}
