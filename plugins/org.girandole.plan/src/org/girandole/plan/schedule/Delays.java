package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.sound.Sound;
import org.girandole.plan.PlannedCue.Burst;
import org.girandole.plan.PlannedCue.Item;
import org.girandole.plan.Subject;
import org.girandole.plan.Times;
import org.girandole.plan.Timing;
import org.girandole.plan.Timing.SeenMode;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ShowScript;

/** The delay arithmetic of one show: {@code fire = seen - rise - latency - sound}, rounded to the firing system's step. */
public final class Delays {
    /** Air of the standard atmosphere at sea level, degrees Celsius, ISO 2533. */
    public static final double STANDARD_AIR_C = 15;

    /** Times that no rise, latency or lead reaches; beyond it sums could overflow. */
    private static final long FARTHEST_US = 24L * 3600 * 1_000_000;

    private final SitePlan site;
    private final TroubleLog troubles;
    private final long stepUs;
    private final long latencyUs;

    Delays(ShowScript script, SitePlan site, TroubleLog troubles) {
        this.site = site;
        this.troubles = troubles;
        Optional<FiringSystem> system = script.firingSystem();
        this.stepUs = Math.max(1, system.flatMap(FiringSystem::stepUs).orElse(1L));
        this.latencyUs = system.flatMap(FiringSystem::latencyUs).orElse(0L);
    }

    /** Timing of a firing with its rise and its burst. */
    Timing of(Firing firing, Rise rise, Optional<Burst> burst) throws Unresolved {
        long leadUs = firing.chain().map(Chain::leadUs).orElse(0L);
        long riseUs = within(rise.us(), firing) + within(leadUs, firing);
        Hearing hearing = firing.cue().heard() ? hearing(firing, burst) : Hearing.SEEN;
        long exactUs = firing.momentUs() - riseUs - within(latencyUs, firing) - hearing.soundUs();
        long fireUs = roundedToStep(exactUs, stepUs);
        long links = firing.chain().map(chain -> Math.max(0, chain.items() - 1L)).orElse(0L);
        long gapToleranceUs = firing.chain().isPresent() ? within(firing.chain().get().gap().plusMinusUs(), firing) : 0;
        return new Timing(firing.cue().heard() ? SeenMode.HEARD : SeenMode.SEEN, firing.momentUs(), riseUs, rise.source(), leadUs,
                latencyUs, hearing.soundUs(), hearing.distanceM(), fireUs - exactUs, fireUs, rise.plusMinusUs(), (stepUs + 1) / 2,
                links * gapToleranceUs, Math.round(Math.sqrt(links) * gapToleranceUs));
    }

    /** The nearest multiple of the step, halves upwards (later). */
    static long roundedToStep(long us, long stepUs) {
        return Math.floorDiv(2 * us + stepUs, 2 * stepUs) * stepUs;
    }

    /** The items of a chain: item k lights at firing + latency + lead + k gaps and bursts a rise later. */
    static List<Item> items(Chain chain, Timing timing) {
        List<Item> items = new ArrayList<>();
        long firstUs = timing.fireUs() + timing.latencyUs() + timing.leadUs();
        long riseUs = timing.riseUs() - timing.leadUs();
        double riseTolerance = timing.riseToleranceUs();
        double gapTolerance = chain.gap().plusMinusUs();
        for (int k = 0; k < chain.items(); k++) {
            long lightUs = firstUs + k * chain.gap().valueUs();
            items.add(new Item(k, lightUs, lightUs + riseUs, timing.riseToleranceUs() + k * chain.gap().plusMinusUs(),
                    Math.round(Math.sqrt(riseTolerance * riseTolerance + k * gapTolerance * gapTolerance))));
        }
        return items;
    }

    private Hearing hearing(Firing firing, Optional<Burst> burst) throws Unresolved {
        if (firing.effect().kind().rises() && burst.isEmpty()) {
            throw new Unresolved(Troubles.APEX_MISSING, firing.cue().effect()
                    + " is to be heard at a moment, but nobody knows how high it bursts", "no apex", "an apex",
                    "give " + firing.effect().name() + " an apex", firing.cue().source());
        }
        Point source = burst.map(Burst::at).orElse(firing.at());
        Point ear = site.listening(firing.at()).orElseThrow(() -> new Unresolved(Troubles.LISTENING_MISSING,
                firing.cue().effect() + " is to be heard at a moment, but nobody knows where the audience listens",
                "no audience", "an audience line or a listening point", "give the site an audience line",
                firing.cue().source()));
        if (site.airC().isEmpty()) {
            troubles.report(Troubles.AIR_ASSUMED, firing.cue().effect() + " is to be heard at a moment, but the site gives no air "
                    + "temperature; 15 degC is used")
                    .found("no air temperature", "a temperature")
                    .remedy("write 'air 18 degC' in the site")
                    .about(new Subject(List.of(firing.cue().effect()), List.of(firing.position())))
                    .at(firing.cue().source());
        }
        double distanceM = SitePlan.distanceM(source, ear);
        try {
            return new Hearing(Sound.delay(distanceM, site.airC().orElse(STANDARD_AIR_C)).delayUs(), distanceM);
        } catch (PhysicsInputException e) {
            throw new Unresolved(Troubles.MOMENT_IMPOSSIBLE, "The way of the sound cannot be computed: " + e.getMessage(),
                    "a site without a way for the sound", "a burst and a listening point that can be computed with",
                    "correct the site", firing.cue().source());
        }
    }

    private long within(long us, Firing firing) throws Unresolved {
        if (us > FARTHEST_US || us < -FARTHEST_US) {
            throw new Unresolved(Troubles.MOMENT_IMPOSSIBLE, firing.cue().effect() + " has a delay of more than a day",
                    Times.seconds(us), "less than 24 h", "correct the rise, the lead or the latency", firing.cue().source());
        }
        return us;
    }

    /** The way of the sound; none for what is seen. */
    private record Hearing(long soundUs, double distanceM) {
        static final Hearing SEEN = new Hearing(0, 0);
    }
}
