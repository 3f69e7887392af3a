package org.girandole.plan;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;
import org.girandole.timecode.Timecode;

/**
 * One igniter's worth of show: one cue at one position and one shot of it.
 *
 * @param key stable name, survives edits elsewhere in the script
 * @param number from 1, in firing order over the whole show (soundtracks in slot order)
 * @param cueName the name the script gave the cue
 * @param section empty outside of sections
 * @param shot from 0, within the cue at this position
 * @param effect what is fired; for a chain, one item of it
 * @param lot where the item is drawn from, when lots are known
 * @param timecode label of the frame that contains the firing; empty when it lies before the timecode begins
 * @param aim where the tube points
 * @param burst where it bursts, for what bursts
 * @param items the items of a chain, empty otherwise
 */
public record PlannedCue(String key, int number, String soundtrack, int slot, String section, Optional<String> cueName, int shot,
        Effect effect, Optional<Chain> chain, Optional<String> lot, String position, Timing timing, Optional<Timecode> timecode,
        Aim aim, Optional<Pin> pin, Optional<Tube> tube, Optional<Circuit> circuit, Optional<Burst> burst, List<Item> items,
        ScoreItem.Cue script, SourceRef source) {
    public PlannedCue {
        items = List.copyOf(items);
    }

    /** The name of the chain, or of the effect. */
    public String what() {
        return chain.map(Chain::name).orElse(effect.name());
    }

    /** The label of the chain, or of the effect. */
    public String label() {
        return chain.map(Chain::label).orElse(effect.label());
    }

    /** Pieces of pyrotechnics that this firing uses. */
    public int pieces() {
        return chain.map(Chain::items).orElse(1);
    }

    /**
     * Where a tube points.
     *
     * @param tiltDeg angle from the vertical; for a lean to the side, positive to the right as the audience sees it
     * @param bearingDeg compass bearing of the lean, degrees clockwise from +y; 0 when upright
     */
    public record Aim(double tiltDeg, ScoreItem.Lean lean, double bearingDeg) {
    }

    /** A pin of a module, from 1. */
    public record Pin(String module, int pin, boolean byHand) {
    }

    /** A tube of a rack, from 1. A chain takes {@code pieces()} tubes in a row beginning here. */
    public record Tube(String rack, int tube, boolean byHand) {
    }

    /**
     * The pin's loop, ohms and amperes.
     *
     * @param igniters igniters on the pin
     * @param leadM length of the lead, one way
     * @param loopOhm lead and igniters: what the continuity meter should show
     * @param currentA current in each igniter at firing
     */
    public record Circuit(int igniters, double leadM, double loopOhm, double loopMinOhm, double loopMaxOhm, double currentA,
            double currentMinA) {
    }

    /** A burst in the sky. */
    public record Burst(Point at, boolean estimated) {
    }

    /**
     * One item of a chain.
     *
     * @param index from 0
     * @param lightUs when it is lit
     * @param seenUs when it bursts
     * @param toleranceUs worst case, of rise and of the links before it
     * @param toleranceRssUs the same as root sum of squares
     */
    public record Item(int index, long lightUs, long seenUs, long toleranceUs, long toleranceRssUs) {
    }
}
