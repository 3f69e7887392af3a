package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/**
 * The {@code site} block. Positions are in the order written, which is the order of {@code A .. E}.
 *
 * @param airC air temperature, degrees Celsius
 * @param elevationM above sea level, metres
 * @param listening where the audience listens; empty means the middle of the nearest audience line
 */
public record Site(String name, String label, List<Position> positions, List<Group> groups, List<Area> audience,
        Optional<Area> boundary, List<Protected> protectedPlaces, Optional<Wind> wind, Optional<Double> airC,
        Optional<Double> elevationM, Optional<Point> listening, SourceRef source) {
    public Site {
        positions = List.copyOf(positions);
        groups = List.copyOf(groups);
        audience = List.copyOf(audience);
        protectedPlaces = List.copyOf(protectedPlaces);
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
