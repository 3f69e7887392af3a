package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.girandole.plan.rehearse.RehearsalLog.ErrorPoint;

/**
 * What a controller said and how far off its reckoning was, along the night: all that is needed to draw it.
 *
 * @param samples in order of time; between two of them the state is that of the first, and the error runs straight. Two at the same
 *     moment are a jump of the error.
 */
public record RehearsalTrace(List<Sample> samples) {
    public RehearsalTrace {
        samples = List.copyOf(samples);
    }

    /**
     * One moment.
     *
     * @param atUs night time, microseconds: show time on a night without trouble
     * @param state what the controller says from here on
     * @param clockErrorUs how far its reckoning is ahead of the code as last heard, microseconds; empty while it knows no time
     */
    public record Sample(long atUs, ControllerState state, OptionalLong clockErrorUs) {
    }

    /** The trace of a night until a moment, which is its last sample. */
    public static RehearsalTrace of(RehearsalLog log, long untilUs) {
        List<Sample> samples = new ArrayList<>();
        List<StateChange> states = log.states();
        List<ErrorPoint> errors = log.errors();
        int s = 0;
        int e = 0;
        ControllerState state = ControllerState.NO_SIGNAL;
        while (s < states.size() || e < errors.size()) {
            boolean change = e == errors.size() || s < states.size() && states.get(s).atUs() <= errors.get(e).atUs();
            long atUs = change ? states.get(s).atUs() : errors.get(e).atUs();
            if (atUs > untilUs) {
                break;
            }
            if (change) {
                state = states.get(s++).state();
                if (e == errors.size() || errors.get(e).atUs() > atUs) {
                    samples.add(new Sample(atUs, state, errorAt(errors, e, atUs)));
                }
            } else {
                samples.add(new Sample(atUs, state, OptionalLong.of(errors.get(e++).errorUs())));
            }
        }
        if (samples.isEmpty() || samples.get(samples.size() - 1).atUs() < untilUs) {
            samples.add(new Sample(untilUs, state, errorAt(errors, e, untilUs)));
        }
        return new RehearsalTrace(samples);
    }

    /** On the straight line between the point before {@code next} and that one; empty before the first and behind the last. */
    private static OptionalLong errorAt(List<ErrorPoint> errors, int next, long us) {
        if (next == 0 || next == errors.size()) {
            return OptionalLong.empty();
        }
        ErrorPoint from = errors.get(next - 1);
        ErrorPoint to = errors.get(next);
        double share = (double) (us - from.atUs()) / (to.atUs() - from.atUs());
        return OptionalLong.of(Math.round(from.errorUs() + share * (to.errorUs() - from.errorUs())));
    }

    /** The sample with the largest error, the first of equals; the first sample of all when no time was ever known. */
    public Sample worst() {
        Sample worst = samples.get(0);
        for (Sample each : samples) {
            if (size(each) > size(worst)) {
                worst = each;
            }
        }
        return worst;
    }

    private static long size(Sample sample) {
        return sample.clockErrorUs().isPresent() ? Math.abs(sample.clockErrorUs().getAsLong()) : -1;
    }
}
