package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.girandole.music.BarBeat;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.plan.Explanation.Step;
import org.girandole.plan.Times;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.TimeExpr;
import org.girandole.timecode.FrameRate;

/** How the moments of a show's cues follow from what is written: marks, bars, beats, repetitions, figures, distributions. */
public final class MomentSteps {
    private final Expansion expansion;
    private final Map<String, Firing> firings = new HashMap<>();

    private MomentSteps(ShowScript script) {
        expansion = new Expansion(script, new SitePlan(script.site()), new TroubleLog());
        expansion.firings().forEach(firing -> firings.put(firing.key(), firing));
    }

    /** For all cues of this script; the script is expanded once. */
    public static MomentSteps of(ShowScript script) {
        return new MomentSteps(script);
    }

    /** The steps that lead to the moment of a cue; its last result is the moment. Empty for a key that the script does not have. */
    public List<Step> of(String key) {
        Firing firing = firings.get(key);
        if (firing == null) {
            return List.of();
        }
        try {
            return new Way(expansion.ruler(firing)).to(firing);
        } catch (Unresolved e) {
            throw new IllegalStateException("a firing has a moment: " + e.getMessage(), e);
        }
    }

    /** The steps being written for one cue. */
    private static final class Way {
        private final Ruler ruler;
        private final List<Step> steps = new ArrayList<>();
        private final Set<String> marksSaid = new LinkedHashSet<>();

        Way(Ruler ruler) {
            this.ruler = ruler;
        }

        List<Step> to(Firing firing) throws Unresolved {
            origin(firing.origin());
            String name = firing.cue().heard() ? "heard" : "seen";
            if (firing.steps() == 0) {
                moment(name, firing.cue().at(), firing.origin());
                return steps;
            }
            moment("cue line", firing.cue().at(), firing.origin());
            List<TimeExpr.Step> distance = firing.cue().distribution().every().orElseThrow().steps();
            steps.add(new Step(name, "cue line + " + firing.steps() + " * distance",
                    exact(firing.written()) + " + " + firing.steps() + " * (" + words(distance) + ")", result(firing.moment()),
                    firing.position() + " is place " + (firing.place() + 1) + " of " + firing.cue().positions().size() + ", "
                            + firing.cue().distribution().order().name().toLowerCase(Locale.ROOT).replace('_', ' ')));
            return steps;
        }

        private void origin(Origin origin) throws Unresolved {
            Origin around = origin.around().orElse(null);
            if (around == null) {
                return;
            }
            origin(around);
            ScoreItem item = origin.item().orElseThrow();
            if (item instanceof ScoreItem.Play play) {
                moment("figure " + play.figure(), play.at(), around);
            } else if (item instanceof ScoreItem.Repeat repeat) {
                moment("repeat", repeat.from(), around);
                int round = origin.rounds().get(origin.rounds().size() - 1);
                if (round > 0) {
                    steps.add(new Step(roundName(origin), "repeat + " + round + " * every",
                            exact(ruler.resolve(repeat.from(), around.at())) + " + " + round + " * (" + words(repeat.every().steps()) + ")",
                            result(origin.at()), repeat.source().toString()));
                }
            }
        }

        /** Steps to an expression: its anchor, then each of its steps. */
        private void moment(String name, TimeExpr written, Origin origin) throws Unresolved {
            Moment at = ruler.anchor(written, origin.at());
            anchor(written, origin);
            String from = anchorName(written, origin);
            if (written.steps().isEmpty()) {
                steps.add(new Step(name, from, "", result(at), written.source().toString()));
                return;
            }
            for (int i = 0; i < written.steps().size(); i++) {
                TimeExpr.Step step = written.steps().get(i);
                Moment next = ruler.resolve(new TimeExpr(written.anchor(), written.steps().subList(0, i + 1), written.source()), origin.at());
                boolean last = i == written.steps().size() - 1;
                steps.add(new Step(last ? name : from + " " + signed(step), last && i == 0 ? from + " " + signed(step) : "",
                        exact(at) + " " + numbers(step, at, next), result(next), written.source().toString()));
                from = from + " " + signed(step);
                at = next;
            }
        }

        private void anchor(TimeExpr written, Origin origin) throws Unresolved {
            TimeExpr.Anchor anchor = written.anchor();
            if (anchor instanceof TimeExpr.AtMark atMark && marksSaid.add(atMark.mark())) {
                Mark mark = ruler.written(atMark.mark()).orElseThrow();
                Origin first = Origin.ofScore(ruler.firstNote());
                moment("mark " + mark.name(), mark.at(), first);
            } else if (anchor instanceof TimeExpr.AtBar atBar) {
                steps.addAll(TempoSteps.to(ruler.tempo().orElseThrow(), atBar.bar(), atBar.beat()));
            }
        }

        private static String anchorName(TimeExpr written, Origin origin) {
            TimeExpr.Anchor anchor = written.anchor();
            if (anchor instanceof TimeExpr.AtMark atMark) {
                return "mark " + atMark.mark();
            } else if (anchor instanceof TimeExpr.AtBar atBar) {
                return new BarBeat(atBar.bar(), atBar.beat()).toString();
            } else if (anchor instanceof TimeExpr.AtClock atClock) {
                return Times.exactClock(atClock.us());
            }
            return origin.item().map(item -> item instanceof ScoreItem.Play play ? "figure " + play.figure() : roundName(origin))
                    .orElse("first note");
        }

        private static String roundName(Origin origin) {
            int round = origin.rounds().get(origin.rounds().size() - 1);
            return round == 0 ? "repeat" : "round " + (round + 1);
        }

        /** What a step adds, in numbers: beats in the tempo they run in, bars as what they last. */
        private String numbers(TimeExpr.Step step, Moment from, Moment to) {
            Rational amount = step.amount();
            String sign = amount.signum() < 0 ? "- " : "+ ";
            return sign + switch (step.unit()) {
                case MICROSECOND -> Times.seconds(amount.abs().roundHalfUp());
                case FRAME -> frames(amount.abs());
                case BEAT -> beats(amount, from, to);
                case BAR -> duration(from, to) + " (" + words(step) + " from " + from.barBeat().orElseThrow() + " to "
                        + to.barBeat().orElseThrow() + ")";
            };
        }

        private String beats(Rational amount, Moment from, Moment to) {
            TempoMap map = ruler.tempo().orElseThrow();
            Rational bpm = map.bpmAt(from.timeUs());
            Rational plain = amount.times(60_000_000).dividedBy(bpm);
            return to.exactUs().minus(from.exactUs()).equals(plain)
                    ? amount.abs() + " * 60 s / " + bpm
                    : duration(from, to) + " (" + amount.abs() + " beats over a change of tempo)";
        }

        private String frames(Rational amount) {
            FrameRate rate = ruler.rate().orElseThrow();
            return amount + " * " + rate.denominator() + " s / " + rate.numerator();
        }

        private static String duration(Moment from, Moment to) {
            return Times.seconds(to.exactUs().minus(from.exactUs()).abs().roundHalfUp());
        }

        private static String exact(Moment moment) {
            return Times.seconds(moment.timeUs());
        }

        private static String result(Moment moment) {
            return Times.seconds(moment.timeUs()) + " (" + Times.exactClock(moment.timeUs())
                    + moment.barBeat().filter(at -> at.bar() > 0).map(at -> ", " + at).orElse("") + ")";
        }

        private static String signed(TimeExpr.Step step) {
            return (step.amount().signum() < 0 ? "- " : "+ ") + words(new TimeExpr.Step(step.amount().abs(), step.unit()));
        }

        private static String words(List<TimeExpr.Step> steps) {
            StringBuilder words = new StringBuilder();
            for (TimeExpr.Step step : steps) {
                words.append(words.length() == 0 ? words(step) : " " + signed(step));
            }
            return words.toString();
        }

        private static String words(TimeExpr.Step step) {
            String amount = step.amount().toString();
            boolean one = step.amount().equals(Rational.ONE);
            return switch (step.unit()) {
                case BEAT -> amount + (one ? " beat" : " beats");
                case BAR -> amount + (one ? " bar" : " bars");
                case FRAME -> amount + (one ? " frame" : " frames");
                case MICROSECOND -> Times.seconds(step.amount().roundHalfUp());
            };
        }
    }
}
