package org.girandole.plan.rehearse;

import java.util.List;
import org.girandole.timecode.FrameRate;

/**
 * The timecode as it arrives. The night runs in microseconds of true time; on a night without trouble the code reads show time, so that
 * night and show time are the same.
 *
 * @param gridUs show time at which the line's first frame begins: minus the pre-roll
 * @param runs stretches of frames that count on without a break, in order, none overlapping
 */
public record Signal(FrameRate rate, long gridUs, List<Run> runs) {
    public Signal {
        runs = List.copyOf(runs);
        for (int i = 1; i < runs.size(); i++) {
            if (runs.get(i).fromUs() < runs.get(i - 1).toUs()) {
                throw new RehearsalException("Two stretches of timecode overlap at " + runs.get(i).fromUs() + " us; expected them in order");
            }
        }
    }

    /**
     * Frames that count on.
     *
     * @param fromUs night time, microseconds; frames cut by the beginning or the end cannot be read
     * @param toUs night time, microseconds, not included
     * @param offsetUs what the code reads more than night time, microseconds: 0 on a night without trouble
     */
    public record Run(long fromUs, long toUs, long offsetUs) {
        public Run {
            if (toUs <= fromUs) {
                throw new RehearsalException("Timecode from " + fromUs + " us to " + toUs + " us; expected its end after its beginning");
            }
        }
    }

    /** How many frames of a run arrive whole. */
    long wholeFrames(Run run) {
        return Math.max(0, rate.framesIn(run.toUs() + run.offsetUs() - gridUs) - firstFrame(run));
    }

    /** Night time at which the n-th whole frame of a run has been read, n from 1. */
    long frameEndUs(Run run, long n) {
        return rate.startOf(firstFrame(run) + n).ceilUs() + gridUs - run.offsetUs();
    }

    private long firstFrame(Run run) {
        long elapsedUs = run.fromUs() + run.offsetUs() - gridUs;
        long frame = rate.framesIn(elapsedUs);
        return rate.startOf(frame).ceilUs() < elapsedUs ? frame + 1 : frame;
    }

    long framesUs(int frames) {
        return rate.startOf(frames).ceilUs();
    }
}
