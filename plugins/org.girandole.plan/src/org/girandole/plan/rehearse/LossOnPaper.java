package org.girandole.plan.rehearse;

import java.util.OptionalLong;

/**
 * One loss of timecode worked out by formula, cue by cue, without going through the night: what a simulation is held against.
 *
 * <p>With L the end of the last frame read before the loss, R the moment of the lock after it, x the error of the clock on its own and m
 * the step at which a cue is commanded, a cue is commanded at L + t with t + x(t) = m - L while the code is away, at R when the lock
 * passes over it, and at m after that; with smoothing, at R + (m - R - x(R)) / (1 + s) until the difference x(R) is made good at the pace s.
 */
final class LossOnPaper {
    private static final double MILLION = 1e6;
    private static final double DAY_US = 86_400e6;
    private static final double HALF = 0.5;

    private final ControllerModel model;
    /** First lock, or never. */
    private long lockUs = Long.MAX_VALUE;
    private long lostUs = Long.MAX_VALUE;
    private long relockUs = Long.MAX_VALUE;
    private long codeEndUs = Long.MAX_VALUE;

    /** @param signal of one run, or of two without a jump between them; at least one whole frame in each */
    LossOnPaper(Signal signal, ControllerModel model) {
        this.model = model;
        for (Signal.Run run : signal.runs()) {
            long whole = signal.wholeFrames(run);
            if (whole < 1) {
                continue;
            }
            codeEndUs = signal.frameEndUs(run, whole);
            boolean hasLock = lockUs != Long.MAX_VALUE;
            boolean unnoticed = hasLock && signal.frameEndUs(run, 1) <= lostUs + signal.framesUs(model.lossFrames());
            if (!unnoticed && whole < model.lockFrames()) {
                continue;
            }
            long atUs = unnoticed ? signal.frameEndUs(run, 1) : signal.frameEndUs(run, model.lockFrames());
            if (hasLock) {
                relockUs = atUs;
            } else {
                lockUs = atUs;
                lostUs = codeEndUs;
            }
        }
    }

    /** When a cue is commanded; empty when it never is. Jitter is left out. */
    OptionalLong commandUs(long dueUs) {
        long m = -Math.floorDiv(-dueUs, model.stepUs()) * model.stepUs();
        if (lockUs == Long.MAX_VALUE || m < lockUs - model.lateToleranceUs()) {
            return OptionalLong.empty();
        }
        if (m <= lockUs) {
            return OptionalLong.of(lockUs);
        }
        if (m < lostUs) {
            return OptionalLong.of(m);
        }
        double alone = lostUs + onItsOwn(m - lostUs);
        if (relockUs == Long.MAX_VALUE || alone < relockUs) {
            return OptionalLong.of(Math.round(alone));
        }
        return afterRelock(m);
    }

    private OptionalLong afterRelock(long m) {
        double carried = error(relockUs - lostUs);
        boolean smooth = model.slewPpm() > 0 && Math.abs(carried) <= ControllerModel.SMOOTHED_UP_TO_US;
        double pace = model.slewPpm() / MILLION;
        if (!smooth) {
            if (m < relockUs - model.lateToleranceUs()) {
                return OptionalLong.empty();
            }
            carried = 0;
        }
        double command = Math.max(m, relockUs);
        if (carried != 0) {
            double slewed = carried < 0 ? relockUs + (m - relockUs - carried) / (1 + pace) : relockUs + (m - relockUs - carried) / (1 - pace);
            double madeGoodUs = relockUs + Math.abs(carried) / pace;
            command = slewed < madeGoodUs ? Math.max(relockUs, slewed) : m;
        }
        if (command < codeEndUs) {
            return OptionalLong.of(Math.round(command));
        }
        double left = carried == 0 ? 0 : Math.copySign(Math.max(0, Math.abs(carried) - pace * (codeEndUs - relockUs)), carried);
        return OptionalLong.of(Math.round(codeEndUs + onItsOwn(m - codeEndUs - left)));
    }

    /** The true time t after which a clock left alone reads {@code readUs}: the root near it of {@code (1 + y) t + D t^2 / 2}. */
    private double onItsOwn(double readUs) {
        double b = 1 + model.clock().ppm() / MILLION;
        double a = model.clock().ageingPpmPerDay() / DAY_US / 2 / MILLION;
        return 2 * readUs / (b + Math.sqrt(b * b + 4 * a * readUs));
    }

    private double error(double elapsedUs) {
        return (model.clock().ppm() * elapsedUs + model.clock().ageingPpmPerDay() / DAY_US * elapsedUs * elapsedUs * HALF) / MILLION;
    }
}
