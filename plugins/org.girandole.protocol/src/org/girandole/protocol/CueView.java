package org.girandole.protocol;

import java.util.List;

/**
 * One igniter's worth of show.
 *
 * @param number from 1, in firing order over the whole show
 * @param key stable name
 * @param name the name the script gave the cue, or null
 * @param slot of its soundtrack
 * @param what name of the effect or chain
 * @param label how it is called on sheets
 * @param kind word of the effect's kind: shell, salute, mine, comet, candle, cake, fountain, wheel, flare, rocket
 * @param colour as the script says, or null
 * @param pieces pieces of pyrotechnics: more than one for a chain
 * @param seenUs when it is to be seen; for heard cues when it is to be heard
 * @param burstUs when it bursts or first shows: {@code fireUs} and the rise
 * @param fireUs when it is fired
 * @param estimated whether its rise or its burst is an estimate
 * @param lastsUs how long it is seen, or null
 * @param toleranceUs worst-case error of the moment
 * @param timecode of the firing, or null
 * @param from where it is fired, or null when the site does not have the position
 * @param burst where it bursts, or null for what does not burst
 * @param apexM height as the script says, or null
 * @param spreadM width as the script says, or null
 * @param shots of a candle or cake, or null
 * @param shotGapUs time between its shots, or null
 * @param items of a chain
 */
public record CueView(int number, String key, String name, int slot, String section, String position, String what, String label, String kind,
        String colour, int pieces, long seenUs, long burstUs, long fireUs, boolean heard, boolean estimated, Long lastsUs, long toleranceUs,
        String timecode, String module, Integer pin, String rack, Integer tube, double tiltDeg, double bearingDeg, Spot from, Spot burst,
        Double apexM, Double spreadM, Integer shots, Long shotGapUs, List<Item> items, SourcePlace source) {
    /** A place: x to the right of the plan, y away, z up; metres. */
    public record Spot(double x, double y, double z) {
    }

    /** One item of a chain. */
    public record Item(long lightUs, long burstUs) {
    }
}
