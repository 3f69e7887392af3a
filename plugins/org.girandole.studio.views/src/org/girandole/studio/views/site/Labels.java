package org.girandole.studio.views.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds places for names on the plan, so that none lies on another or on what must be seen. */
final class Labels {
    private static final int MOST_STEPS = 2000;

    private final Box room;
    private final List<Box> taken = new ArrayList<>();
    private final List<Box> better = new ArrayList<>();

    /** @param room in which all names have to be */
    Labels(Box room) {
        this.room = room;
    }

    /** Nothing may lie here. */
    void take(Box place) {
        taken.add(place);
    }

    /** Nothing should lie here while there is another place. */
    void avoid(Box place) {
        better.add(place);
    }

    /** Nothing should lie on a line while there is another place. */
    void avoid(double[] xy, boolean closed, double thick) {
        better.addAll(along(xy, closed, thick));
    }

    /** Nothing may lie on a line. */
    void take(double[] xy, boolean closed, double thick) {
        taken.addAll(along(xy, closed, thick));
    }

    private static List<Box> along(double[] xy, boolean closed, double thick) {
        List<Box> boxes = new ArrayList<>();
        int points = xy.length / 2;
        for (int i = 0; i < (closed ? points : points - 1); i++) {
            int next = (i + 1) % points;
            double dx = xy[2 * next] - xy[2 * i];
            double dy = xy[2 * next + 1] - xy[2 * i + 1];
            int steps = (int) Math.min(MOST_STEPS, Math.ceil(Math.hypot(dx, dy) / thick));
            for (int step = 0; step <= steps; step++) {
                double part = steps == 0 ? 0 : step / (double) steps;
                boxes.add(about(xy[2 * i] + dx * part, xy[2 * i + 1] + dy * part, thick / 2));
            }
        }
        return boxes;
    }

    static Box about(double x, double y, double half) {
        return new Box(x - half, y - half, x + half, y + half);
    }

    /** Takes the first of these places where nothing is and nothing is to be avoided. */
    Optional<Box> takeClear(List<Box> places) {
        return take(places.stream().filter(place -> better.stream().noneMatch(place::meets)).toList());
    }

    /** Takes the first of these places where nothing is. */
    Optional<Box> take(List<Box> places) {
        Optional<Box> free = places.stream().filter(place -> room.holds(place) && taken.stream().noneMatch(place::meets)).findFirst();
        free.ifPresent(this::take);
        return free;
    }
}
