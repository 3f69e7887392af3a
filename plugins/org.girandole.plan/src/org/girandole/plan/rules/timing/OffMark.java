package org.girandole.plan.rules.timing;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.girandole.music.analysis.Onset;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/**
 * A cue written as a clock time that comes very near a mark without meeting it; and, where the recording was listened to, a cue that claims a
 * hit of the music and lies beside it, be it because of the cue, of the mark or of the tempo.
 */
public final class OffMark implements SharingRule {
    /** Nearer than this and not on the mark looks like a slip; farther away looks like intent. */
    static final long NEAR_US = 250_000;
    private static final RuleInfo INFO = new RuleInfo("off-mark", RuleInfo.Family.TIMING, Severity.WARNING,
            "A cue just misses a mark, or a hit of the music.",
            "A quarter of a second beside a hit is seen as late. A time copied by hand goes stale when the mark moves.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        long stepUs = plan.script().firingSystem().flatMap(FiringSystem::stepUs).orElse(0L);
        Map<String, NavigableMap<Long, String>> marks = new HashMap<>();
        for (PlannedSoundtrack track : plan.soundtracks()) {
            NavigableMap<Long, String> byTime = new TreeMap<>();
            track.marksUs().forEach((name, us) -> byTime.putIfAbsent(us, name));
            marks.put(track.name(), byTime);
        }
        Map<String, Hits> hits = new HashMap<>();
        plan.soundtracks().forEach(track -> Hits.of(track).ifPresent(heard -> hits.put(track.name(), heard)));
        Set<Told> told = new HashSet<>();
        for (PlannedCue cue : workings.oncePerPlace()) {
            TimeExpr at = cue.script().at();
            long seenUs = cue.timing().seenUs();
            boolean clock = at.anchor() instanceof TimeExpr.AtClock written && at.steps().isEmpty() && written.us() == seenUs;
            Map.Entry<Long, String> mark = clock ? nearest(marks.get(cue.soundtrack()), seenUs) : null;
            // A miss below the controller's step cannot be fired any better.
            if (mark != null && misses(seenUs, mark.getKey(), stepUs)) {
                report(cue, mark, out);
            } else if (hits.containsKey(cue.soundtrack())) {
                Optional<Onset> missed = hits.get(cue.soundtrack()).missedBy(cue, stepUs);
                if (missed.isPresent() && told.add(new Told(cue.source(), cue.soundtrack(), seenUs))) {
                    report(cue, missed.get(), out);
                }
            }
        }
    }

    /** Positions of one line that are seen at one moment have the same story to tell. */
    private record Told(SourceRef source, String soundtrack, long seenUs) {
    }

    private static boolean misses(long seenUs, long markUs, long stepUs) {
        long missUs = Math.abs(seenUs - markUs);
        return missUs > stepUs && missUs <= NEAR_US;
    }

    private static void report(PlannedCue cue, Map.Entry<Long, String> mark, Findings out) {
        long seenUs = cue.timing().seenUs();
        long missUs = Math.abs(seenUs - mark.getKey());
        out.report(Cues.name(cue) + " misses the mark " + mark.getValue() + " by " + Quantity.span(missUs))
                .found(Quantity.moment(seenUs) + ", " + Quantity.span(missUs)
                        + (seenUs < mark.getKey() ? " before " : " after ") + mark.getValue(),
                        "on the mark at " + Quantity.moment(mark.getKey()) + ", or more than " + Quantity.span(NEAR_US)
                                + " away from it")
                .remedy("write 'at " + mark.getValue() + "' in place of the clock time")
                .about(Cues.subject(cue))
                .data(Map.of("mark", mark.getValue()))
                .at(cue.script().at().source());
    }

    private static void report(PlannedCue cue, Onset hit, Findings out) {
        long seenUs = cue.timing().seenUs();
        String miss = Quantity.span(Math.abs(seenUs - hit.timeUs()));
        String side = seenUs < hit.timeUs() ? " before " : " after ";
        TimeExpr.Anchor anchor = cue.script().at().anchor();
        out.report(Cues.name(cue) + " lies " + miss + side + "a hit of the music"
                + (anchor instanceof TimeExpr.AtMark mark ? ", and so does its mark " + mark.mark() : ""))
                .found(Quantity.moment(seenUs) + ", " + miss + side + "the hit heard at " + Quantity.moment(hit.timeUs()),
                        "within " + Quantity.span(Hits.TOGETHER_US) + " of it, or more than " + Quantity.span(Hits.NEAR_US) + " away")
                .basis("what is seen and heard as one: ITU-R BT.1359-1, sound 45 ms early (from memory); 150 ms: " + Basis.COMMON_PRACTICE)
                .remedy(remedy(anchor, hit))
                .about(Cues.subject(cue))
                .at(cue.script().at().source());
    }

    private static String remedy(TimeExpr.Anchor anchor, Onset hit) {
        if (anchor instanceof TimeExpr.AtClock) {
            return "listen there; write 'at " + Quantity.moment(hit.timeUs()) + "' if the hit is meant";
        }
        return anchor instanceof TimeExpr.AtMark ? "listen there; move the mark to " + Quantity.moment(hit.timeUs())
                + " if the hit is meant ('girandole marks find --snap' does it for marks written as times)"
                : "listen there; correct the tempo if its beats do not lie on the music, or the bar and beat";
    }

    private static Map.Entry<Long, String> nearest(NavigableMap<Long, String> marks, long us) {
        if (marks == null) {
            return null;
        }
        Map.Entry<Long, String> before = marks.floorEntry(us);
        Map.Entry<Long, String> after = marks.ceilingEntry(us);
        if (before == null || after == null) {
            return before == null ? after : before;
        }
        return us - before.getKey() <= after.getKey() - us ? before : after;
    }
}
