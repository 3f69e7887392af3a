package org.girandole.studio.views.site;

import java.util.List;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Letters;

/**
 * Where things are in a drawing of the site: words in the upper left corner, the dial in the upper right, words at the foot, the plan in the
 * room that is left. In a large drawing the plan has all above the foot, and words lie over its edge; in a small one nothing covers it,
 * unless all words are asked for.
 *
 * @param fold how far the words give way
 * @param words room for a line of words in the corner
 * @param high lines of letters that the words in the corner may fill when all are asked for
 * @param dial with its words
 * @param foot top of the words at the foot
 * @param plan the room for the plan
 */
record SiteLayout(Rose rose, Fold fold, double words, double high, Box dial, double foot, Box plan) {
    /** In lines of letters: a drawing that is smaller is brief. */
    private static final double BRIEF_WIDTH = 20;
    private static final double BRIEF_HEIGHT = 16;
    private static final double LEAST_PLAN = 3;
    /** Folded words change with the wind and the selection; the plan does not jump for a line. */
    private static final int USUAL_LINES = 3;

    /** How far words give way: not at all or folded; also the name of the site and the sign at the top of the dial; all that can be asked for. */
    enum Fold {
        USUAL, BRIEF, COUNTED
    }

    static SiteLayout of(SiteState state, double width, double height, Pen pen) {
        double unit = pen.height(Letters.NORMAL);
        if (!state.small() || width >= unit * BRIEF_WIDTH && height >= unit * BRIEF_HEIGHT) {
            return of(state, width, height, pen, Fold.USUAL);
        }
        SiteLayout brief = of(state, width, height, pen, Fold.BRIEF);
        return brief.plan.height() >= unit * LEAST_PLAN ? brief : of(state, width, height, pen, Fold.COUNTED);
    }

    private static SiteLayout of(SiteState state, double width, double height, Pen pen, Fold fold) {
        double unit = pen.height(Letters.NORMAL);
        boolean brief = fold != Fold.USUAL;
        SiteWords say = new SiteWords(pen, state);
        List<SiteWords.Wind> wind = say.wind(brief);
        double radius = fold == Fold.COUNTED ? unit : Math.max(unit * 1.6, Math.min(unit * 3.4, Math.min(width, height) / 9));
        double column = Math.max(radius * 2.4, wind.stream().mapToDouble(line -> pen.width(line.text(), Letters.SMALL)).max().orElse(0)) + unit * 0.6;
        double top = unit * (brief ? 0.5 : 1.4);
        Rose rose = state.small() ? new Rose(width - column / 2, radius + top, radius) : new Rose(width - radius * 1.5, radius + unit * 3, radius);
        double under = rose.y() + radius + unit * (0.6 + wind.size());
        double left = Math.min(rose.x() - radius * 1.2, width - column);
        double foot = height - line(pen) * say.foot(width - unit).size() - unit * 0.5;
        double words = Math.max(unit * 6, left - unit * 1.8);
        double high = foot / unit - 2;
        Box dial = new Box(left, 0, width, under);
        Box all = new Box(0, 0, width, foot);
        if (!state.small()) {
            return new SiteLayout(rose, fold, words, high, dial, foot, all);
        }
        double said = unit * 1.2 + line(pen) * Math.max(brief ? 0 : USUAL_LINES, state.folded() ? say.corner(words, high, fold).size() : 0);
        Box beside = new Box(0, said, left, foot);
        Box below = new Box(0, Math.max(said, under), width, foot);
        Box plan = Ground.scale(state.site(), beside) > Ground.scale(state.site(), below) ? beside : below;
        return new SiteLayout(rose, fold, words, high, dial, foot, plan);
    }

    boolean brief() {
        return fold != Fold.USUAL;
    }

    /** From the top of one line of small words to that of the next. */
    static double line(Pen pen) {
        return pen.height(Letters.SMALL) * 1.15;
    }
}
