package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/**
 * The {@code site} block. Positions are in the order written, which is the order of {@code A .. E}.
 *
 * @param airC air temperature, degrees Celsius
 * @param elevationM above sea level, metres
 * @param listening where the audience listens; empty means the middle of the nearest audience line
 * @param refused what is written of the site and cannot be meant: it is not as if nothing had been written
 */
public record Site(String name, String label, List<Position> positions, List<Group> groups, List<Area> audience,
        Optional<Area> boundary, List<Protected> protectedPlaces, Optional<Wind> wind, Optional<Double> airC,
        Optional<Double> elevationM, Optional<Point> listening, List<Refused> refused, SourceRef source) {
    public Site {
        positions = List.copyOf(positions);
        groups = List.copyOf(groups);
        audience = List.copyOf(audience);
        protectedPlaces = List.copyOf(protectedPlaces);
        refused = List.copyOf(refused);
    }

    /** A site all of which can be meant. */
    public Site(String name, String label, List<Position> positions, List<Group> groups, List<Area> audience, Optional<Area> boundary,
            List<Protected> protectedPlaces, Optional<Wind> wind, Optional<Double> airC, Optional<Double> elevationM, Optional<Point> listening,
            SourceRef source) {
        this(name, label, positions, groups, audience, boundary, protectedPlaces, wind, airC, elevationM, listening, List.of(), source);
    }

    /** The same site in another wind. */
    public Site withWind(Optional<Wind> other) {
        return new Site(name, label, positions, groups, audience, boundary, protectedPlaces, other, airC, elevationM, listening,
                refused.stream().filter(part -> part.part() != Part.WIND).toList(), source);
    }

    /** Parts of a site that numbers are computed from. */
    public enum Part {
        AUDIENCE, BOUNDARY, PROTECTED, WIND, AIR, ELEVATION
    }

    /**
     * A part that is written and cannot be meant. What is wrong with it, the language has said.
     *
     * @param name of the audience line or the protected place, else the first word of the line
     */
    public record Refused(Part part, String name, SourceRef source) {
    }

    /** A firing position. */
    public record Position(String name, Point at, SourceRef source) {
    }

    /** Positions under one name. */
    public record Group(String name, List<String> positions, SourceRef source) {
        public Group {
            positions = List.copyOf(positions);
        }
    }

    /** A line (audience) or polygon (boundary). */
    public record Area(String name, List<Point> points, SourceRef source) {
        public Area {
            points = List.copyOf(points);
        }
    }

    /**
     * Something that must not be hit: a circle or a polygon.
     *
     * @param radiusM radius when {@code points} has one point, else empty
     * @param multiple how many times the table distance it needs
     */
    public record Protected(String name, List<Point> points, Optional<Double> radiusM, double multiple, SourceRef source) {
        public Protected {
            points = List.copyOf(points);
        }
    }

    /** Wind: where it blows from (degrees clockwise from +y), mean and gust speed in metres a second. */
    public record Wind(double fromDeg, double speedMps, Optional<Double> gustMps, SourceRef source) {
    }
}
