package org.girandole.studio.views;

import java.util.ArrayList;
import java.util.List;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.LaneView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.TrackView;

/** Invented shows as a server would answer them. */
public final class Shows {
    public static final String URI = "file:///shows/small.show";
    private static final long S = 1_000_000;

    private Shows() {
    }

    public static SourcePlace line(int line) {
        return new SourcePlace(URI, "small.show", line, 5, 10);
    }

    /** A cue with a rise; 0 for what is seen as it is fired. */
    public static CueView cue(int number, String position, String kind, long burstUs, long riseUs, int line) {
        Spot from = new Spot("ABC".indexOf(position) * 30.0 - 30, 0, 0);
        boolean shell = riseUs > 0;
        return new CueView(number, "key" + number, null, 0, "Whole", position, "E" + kind, "Some " + kind, kind, "red", 1, burstUs, burstUs,
                burstUs - riseUs, false, false, S, 50_000, "10:00:00:00", "M1", number, "R1", number, 0, 0, from,
                shell ? new Spot(from.x(), from.y(), 100) : null, shell ? 100.0 : null, shell ? 60.0 : null, null, null, List.of(), line(line));
    }

    /** The small show with a recording that is missing, and the piece of its name. */
    public static PlanView missing(String piece) {
        PlanView plan = small();
        TrackView track = plan.tracks().get(0);
        TrackView missing = new TrackView(track.name(), track.label(), track.slot(), track.lengthUs(), track.prerollUs(), track.rate(), track.start(), null,
                "tune.wav: there is no such file", piece, track.bars(), track.marks(), track.sections(), track.holds(), track.source());
        return new PlanView(plan.uri(), null, plan.show(), plan.label(), plan.stamp(), plan.clean(), plan.errors(), plan.warnings(), plan.waived(), plan.files(),
                List.of(missing), plan.lanes(), plan.cues(), plan.findings());
    }

    /** A minute, two positions and one that the site does not have, a hold, four cues on three lines, one error and one waived finding. */
    public static PlanView small() {
        List<CueView> cues = List.of(cue(1, "A", "shell", 10 * S, 2 * S, 40), cue(2, "B", "mine", 10 * S, 0, 41), cue(3, "A", "shell", 30 * S, 2 * S, 42),
                cue(4, "C", "comet", 45 * S, 0, 43));
        List<FindingView> findings = List.of(
                new FindingView("hold-violated", "error", "Fires in a hold", "28 s", "none", "the script", "move it", false, List.of(3), List.of("A"), line(42)),
                new FindingView("separation", "error", "Too near", "1 m", "2 m", "a table", "move it", true, List.of(1), List.of("A"), line(40)));
        return of(cues, findings);
    }

    public static PlanView of(List<CueView> cues, List<FindingView> findings) {
        List<TrackView.Bar> bars = new ArrayList<>();
        for (int bar = 0; bar < 30; bar++) {
            bars.add(new TrackView.Bar(bar + 1, List.of(bar * 2 * S, bar * 2 * S + S / 2, bar * 2 * S + S, bar * 2 * S + 3 * S / 2)));
        }
        TrackView track = new TrackView("Tune", "Tune", 0, 60 * S, 60 * S, "25", "10:00:00:00", null, "the script names no audio", null, bars,
                List.of(new TrackView.Mark("Start", 4 * S), new TrackView.Mark("Hit", 10 * S)), List.of(new TrackView.Span("Whole", 4 * S, 59 * S, line(39))),
                List.of(new TrackView.Span("boat", 26 * S, 29 * S, line(44))), line(10));
        TrackView encore = new TrackView("Encore", "Encore", 1, 20 * S, 60 * S, "25", "11:00:00:00", null, "the script names no audio", null, List.of(), List.of(),
                List.of(), List.of(), line(20));
        List<LaneView> lanes = List.of(new LaneView("A", true, 2), new LaneView("B", true, 1), new LaneView("C", false, 1));
        return new PlanView(URI, null, "Small", "Small show", "ABCD-1234", false, 1, 0, 1, List.of(URI), List.of(track, encore), lanes, cues, findings);
    }
}
