package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/**
 * Tubes side by side at one position, numbered from 1 at the left as seen from behind (the crew's side, facing the audience).
 *
 * @param rows runs of equal tubes, in tube order
 * @param spacingM centre to centre, metres
 * @param tilt the angles to which a tube can be set; for a fixed fan, the angles of the first and last tube
 * @param fixedFan whether the tubes stand in a fixed, even fan instead of being adjustable
 * @param at where the rack stands relative to its position, metres; empty when the script does not say
 */
public record Rack(String name, String position, List<TubeRun> rows, Optional<Double> spacingM, TiltRange tilt, boolean fixedFan,
        Optional<Point> at, SourceRef source) {
    public Rack {
        rows = List.copyOf(rows);
    }

    /** A run of equal tubes. */
    public record TubeRun(int count, double calibreM, Optional<Double> lengthM, SourceRef source) {
    }

    /** Where it stands when its position is there. */
    public Point from(Point position) {
        return at.map(rack -> new Point(position.xM() + rack.xM(), position.yM() + rack.yM(), position.zM() + rack.zM())).orElse(position);
    }

    /** How many tubes there are. */
    public int tubes() {
        return rows.stream().mapToInt(TubeRun::count).sum();
    }

    /** The run that tube {@code number}, from 1, belongs to. */
    public Optional<TubeRun> runOf(int number) {
        int first = 1;
        for (TubeRun run : rows) {
            if (number >= first && number < first + run.count()) {
                return Optional.of(run);
            }
            first += run.count();
        }
        return Optional.empty();
    }
}
