package org.girandole.plan.schedule;

import org.girandole.plan.script.ScoreItem.Order;

/** In which order the positions of a cue come. */
final class Distributions {
    private Distributions() {
    }

    /** How many times the distance {@code every} position {@code index}, from 0, of {@code count} comes after the first. */
    static int stepsOf(Order order, int index, int count) {
        int fromMiddle = (Math.abs(2 * index - (count - 1)) - (count % 2 == 0 ? 1 : 0)) / 2;
        return switch (order) {
            case TOGETHER -> 0;
            case IN_TURN -> index;
            case OUTWARD -> fromMiddle;
            case INWARD -> (count - 1) / 2 - fromMiddle;
            case ALTERNATING -> 2 * index < count ? 2 * index : 2 * (count - 1 - index) + 1;
        };
    }
}
