package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;

/** The runs of timecode that are left of a whole line when its code jumps and is lost. */
public final class CodeOnTheLine {
    private CodeOnTheLine() {
    }

    /** At this night time the code goes on from another moment; both in microseconds. */
    public record Jump(long atUs, long toUs) {
    }

    /**
     * The runs of a line that is played from its beginning.
     *
     * @param fromUs show time at which the line begins, microseconds
     * @param toUs show time at which it ends
     * @param jumps in order
     * @param lost in order, none overlapping
     */
    public static List<Signal.Run> runs(long fromUs, long toUs, List<Jump> jumps, List<Window> lost) {
        List<Signal.Run> runs = new ArrayList<>();
        long beginUs = fromUs;
        long offsetUs = 0;
        for (Jump jump : jumps) {
            add(beginUs, Math.min(jump.atUs(), toUs - offsetUs), offsetUs, lost, runs);
            beginUs = jump.atUs();
            offsetUs = jump.toUs() - jump.atUs();
        }
        add(beginUs, toUs - offsetUs, offsetUs, lost, runs);
        return runs;
    }

    private static void add(long fromUs, long toUs, long offsetUs, List<Window> lost, List<Signal.Run> runs) {
        long beginUs = fromUs;
        for (Window window : lost) {
            if (window.toUs() > beginUs && window.fromUs() < toUs) {
                if (window.fromUs() > beginUs) {
                    runs.add(new Signal.Run(beginUs, window.fromUs(), offsetUs));
                }
                beginUs = window.toUs();
            }
        }
        if (beginUs < toUs) {
            runs.add(new Signal.Run(beginUs, toUs, offsetUs));
        }
    }
}
