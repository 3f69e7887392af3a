package org.girandole.plan.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing.SeenMode;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.SourceRef;

/** How rules name, group and locate cues. */
public final class Cues {
    private Cues() {
    }

    /** What a person would call the cue: {@code Hero (Kamuro150 at C, seen at 1:20.000 of Tides)}. */
    public static String name(PlannedCue cue) {
        String sense = cue.timing().mode() == SeenMode.HEARD ? "heard" : "seen";
        String moment = sense + " at " + Quantity.moment(cue.timing().seenUs()) + " of " + cue.soundtrack();
        String place = cue.what() + " at " + cue.position();
        return cue.cueName().map(name -> name + " (" + place + ", " + moment + ")").orElse(place + " (" + moment + ")");
    }

    /** The names under which a waiver may speak of the cue: its own, its chain's, its effect's; and its position. */
    public static Subject subject(PlannedCue cue) {
        Set<String> names = new LinkedHashSet<>();
        cue.cueName().ifPresent(names::add);
        cue.chain().ifPresent(chain -> names.add(chain.name()));
        names.add(cue.effect().name());
        return new Subject(List.copyOf(names), List.of(cue.position()));
    }

    /** Like {@link #subject}, with the module or rack the finding is about. */
    public static Subject subject(PlannedCue cue, String hardware) {
        Subject own = subject(cue);
        List<String> names = new ArrayList<>(own.names());
        names.add(hardware);
        return new Subject(names, own.positions());
    }

    /** One of each: shots of a line that go up at one position at one moment have the same story to tell. */
    public static Collection<PlannedCue> oncePerPlace(List<PlannedCue> cues) {
        Map<Place, PlannedCue> first = new LinkedHashMap<>();
        for (PlannedCue cue : cues) {
            first.putIfAbsent(new Place(cue.source(), cue.soundtrack(), cue.position(), cue.timing().seenUs(), cue.timing().fireUs()),
                    cue);
        }
        return first.values();
    }

    /** When the last thing of the cue bursts, or is fired, when nothing bursts; microseconds. */
    public static long lastSeenUs(PlannedCue cue) {
        long first = cue.timing().seenUs();
        return cue.items().isEmpty() ? first : Math.max(first, cue.items().get(cue.items().size() - 1).seenUs());
    }

    /** When nothing of the cue is seen any more, scatter counted against it, as far as the catalogue says how long it lasts; microseconds. */
    public static long goneUs(PlannedCue cue) {
        return lastSeenUs(cue) + cue.timing().toleranceUs() + seenForUs(cue.effect()).orElse(0L);
    }

    /** How long the effect is seen once it has burst, microseconds; empty when the catalogue does not say. */
    public static Optional<Long> seenForUs(Effect effect) {
        Optional<Long> shots = effect.shots().flatMap(n -> effect.shotGapUs().map(gap -> Math.max(0, n - 1) * gap));
        if (effect.lastsUs().isPresent() && shots.isPresent()) {
            return Optional.of(Math.max(effect.lastsUs().get(), shots.get()));
        }
        return effect.lastsUs().or(() -> shots);
    }

    /** Where the pin is written: by hand beside the cue, else the cue itself. */
    public static SourceRef pinSource(PlannedCue cue) {
        return cue.pin().filter(PlannedCue.Pin::byHand)
                .flatMap(pin -> cue.script().pins().stream()
                        .filter(ref -> ref.module().equals(pin.module()) && ref.pin() == pin.pin()).findFirst())
                .map(ref -> ref.source()).orElse(cue.source());
    }

    /** Where the tube is written: by hand beside the cue, else the cue itself. */
    public static SourceRef tubeSource(PlannedCue cue) {
        return cue.tube().filter(PlannedCue.Tube::byHand)
                .flatMap(tube -> cue.script().tubes().stream()
                        .filter(ref -> ref.rack().equals(tube.rack()) && ref.tube() == tube.tube()).findFirst())
                .map(ref -> ref.source()).orElse(cue.source());
    }

    private record Place(SourceRef source, String soundtrack, String position, long seenUs, long fireUs) {
    }
}
