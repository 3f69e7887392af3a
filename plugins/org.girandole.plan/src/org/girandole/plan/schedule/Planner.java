package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Burst;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.Timing;
import org.girandole.plan.allocate.LockFile;
import org.girandole.plan.allocate.Memory;
import org.girandole.plan.allocate.Request;
import org.girandole.plan.schedule.WiringMemory.Wired;
import org.girandole.plan.schedule.WiringMemory.Wish;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.ShowScript;
import org.girandole.timecode.TimecodeLine;

/**
 * Computes the plan of a show. Whatever cannot be planned becomes a trouble of the plan and is left out of it; no input makes it fail.
 */
public final class Planner {
    private final boolean fresh;
    private final WiringMemory wirings;

    /** Plans with what the lock file remembers. */
    public Planner() {
        this(new WiringMemory());
    }

    /**
     * Plans with what the lock file remembers, sooner.
     *
     * @param wirings of earlier plans of the same show; this one adds to it, and comes out as it would without
     */
    public Planner(WiringMemory wirings) {
        this(false, wirings);
    }

    private Planner(boolean fresh, WiringMemory wirings) {
        this.fresh = fresh;
        this.wirings = wirings;
    }

    /** Plans as if nothing were remembered; a lock file only serves for comparison. */
    public static Planner fresh() {
        return new Planner(true, new WiringMemory());
    }

    /** The plan of this script without a lock file. */
    public Plan plan(ShowScript script) {
        return plan(script, Optional.empty());
    }

    /** The plan of this script; what differs from the lock file is among its troubles. */
    public Plan plan(ShowScript script, Optional<LockFile> lock) {
        Plan plan = new Run(script, fresh ? Memory.NONE : lock.map(LockFile::memory).orElse(Memory.NONE), wirings).plan();
        return lock.map(file -> LockTroubles.added(plan, file)).orElse(plan);
    }

    /** A firing with everything but its number, its pin and its tube. */
    private record Timed(Firing firing, Timing timing, Aim aim, Optional<Burst> burst, Optional<Lot> lot) {
    }

    private static final class Run {
        private final ShowScript script;
        private final Memory memory;
        private final WiringMemory wirings;
        private final TroubleLog troubles = new TroubleLog();
        private final SitePlan site;

        Run(ShowScript script, Memory memory, WiringMemory wirings) {
            this.script = script;
            this.memory = memory;
            this.wirings = wirings;
            this.site = new SitePlan(script.site());
        }

        Plan plan() {
            Expansion expansion = new Expansion(script, site, troubles);
            List<Timed> timed = timed(expansion.firings());
            return new Plan(script, ReleaseStamp.of(script.inputs()), expansion.soundtracks(),
                    cues(timed, timecodeLines(expansion.soundtracks())), troubles.all());
        }

        private Map<Integer, TimecodeLine> timecodeLines(List<PlannedSoundtrack> planned) {
            Map<Integer, TimecodeLine> lines = new HashMap<>();
            planned.forEach(soundtrack -> soundtrack.line().ifPresent(line -> lines.putIfAbsent(soundtrack.slot(), line)));
            return lines;
        }

        private List<Timed> timed(List<Firing> firings) {
            Map<String, Lot> lots = new Lots(script.lots()).draw(firings, troubles);
            Delays delays = new Delays(script, site, troubles);
            List<Timed> timed = new ArrayList<>(firings.size());
            for (Firing firing : firings) {
                Optional<Lot> lot = Optional.ofNullable(lots.get(firing.key()));
                try {
                    Rise rise = Rise.of(firing.effect(), lot);
                    Aim aim = Aims.of(firing.cue(), firing.shot(), firing.at(), site);
                    Optional<Burst> burst = Bursts.of(firing.effect(), rise, aim, firing.at());
                    timed.add(new Timed(firing, delays.of(firing, rise, burst), aim, burst, lot));
                } catch (Unresolved e) {
                    troubles.report(e);
                }
            }
            timed.sort(Comparator.comparingInt((Timed t) -> t.firing().score().slot())
                    .thenComparingLong(t -> t.timing().fireUs()).thenComparing(t -> t.firing().key()));
            return timed;
        }

        private List<PlannedCue> cues(List<Timed> timed, Map<Integer, TimecodeLine> lines) {
            List<Wired> wired = new Wiring(script, memory).of(timed.stream().map(this::wish).toList(), wirings);
            // One cue hangs on no other, so that these are made side by side.
            return IntStream.range(0, timed.size()).parallel().mapToObj(i -> cue(i + 1, timed.get(i), wired.get(i), lines)).toList();
        }

        private PlannedCue cue(int number, Timed t, Wired wired, Map<Integer, TimecodeLine> lines) {
            Firing firing = t.firing();
            return new PlannedCue(firing.key(), number, firing.score().soundtrack(), firing.score().slot(), firing.section(), firing.cue().name(),
                    firing.shot(), firing.effect(), firing.chain(), t.lot().map(Lot::name), firing.position(), t.timing(),
                    Optional.ofNullable(lines.get(firing.score().slot())).flatMap(line -> line.momentAt(t.timing().fireUs()))
                            .map(TimecodeLine.Moment::label),
                    t.aim(), wired.pin(), wired.tube(), wired.circuit(), t.burst(),
                    firing.chain().map(chain -> Delays.items(chain, t.timing())).orElse(List.of()), firing.cue(), firing.cue().source());
        }

        private Wish wish(Timed timed) {
            return new Wish(request(timed), timed.firing().effect().igniter());
        }

        private Request request(Timed timed) {
            Firing firing = timed.firing();
            int order = firing.place() * firing.cue().count() + firing.shot();
            return new Request(firing.key(), firing.score().slot(), timed.timing().fireUs(), firing.position(), firing.cue().effect(),
                    firing.effect().kind().needsTube(), firing.effect().calibreM(), Math.max(1, firing.pieces()), timed.aim(),
                    at(firing.cue().pins(), order), at(firing.cue().tubes(), order));
        }

        private <T> Optional<T> at(List<T> written, int order) {
            return order < written.size() ? Optional.of(written.get(order)) : Optional.empty();
        }
    }
}
