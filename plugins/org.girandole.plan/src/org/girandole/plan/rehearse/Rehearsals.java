package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.rehearse.Rehearsed.Pass;
import org.girandole.plan.schedule.WrittenTimes;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Rehearsal;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;
import org.girandole.timecode.TimecodeLine;

/** Goes through the nights that a script describes. */
public final class Rehearsals {
    private static final long AFTER_US = 60_000_000;

    private final Plan plan;
    private final Rehearsal rehearsal;
    private final PlannedSoundtrack track;
    private final TimecodeLine line;
    private final long lengthUs;
    private final WrittenTimes times;

    private Rehearsals(Plan plan, Rehearsal rehearsal) throws ImpossibleNight {
        this.plan = plan;
        this.rehearsal = rehearsal;
        this.track = plan.soundtrack(rehearsal.soundtrack()).orElseThrow(() -> impossible("Soundtrack " + rehearsal.soundtrack()
                + " is not in the show: it has no score", "no score", "a soundtrack with a score", "give it a score, or rehearse another",
                rehearsal.source()));
        this.line = line(track, rehearsal.source());
        this.lengthUs = lengthUs(track, rehearsal.source());
        this.times = WrittenTimes.of(track.script());
    }

    /**
     * The night of a rehearsal.
     *
     * @throws ImpossibleNight if it contradicts itself or the show lacks something
     */
    public static Rehearsed of(Plan plan, Rehearsal rehearsal) throws ImpossibleNight {
        return new Rehearsals(plan, rehearsal).rehearsed();
    }

    /**
     * The show with timecode as it was received, by a controller in the soundtrack's own slot, the control pressed all the time.
     *
     * @param name what to call it
     * @param signal in show time of the soundtrack
     */
    public static Rehearsed of(Plan plan, PlannedSoundtrack track, String name, Signal signal) throws ImpossibleNight {
        FiringSystem system = system(plan, track.script().source());
        List<PlannedCue> loaded = loaded(plan, track.slot());
        return rehearsed(name, track, track.slot(), loaded, List.of(), List.of(), List.of(), system, Optional.empty(), track.script().source(),
                night(loaded, 0, signal, HoldToFire.ALWAYS_PRESSED, OptionalLong.empty(), 0, Long.MAX_VALUE));
    }

    /** What every rehearsal of a soundtrack needs. */
    record Needs(TimecodeLine line, long lengthUs, FiringSystem system, List<Double> deviations) {
    }

    /** @throws ImpossibleNight if the show lacks one of them */
    static Needs needs(Plan plan, PlannedSoundtrack track) throws ImpossibleNight {
        SourceRef source = track.script().source();
        FiringSystem system = system(plan, source);
        List<Double> deviations = Controllers.deviations(system, Optional.empty());
        if (deviations.isEmpty()) {
            throw unknownClock(system, source);
        }
        return new Needs(line(track, source), lengthUs(track, source), system, deviations);
    }

    private static TimecodeLine line(PlannedSoundtrack track, SourceRef source) throws ImpossibleNight {
        return track.line().orElseThrow(() -> impossible("Soundtrack " + track.name() + " has no usable timecode, so that there is "
                + "nothing to lose", "no timecode line", "timecode with rate, start and pre-roll", "give the soundtrack a timecode line and a pre-roll",
                source));
    }

    private static long lengthUs(PlannedSoundtrack track, SourceRef source) throws ImpossibleNight {
        return track.lengthUs().orElseThrow(() -> impossible("Nobody knows how long soundtrack " + track.name() + " is, nor when its "
                + "timecode ends", "no length", "a length", "write the soundtrack's length", source));
    }

    private static ImpossibleNight unknownClock(FiringSystem system, SourceRef source) {
        return impossible("Nobody knows how far the clock of " + system.name() + " may be off", "no clock", "a clock's limit",
                "write 'clock within 25 ppm' in firing system " + system.name() + ", or 'clock off by 25 ppm' in the rehearsal", source);
    }

    private Rehearsed rehearsed() throws ImpossibleNight {
        FiringSystem system = system(plan, rehearsal.source());
        List<Window> lost = windows(rehearsal.lost(), "timecode is lost");
        List<Window> released = windows(rehearsal.released(), "the control is released");
        List<CodeOnTheLine.Jump> jumps = jumps();
        OptionalLong takeover = rehearsal.backupAt().isEmpty() ? OptionalLong.empty()
                : OptionalLong.of(inside(rehearsal.backupAt().get(), rehearsal.backupAt().get().source()));
        expectationsAgree();
        int slot = rehearsal.slot().orElse(track.slot());
        TimecodeLine loadedLine = line;
        if (slot != track.slot()) {
            PlannedSoundtrack other = plan.soundtracks().stream().filter(each -> each.slot() == slot).findFirst().orElseThrow(() -> impossible(
                    "Slot " + slot + " holds nothing", "slot " + slot, "a slot with a score", "write the slot of one of the scores", rehearsal.source()));
            loadedLine = other.line().orElseThrow(() -> impossible("Soundtrack " + other.name() + " in slot " + slot + " has no usable timecode",
                    "no timecode line", "timecode with rate, start and pre-roll", "mend the timecode of " + other.name(), rehearsal.source()));
        }
        // A controller set to one rate makes nothing of code at another: to it there is no signal.
        boolean readable = loadedLine.rate() == line.rate();
        Signal signal = new Signal(line.rate(), -line.prerollUs(),
                readable ? CodeOnTheLine.runs(-line.prerollUs(), lengthUs, jumps, lost) : List.of());
        List<PlannedCue> loaded = loaded(plan, slot);
        List<PlannedCue> notLoaded = slot == track.slot() ? List.of() : loaded(plan, track.slot());
        return rehearsed(rehearsal.name(), track, slot, loaded, notLoaded, lost, released, system, rehearsal.drift(), rehearsal.source(),
                night(loaded, readable ? shiftUs(loadedLine) : 0, signal, new HoldToFire(released), takeover, rehearsal.musicLateUs(),
                        slot == track.slot() ? Long.MAX_VALUE : lengthUs));
    }

    /** How much later the played code reads than the loaded line's own show time; within half a day either way. */
    private long shiftUs(TimecodeLine loaded) {
        long day = line.rate().framesPerDay();
        long frames = line.start().framesAfter(loaded.start());
        long nearest = frames > day / 2 ? frames - day : frames;
        long sizeUs = line.rate().startOf(Math.abs(nearest)).floorUs();
        return (nearest < 0 ? -sizeUs : sizeUs) + line.prerollUs() - loaded.prerollUs();
    }

    /** @param lastCueUs nobody keeps a controller running for cues that come due later than this */
    private static Night night(List<PlannedCue> loaded, long shiftUs, Signal signal, HoldToFire hold, OptionalLong takeover, long musicLateUs,
            long lastCueUs) {
        List<Night.Due> dues = loaded.stream().map(cue -> new Night.Due(cue.key(), cue.timing().fireUs() - shiftUs)).toList();
        long lastUs = Math.max(dues.stream().mapToLong(Night.Due::dueUs).filter(us -> us <= lastCueUs).max().orElse(0),
                signal.runs().stream().mapToLong(Signal.Run::toUs).max().orElse(0));
        return new Night(dues, signal, hold, takeover, musicLateUs, lastUs + AFTER_US);
    }

    private static Rehearsed rehearsed(String name, PlannedSoundtrack track, int slot, List<PlannedCue> loaded, List<PlannedCue> notLoaded,
            List<Window> lost, List<Window> released, FiringSystem system, Optional<Rehearsal.Drift> drift, SourceRef source, Night night)
            throws ImpossibleNight {
        List<Double> deviations = Controllers.deviations(system, drift);
        if (deviations.isEmpty()) {
            throw unknownClock(system, source);
        }
        List<Pass> passes = new ArrayList<>();
        for (double ppm : deviations) {
            ControllerModel model = Controllers.of(system, ppm);
            // The backup's clock is off the other way: the worst that two of the same make can be.
            passes.add(new Pass(Controllers.words(ppm), model, Rehearsing.of(night, model, Controllers.of(system, -ppm))));
        }
        Map<String, PlannedCue> byKey = new LinkedHashMap<>();
        loaded.forEach(cue -> byKey.put(cue.key(), cue));
        return new Rehearsed(name, track, slot, byKey, notLoaded, passes, lost, released, night);
    }

    private static List<PlannedCue> loaded(Plan plan, int slot) {
        return plan.cues().stream().filter(cue -> cue.slot() == slot).toList();
    }

    private static FiringSystem system(Plan plan, SourceRef source) throws ImpossibleNight {
        return plan.script().firingSystem().orElseThrow(() -> impossible("The show names no firing system, so that nobody knows how it follows "
                + "timecode", "no firing system", "a firing system", "describe the controller in a 'firing system' and name it in the show", source));
    }

    private List<Window> windows(List<Rehearsal.Stretch> stretches, String what) throws ImpossibleNight {
        List<Window> windows = new ArrayList<>();
        for (Rehearsal.Stretch stretch : stretches) {
            long fromUs = inside(stretch.from(), stretch.source());
            long toUs = inside(stretch.to(), stretch.source());
            if (toUs <= fromUs) {
                throw impossible("In rehearsal '" + rehearsal.name() + "' " + what + " until before it begins", "from " + Times.clock(fromUs)
                        + " to " + Times.clock(toUs), "an end after the beginning", "write the earlier moment first", stretch.source());
            }
            for (Window before : windows) {
                if (fromUs < before.toUs() && before.fromUs() < toUs) {
                    throw impossible("In rehearsal '" + rehearsal.name() + "' " + what + " twice at once", "from " + Times.clock(fromUs) + " to "
                            + Times.clock(toUs) + ", and from " + Times.clock(before.fromUs()) + " to " + Times.clock(before.toUs()),
                            "stretches that do not overlap", "make one of the two", stretch.source());
                }
            }
            windows.add(new Window(fromUs, toUs));
        }
        windows.sort(Comparator.comparingLong(Window::fromUs));
        return windows;
    }

    private List<CodeOnTheLine.Jump> jumps() throws ImpossibleNight {
        List<CodeOnTheLine.Jump> jumps = new ArrayList<>();
        for (Rehearsal.Jump jump : rehearsal.jumps()) {
            long atUs = inside(jump.at(), jump.source());
            long toUs = inside(jump.to(), jump.source());
            if (jumps.stream().anyMatch(before -> before.atUs() == atUs)) {
                throw impossible("In rehearsal '" + rehearsal.name() + "' the code jumps to two places at once", "two jumps at " + Times.clock(atUs),
                        "one jump at a time", "take out one of the two", jump.source());
            }
            jumps.add(new CodeOnTheLine.Jump(atUs, toUs));
        }
        jumps.sort(Comparator.comparingLong(CodeOnTheLine.Jump::atUs));
        return jumps;
    }

    private void expectationsAgree() throws ImpossibleNight {
        Map<String, Rehearsal.CueEnds> ends = new LinkedHashMap<>();
        for (Rehearsal.Expectation expectation : rehearsal.expectations()) {
            if (expectation instanceof Rehearsal.CueEnds end) {
                Rehearsal.CueEnds before = ends.putIfAbsent(end.cue(), end);
                if (before != null && before.end() != end.end()) {
                    throw impossible("Rehearsal '" + rehearsal.name() + "' expects " + end.cue() + " to end in two ways",
                            CueOutcome.End.valueOf(before.end().name()).words() + " and " + CueOutcome.End.valueOf(end.end().name()).words(),
                            "one end for each cue", "take out one of the two", end.source());
                }
            }
        }
    }

    /** A moment between the beginning of the pre-roll and the end of the music. */
    private long inside(TimeExpr written, SourceRef source) throws ImpossibleNight {
        long us;
        try {
            us = times.us(written);
        } catch (WrittenTimes.MomentException e) {
            throw impossible(e.getMessage(), e.found(), e.allowed(), e.remedy(), source);
        }
        if (us < -line.prerollUs() || us > lengthUs) {
            throw impossible("Rehearsal '" + rehearsal.name() + "' speaks of a moment outside of " + track.name(), Times.clock(us),
                    Times.clock(-line.prerollUs()) + " to " + Times.clock(lengthUs), "write a moment of the pre-roll or of the music", source);
        }
        return us;
    }

    private static ImpossibleNight impossible(String message, String found, String allowed, String remedy, SourceRef source) {
        return new ImpossibleNight(message, found, allowed, remedy, source);
    }
}
