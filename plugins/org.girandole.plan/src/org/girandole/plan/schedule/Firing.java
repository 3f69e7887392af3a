package org.girandole.plan.schedule;

import java.util.Optional;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;

/**
 * One shot of one cue at one place, with the moment the script asks for and nothing else computed yet.
 *
 * @param section empty outside of sections
 * @param origin what the cue's time counts from
 * @param written the moment of the cue line
 * @param steps how many times the distribution's distance this place comes later
 * @param moment {@code written} and those distances: when it is to be seen or heard
 * @param at coordinates of the position
 */
record Firing(String key, Score score, String section, ScoreItem.Cue cue, Origin origin, Moment written, int steps, Moment moment,
        long momentUs, String position, int place, Point at, int shot, Effect effect, Optional<Chain> chain) {
    int pieces() {
        return chain.map(Chain::items).orElse(1);
    }
}
