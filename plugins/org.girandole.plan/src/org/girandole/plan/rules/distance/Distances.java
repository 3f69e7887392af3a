package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Shape;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.Requirement;
import org.girandole.physics.separation.SeparationCheck;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;

/** Everything that is fired against everything to keep away from, by a distance table. */
final class Distances {
    private Distances() {
    }

    /** For each effect, position and place that does not hold: the firing that misses most. */
    static List<Held> worst(Workings workings, Ground ground, List<Ground.Place> places, Function<Ground.Place, DistanceTable> tables) {
        Map<Key, Held> worst = new LinkedHashMap<>();
        each(workings, ground, places, tables, Distances::checkQuickly, held -> {
            if (!held.check().holds()) {
                worst.merge(new Key(held.cue().what(), held.cue().position(), held.place()), held, (a, b) -> b.missesMoreThan(a) ? b : a);
            }
        });
        return new ArrayList<>(worst.values());
    }

    /** Every firing held against every place, place by place. */
    static void each(Workings workings, Ground ground, List<Ground.Place> places, Function<Ground.Place, DistanceTable> tables,
            Consumer<Held> use) {
        each(workings, ground, places, tables, SeparationCheck::of, use);
    }

    private static void each(Workings workings, Ground ground, List<Ground.Place> places, Function<Ground.Place, DistanceTable> tables,
            Check how, Consumer<Held> use) {
        Plan plan = workings.plan();
        Optional<Site.Wind> wind = plan.script().site().flatMap(Site::wind);
        Map<Case, Answer> computed = new HashMap<>();
        Map<List<String>, Boolean> heights = new HashMap<>();
        for (Ground.Place place : places) {
            DistanceTable table = tables.apply(place);
            for (PlannedCue cue : plan.cues()) {
                Optional<Point> from = ground.firedFrom(cue);
                if (from.isEmpty() || ground.nonsense().distance(cue).isPresent()) {
                    continue;
                }
                // Cues alike in all that a table asks are computed once.
                Answer answer = computed.computeIfAbsent(Case.of(cue, from.get(), place), key -> {
                    boolean heightKnown = heights.computeIfAbsent(List.of(cue.effect().name(), cue.lot().orElse("")),
                            flown -> workings.shells().impossible(cue).isEmpty());
                    FiringCase firing = Firings.of(cue, heightKnown, from.get().zM() - place.zM(), wind);
                    return new Answer(firing, how.check(table, firing, new Point2(from.get().xM(), from.get().yM()), place.shape()));
                });
                use.accept(new Held(cue, place, table, answer.firing(), new Point2(from.get().xM(), from.get().yM()), answer.check()));
            }
        }
    }

    /**
     * What is far enough for the worst of all directions need not be looked at direction by direction. What holds is then said to be asked
     * more than it is, so that this serves for finding what does not hold, and for nothing else.
     */
    private static SeparationCheck checkQuickly(DistanceTable table, FiringCase firing, Point2 from, Shape shape) {
        Requirement most = SeparationCheck.of(table, firing, from, new Disc(from, 0)).requirement();
        Point2 nearest = shape.nearest(from);
        double foundM = from.distanceM(nearest);
        return most.metBy(foundM) ? new SeparationCheck(most, foundM, nearest) : SeparationCheck.of(table, firing, from, shape);
    }

    /** A way to hold a firing against a shape. */
    private interface Check {
        SeparationCheck check(DistanceTable table, FiringCase firing, Point2 from, Shape shape);
    }

    private record Key(String what, String position, Ground.Place place) {
    }

    private record Answer(FiringCase firing, SeparationCheck check) {
    }

    private record Case(String effect, String lot, boolean chain, PlannedCue.Aim aim, Point from, Ground.Place place) {
        static Case of(PlannedCue cue, Point from, Ground.Place place) {
            return new Case(cue.effect().name(), cue.lot().orElse(""), cue.chain().isPresent(), cue.aim(), from, place);
        }
    }

    /**
     * A firing held against a place.
     *
     * @param firing the cue in the words of the table
     * @param at where it is fired
     */
    record Held(PlannedCue cue, Ground.Place place, DistanceTable table, FiringCase firing, Point2 at, SeparationCheck check) {
        boolean missesMoreThan(Held other) {
            if (check.shortM().isEmpty() || other.check.shortM().isEmpty()) {
                return check.shortM().isEmpty() && other.check.shortM().isPresent();
            }
            return check.shortM().get() > other.check.shortM().get();
        }

        void report(Findings out, String from) {
            Requirement asked = check.requirement();
            String found = Quantity.metres(check.foundM()) + " to " + place.name();
            String allowed;
            String message;
            if (asked.assessmentNeeded()) {
                allowed = "an assessment: " + asked.assessment().orElseThrow();
                message = " is fired " + Quantity.metres(check.foundM()) + " from " + from + ", and the table has no distance for it: "
                        + asked.assessment().orElseThrow();
            } else {
                String metres = Quantity.metres(asked.metres().getAsDouble());
                String estimate = asked.estimated().isEmpty() ? "" : " (an estimate)";
                allowed = "at least " + metres + estimate;
                message = " is fired " + Quantity.metres(check.foundM()) + " from " + from + ", but " + metres + estimate + " are asked";
            }
            out.report(Cues.name(cue) + message)
                    .found(found, allowed)
                    .basis(table.name() + ": " + basis(asked))
                    .remedy(() -> Cures.of(this))
                    .about(subject())
                    .data(Map.of("place", place.name(), "foundM", Quantity.metres(check.foundM())))
                    .at(cue.source());
        }

        private static String basis(Requirement asked) {
            String assumed = asked.assumptions().isEmpty() ? "" : "; " + String.join("; ", asked.assumptions());
            return asked.basis() + assumed;
        }

        private Subject subject() {
            return Cues.subject(cue, place.name());
        }
    }
}
