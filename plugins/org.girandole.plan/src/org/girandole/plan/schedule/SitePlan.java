package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polyline;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;

/** Where things are on the site, and which way the audience lies from them. */
public final class SitePlan {
    /** Without an audience on the plan it is taken to be where plans have it, at the lower edge: towards -y. */
    private static final double USUAL_AUDIENCE_DEG = 180;

    private final Optional<Site> site;
    private final Map<String, Point> positions = new LinkedHashMap<>();
    private final List<AudienceLine> audience = new ArrayList<>();

    /** A line of audience and the height it stands at. */
    private record AudienceLine(Polyline line, double zM) {
    }

    public SitePlan(Optional<Site> site) {
        this.site = site;
        site.ifPresent(s -> {
            s.positions().forEach(position -> positions.putIfAbsent(position.name(), position.at()));
            s.audience().stream().filter(area -> !area.points().isEmpty()).forEach(area -> audience.add(new AudienceLine(
                    new Polyline(area.points().stream().map(SitePlan::ground).toList()), area.points().get(0).zM())));
        });
    }

    private static Point2 ground(Point point) {
        return new Point2(point.xM(), point.yM());
    }

    /** Coordinates of a firing position. */
    public Optional<Point> position(String name) {
        return Optional.ofNullable(positions.get(name));
    }

    /** Air temperature in degrees Celsius, when the script says it. */
    public Optional<Double> airC() {
        return site.flatMap(Site::airC);
    }

    /**
     * Compass bearing from a place to the nearest point of the nearest audience line, degrees clockwise from +y; towards -y when the
     * script has no audience, or the place lies on its line.
     */
    public double audienceBearingDeg(Point from) {
        Point2 place = ground(from);
        return nearest(place)
                .map(line -> line.line().nearest(place))
                .filter(point -> !point.equals(place))
                .map(place::azimuthDegTo)
                .orElse(USUAL_AUDIENCE_DEG);
    }

    /** Where the audience of a place listens: the script's listening point, else the middle of the nearest audience line. */
    public Optional<Point> listening(Point from) {
        Optional<Point> written = site.flatMap(Site::listening);
        if (written.isPresent()) {
            return written;
        }
        return nearest(ground(from)).map(line -> new Point(line.line().middle().x(), line.line().middle().y(), line.zM()));
    }

    private Optional<AudienceLine> nearest(Point2 place) {
        AudienceLine nearest = null;
        for (AudienceLine line : audience) {
            if (nearest == null || line.line().distanceM(place) < nearest.line().distanceM(place)) {
                nearest = line;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** Straight distance between two places in metres. */
    public static double distanceM(Point a, Point b) {
        return Math.sqrt(Math.pow(a.xM() - b.xM(), 2) + Math.pow(a.yM() - b.yM(), 2) + Math.pow(a.zM() - b.zM(), 2));
    }
}
