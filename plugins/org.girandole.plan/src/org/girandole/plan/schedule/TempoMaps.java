package org.girandole.plan.schedule;

import java.util.List;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.MusicTimeException;
import org.girandole.music.RampLaw;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TempoEntry;

/** Makes the tempo map of a soundtrack from the lines of its tempo block. */
final class TempoMaps {
    private TempoMaps() {
    }

    /** Empty without a tempo block, or, with a trouble, when its lines make no map. */
    static Optional<TempoMap> of(Soundtrack soundtrack, TroubleLog troubles) {
        List<TempoEntry> lines = soundtrack.tempo();
        if (lines.isEmpty()) {
            return Optional.empty();
        }
        TempoEntry line = lines.get(0);
        try {
            TempoMap.Builder builder = start(line);
            int bar = 1;
            for (TempoEntry next : lines.subList(1, lines.size())) {
                line = next;
                bar = add(builder, next, bar);
            }
            return Optional.of(builder.build());
        } catch (MusicTimeException | ArithmeticException e) {
            troubles.report(Troubles.TEMPO_IMPOSSIBLE, "The tempo of " + soundtrack.name() + " cannot be used: " + e.getMessage())
                    .remedy("correct this line of the tempo block")
                    .about(Subject.of(soundtrack.name()))
                    .at(line.source());
            return Optional.empty();
        }
    }

    private static TempoMap.Builder start(TempoEntry first) {
        long atUs = first.atUs().orElseThrow(() -> new MusicTimeException(
                "its first line must say when bar 1 begins, such as 'at 0:02.000  72 bpm 4/4'"));
        return TempoMap.startingAt(atUs, first.bpm(), first.meter().orElse(Meter.COMMON));
    }

    private static int add(TempoMap.Builder builder, TempoEntry entry, int lastBar) {
        int bar = entry.bar().orElseThrow(() -> new MusicTimeException(
                "only its first line has a time; the later ones name the bar at which they begin"));
        if (entry.ramp().isPresent()) {
            RampLaw law = entry.ramp().get() == TempoEntry.Ramp.PER_BEAT ? RampLaw.LINEAR_IN_BEATS : RampLaw.LINEAR_IN_TIME;
            builder.ramp(lastBar, entry.bpm(), bar, law);
            if (entry.meter().isPresent()) {
                builder.tempo(bar, entry.bpm(), entry.meter().get());
            }
        } else {
            builder.add(new TempoEvent.Step(bar, entry.bpm(), entry.meter().orElse(null)));
        }
        return bar;
    }
}
