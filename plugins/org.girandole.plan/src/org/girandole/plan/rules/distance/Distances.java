package org.girandole.plan.rules.distance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.separation.Asked;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.Requirement;
import org.girandole.physics.separation.SeparationCheck;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Site;

/** Everything that is fired against everything to keep away from, by a distance table. */
final class Distances {
    private Distances() {
    }

    /** For each effect, position and place that does not hold: the firing that misses most. */
    static List<Held> worst(Workings workings, List<Ground.Place> places, Function<Ground.Place, DistanceTable> tables) {
        Map<Key, Held> worst = new LinkedHashMap<>();
        each(workings, places, tables, held -> {
            if (!held.isFarEnough() && !held.check().holds()) {
                worst.merge(new Key(held.cue().what(), held.cue().position(), held.place()), held, (a, b) -> b.missesMoreThan(a) ? b : a);
            }
        });
        return new ArrayList<>(worst.values());
    }

    /** Every firing, once of what is alike, held against every place, place by place. */
    static void each(Workings workings, List<Ground.Place> places, Function<Ground.Place, DistanceTable> tables, Consumer<Held> use) {
        Optional<Site.Wind> wind = workings.plan().script().site().flatMap(Site::wind);
        for (Ground.Place place : places) {
            DistanceTable table = tables.apply(place);
            Map<Said, Answer> answers = new HashMap<>();
            for (Fired.Firing fired : Fired.of(workings).firings()) {
                double aboveM = fired.from().zM() - place.zM();
                Answer answer = answers.computeIfAbsent(Said.of(fired.first(), aboveM), said -> {
                    FiringCase firing = Firings.of(fired.first(), workings.shells().impossible(fired.first()).isEmpty(), aboveM, wind);
                    return new Answer(firing, Asked.of(table, firing));
                });
                use.accept(new Held(fired, place, table, answer));
            }
        }
    }

    private record Key(String what, String position, Ground.Place place) {
    }

    /** A cue in the words of the table, and what the table asks for it. */
    private record Answer(FiringCase firing, Asked asked) {
    }

    /** All that the words of a table hang on. */
    private record Said(String effect, Optional<String> lot, boolean chain, PlannedCue.Aim aim, double aboveM) {
        static Said of(PlannedCue cue, double aboveM) {
            return new Said(cue.effect().name(), cue.lot(), cue.chain().isPresent(), cue.aim(), aboveM);
        }
    }

    /** A firing held against a place. */
    static final class Held {
        private final PlannedCue cue;
        private final Ground.Place place;
        private final DistanceTable table;
        private final Answer answer;
        private final Point2 at;
        private SeparationCheck check;

        private Held(Fired.Firing fired, Ground.Place place, DistanceTable table, Answer answer) {
            this.cue = fired.first();
            this.place = place;
            this.table = table;
            this.answer = answer;
            this.at = new Point2(fired.from().xM(), fired.from().yM());
        }

        PlannedCue cue() {
            return cue;
        }

        Ground.Place place() {
            return place;
        }

        DistanceTable table() {
            return table;
        }

        /** The cue in the words of the table. */
        FiringCase firing() {
            return answer.firing();
        }

        /** What the table asks for the cue, wherever it is fired. */
        Asked asked() {
            return answer.asked();
        }

        /** Where it is fired. */
        Point2 at() {
            return at;
        }

        /** What is asked and what is found, in the worst direction in which the place lies. */
        SeparationCheck check() {
            if (check == null) {
                check = answer.asked().against(at, place.shape());
            }
            return check;
        }

        /** Whether it is far enough for the most that is asked in any direction; most are, and need not be looked at direction by direction. */
        boolean isFarEnough() {
            return asked().most().metBy(at.distanceM(place.shape().nearest(at)));
        }

        boolean missesMoreThan(Held other) {
            if (check().shortM().isEmpty() || other.check().shortM().isEmpty()) {
                return check().shortM().isEmpty() && other.check().shortM().isPresent();
            }
            return check().shortM().get() > other.check().shortM().get();
        }

        void report(Findings out, String from) {
            Requirement asked = check().requirement();
            String found = Quantity.metres(check().foundM()) + " to " + place.name();
            String allowed;
            String message;
            if (asked.assessmentNeeded()) {
                allowed = "an assessment: " + asked.assessment().orElseThrow();
                message = " is fired " + Quantity.metres(check().foundM()) + " from " + from + ", and the table has no distance for it: "
                        + asked.assessment().orElseThrow();
            } else {
                String metres = Quantity.metres(asked.metres().getAsDouble());
                String estimate = asked.estimated().isEmpty() ? "" : " (an estimate)";
                allowed = "at least " + metres + estimate;
                message = " is fired " + Quantity.metres(check().foundM()) + " from " + from + ", but " + metres + estimate + " are asked";
            }
            out.report(Cues.name(cue) + message)
                    .found(found, allowed)
                    .basis(table.name() + ": " + basis(asked))
                    .remedy(() -> Cures.of(this))
                    .about(subject())
                    .data(Map.of("place", place.name(), "foundM", Quantity.metres(check().foundM())))
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
