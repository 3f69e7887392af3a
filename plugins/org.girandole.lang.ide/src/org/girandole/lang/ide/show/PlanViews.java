package org.girandole.lang.ide.show;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.Timing.RiseSource;
import org.girandole.plan.Timing.SeenMode;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.LaneView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.TrackView;

/** Says a plan in the words of the protocol. */
final class PlanViews {
    /** A script may claim any length; nobody scrolls through more bars than this. */
    private static final int MOST_BARS = 5_000;
    private static final String NO_AUDIO = "the script names no audio";

    private final CheckedPlan checked;
    private final Plan plan;
    private final EditedShow show;
    private final Map<String, Point> positions = new LinkedHashMap<>();
    private final ScriptIndex index;

    private PlanViews(CheckedPlan checked, EditedShow show) {
        this.checked = checked;
        this.plan = checked.plan();
        this.show = show;
        this.index = ScriptIndex.of(plan);
        plan.script().site().ifPresent(site -> site.positions().forEach(p -> positions.putIfAbsent(p.name(), p.at())));
    }

    static PlanView of(CheckedPlan checked, EditedShow show) {
        return new PlanViews(checked, show).view();
    }

    private PlanView view() {
        return new PlanView(show.uri(), null, plan.script().show().name(), plan.script().show().label(), plan.stamp().printed(), checked.clean(),
                open(Severity.ERROR), open(Severity.WARNING), (int) checked.findings().stream().filter(Finding::waived).count(),
                show.scripts(), plan.soundtracks().stream().map(this::track).toList(), lanes(),
                plan.cues().stream().map(this::cue).toList(), findings(checked.findings(), plan, show));
    }

    private int open(Severity severity) {
        return (int) checked.findings().stream().filter(f -> f.severity() == severity && !f.waived()).count();
    }

    private List<LaneView> lanes() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        positions.keySet().forEach(name -> counts.put(name, 0));
        plan.cues().forEach(cue -> counts.merge(cue.position(), 1, Integer::sum));
        return counts.entrySet().stream().map(e -> new LaneView(e.getKey(), positions.containsKey(e.getKey()), e.getValue())).toList();
    }

    private TrackView track(PlannedSoundtrack track) {
        Optional<AudioFile> audio = track.script().audio();
        Optional<String> sound = audio.filter(file -> file.found().isPresent()).map(file -> show.uri(file.path()));
        String silence = sound.isPresent() ? null : audio.map(file -> file.path() + ": " + file.trouble().orElse("it is not there")).orElse(NO_AUDIO);
        return new TrackView(track.name(), track.script().label(), track.slot(), track.lengthUs().orElse(null),
                track.line().map(line -> line.prerollUs()).orElse(null), track.line().map(line -> line.rate().toString()).orElse(null),
                track.line().map(line -> line.start().toString()).orElse(null), sound.orElse(null), silence, audio.flatMap(this::piece).orElse(null), bars(track),
                track.marksUs().entrySet().stream().map(e -> new TrackView.Mark(e.getKey(), e.getValue())).toList(),
                track.sections().stream().map(s -> new TrackView.Span(s.label(), s.fromUs(), s.toUs(), show.place(s.source()))).toList(),
                track.holds().stream().map(h -> new TrackView.Span(h.reason(), h.fromUs(), h.toUs(), show.place(h.source()))).toList(),
                show.place(track.script().source()));
    }

    /** Of a recording that is there, even a damaged one, nobody is told to play another in its place. */
    private Optional<String> piece(AudioFile audio) {
        String named = audio.path().replaceFirst("(?i)[.]wav$", ".mid");
        boolean playable = !named.equals(audio.path()) && !Files.exists(show.path(audio.path())) && Files.isRegularFile(show.path(named));
        return playable ? Optional.of(show.path(named).toUri().toString()) : Optional.empty();
    }

    private static List<TrackView.Bar> bars(PlannedSoundtrack track) {
        if (track.tempo().isEmpty() || track.lengthUs().isEmpty()) {
            return List.of();
        }
        TempoMap tempo = track.tempo().get();
        List<TrackView.Bar> bars = new ArrayList<>();
        for (int bar = 1; bar <= MOST_BARS && tempo.timeUsOfBar(bar, Rational.ONE) <= track.lengthUs().get(); bar++) {
            List<Long> beats = new ArrayList<>();
            for (int beat = 1; beat <= tempo.meterOfBar(bar).beatsPerBar(); beat++) {
                beats.add(tempo.timeUsOfBar(bar, Rational.of(beat)));
            }
            bars.add(new TrackView.Bar(bar, List.copyOf(beats)));
        }
        return bars;
    }

    private CueView cue(PlannedCue cue) {
        Effect effect = cue.effect();
        return new CueView(cue.number(), cue.key(), cue.cueName().orElse(null), cue.slot(), cue.section(), cue.position(), cue.what(), cue.label(),
                effect.kind().word(), effect.colour().orElse(null), cue.pieces(), cue.timing().seenUs(),
                cue.timing().fireUs() + cue.timing().riseUs(), cue.timing().fireUs(), cue.timing().mode() == SeenMode.HEARD,
                cue.timing().riseSource() == RiseSource.ESTIMATED || cue.burst().map(PlannedCue.Burst::estimated).orElse(false),
                effect.lastsUs().orElse(null), cue.timing().toleranceUs(), cue.timecode().map(Object::toString).orElse(null),
                cue.pin().map(PlannedCue.Pin::module).orElse(null), cue.pin().map(PlannedCue.Pin::pin).orElse(null),
                cue.tube().map(PlannedCue.Tube::rack).orElse(null), cue.tube().map(PlannedCue.Tube::tube).orElse(null),
                cue.aim().tiltDeg(), cue.aim().bearingDeg(),
                Optional.ofNullable(positions.get(cue.position())).map(at -> spot(index.firedFrom(cue, at))).orElse(null),
                cue.burst().map(burst -> spot(burst.at())).orElse(null), effect.apexM().orElse(null), effect.spreadM().orElse(null),
                effect.shots().orElse(null), effect.shotGapUs().orElse(null),
                cue.items().stream().map(item -> new CueView.Item(item.lightUs(), item.seenUs())).toList(), show.place(cue.source()));
    }

    /** Findings, each with the cues that it stands at: those of its line, at its positions if it names any. */
    static List<FindingView> findings(List<Finding> findings, Plan plan, EditedShow show) {
        Map<String, List<PlannedCue>> byLine = new HashMap<>();
        plan.cues().forEach(cue -> byLine.computeIfAbsent(line(cue.source()), key -> new ArrayList<>()).add(cue));
        return findings.stream().map(finding -> new FindingView(finding.rule(), finding.severity().word(), finding.message(),
                finding.found(), finding.allowed(), finding.basis(), finding.remedy(), finding.waived(),
                byLine.getOrDefault(line(finding.source()), List.of()).stream()
                        .filter(cue -> finding.subject().positions().isEmpty() || finding.subject().positions().contains(cue.position()))
                        .map(PlannedCue::number).toList(),
                finding.subject().positions(),
                show.place(finding.source()))).toList();
    }

    private static String line(SourceRef source) {
        return source.file() + ":" + source.line();
    }

    static Spot spot(Point point) {
        return new Spot(point.xM(), point.yM(), point.zM());
    }
}
