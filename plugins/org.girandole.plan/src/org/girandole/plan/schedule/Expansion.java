package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Soundtrack;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;

/** A script with its soundtracks resolved and its scores expanded into firings, nothing else computed. */
final class Expansion {
    private final Map<String, Ruler> rulers = new LinkedHashMap<>();
    private final Map<String, Soundtrack> scripts = new LinkedHashMap<>();
    private final List<PlannedSoundtrack> soundtracks = new ArrayList<>();
    private final List<Firing> firings = new ArrayList<>();

    Expansion(ShowScript script, SitePlan site, TroubleLog troubles) {
        for (Soundtrack soundtrack : script.soundtracks()) {
            if (scripts.putIfAbsent(soundtrack.name(), soundtrack) == null) {
                rulers.put(soundtrack.name(), new Ruler(soundtrack, troubles));
            }
        }
        Catalogue catalogue = new Catalogue(script);
        Keys keys = new Keys();
        for (Score score : script.scores().stream().sorted(Comparator.comparingInt(Score::slot)).toList()) {
            Ruler ruler = rulers.get(score.soundtrack());
            if (ruler == null) {
                troubles.report(Troubles.NAME_UNKNOWN, "There is no soundtrack named " + score.soundtrack())
                        .found(score.soundtrack(), "a soundtrack of the script")
                        .remedy("correct the name or write the soundtrack")
                        .at(score.source());
                continue;
            }
            Scheduler scheduler = new Scheduler(score, ruler, catalogue, site, keys, troubles);
            firings.addAll(scheduler.expand());
            soundtracks.add(soundtrack(score, ruler, scheduler, troubles));
        }
    }

    /** Resolved soundtracks in slot order. */
    List<PlannedSoundtrack> soundtracks() {
        return soundtracks;
    }

    /** All firings, slot by slot in the order of the script. */
    List<Firing> firings() {
        return firings;
    }

    Ruler ruler(Firing firing) {
        return rulers.get(firing.score().soundtrack());
    }

    private PlannedSoundtrack soundtrack(Score score, Ruler ruler, Scheduler scheduler, TroubleLog troubles) {
        Soundtrack soundtrack = scripts.get(score.soundtrack());
        Map<String, Long> marksUs = new LinkedHashMap<>();
        ruler.marks().forEach((name, moment) -> marksUs.put(name, moment.timeUs()));
        return new PlannedSoundtrack(soundtrack, score.slot(), ruler.tempo(), line(soundtrack, troubles), soundtrack.lengthUs(), marksUs,
                scheduler.sections(), scheduler.holds());
    }

    private static Optional<TimecodeLine> line(Soundtrack soundtrack, TroubleLog troubles) {
        if (soundtrack.rate().isEmpty() || soundtrack.start().isEmpty() || soundtrack.prerollUs().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new TimecodeLine(soundtrack.rate().get(), soundtrack.start().get(), soundtrack.prerollUs().get()));
        } catch (TimecodeException e) {
            troubles.report(Troubles.TIMECODE_IMPOSSIBLE, "The timecode of " + soundtrack.name() + " cannot be used: " + e.getMessage())
                    .remedy("correct rate, start or pre-roll")
                    .about(Subject.of(soundtrack.name()))
                    .at(soundtrack.source());
            return Optional.empty();
        }
    }
}
