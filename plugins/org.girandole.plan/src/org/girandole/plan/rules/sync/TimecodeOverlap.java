package org.girandole.plan.rules.sync;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;

/** Two soundtracks with labels in common, so that a wrong slot fires the wrong show. */
public final class TimecodeOverlap implements Rule {
    private static final RuleInfo INFO = new RuleInfo("timecode-overlap", RuleInfo.Family.SYNC, Severity.WARNING,
            "Two soundtracks share timecode labels.",
            "With labels of their own, a controller left in the wrong slot fires nothing. With shared ones it fires the other "
                    + "show.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        List<Span> spans = new ArrayList<>();
        plan.soundtracks().forEach(track -> track.line().ifPresent(line -> spans.add(span(track, line))));
        spans.sort(Comparator.comparingLong(Span::fromUs).thenComparing(span -> span.track().slot())
                .thenComparing(span -> span.track().name()));
        Span last = null;
        for (Span span : spans) {
            if (last != null && span.fromUs() < last.toUs()) {
                out.report("Soundtracks " + last.track().name() + " and " + span.track().name() + " share timecode labels from "
                        + span.line().start() + " on")
                        .found(span.track().name() + " begins at " + span.line().start(),
                                "a first label after the end of " + last.track().name() + ", " + Quantity.span(last.toUs() - last.fromUs())
                                        + " after " + last.line().start())
                        .remedy("give each soundtrack an hour of its own, such as 10:00:00:00 and 11:00:00:00")
                        .about(Subject.of(span.track().name(), last.track().name()))
                        .at(span.track().script().source());
            }
            if (last == null || span.toUs() > last.toUs()) {
                last = span;
            }
        }
    }

    /** Labels as the time of day they stand for: lines of different rates can then be compared. */
    private static Span span(PlannedSoundtrack track, TimecodeLine line) {
        Timecode start = line.start();
        long secondsOfDay = start.hours() * 3600L + start.minutes() * 60L + start.seconds();
        long fromUs = secondsOfDay * 1_000_000 + start.frames() * 1_000_000L / line.rate().nominal();
        return new Span(track, line, fromUs, fromUs + line.prerollUs() + track.lengthUs().orElse(0L));
    }

    private record Span(PlannedSoundtrack track, TimecodeLine line, long fromUs, long toUs) {
    }
}
