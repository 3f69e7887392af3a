package org.girandole.plan.schedule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;

/**
 * Expands one score into its firings. Each line is visited once, with all the origins that repetitions and figures give it, so that the
 * order of the result is that of the script.
 */
final class Scheduler {
    /** More than any field holds; a repetition or a chain that makes more is a slip of the pen. */
    private static final int MOST_PIECES = 200_000;

    private final Score score;
    private final Ruler ruler;
    private final Catalogue catalogue;
    private final SitePlan site;
    private final Keys keys;
    private final TroubleLog troubles;
    private final List<Firing> firings = new ArrayList<>();
    private long pieces;

    Scheduler(Score score, Ruler ruler, Catalogue catalogue, SitePlan site, Keys keys, TroubleLog troubles) {
        this.score = score;
        this.ruler = ruler;
        this.catalogue = catalogue;
        this.site = site;
        this.keys = keys;
        this.troubles = troubles;
    }

    /** All firings of the score, sections first, in the order of the script. */
    List<Firing> expand() {
        List<Origin> firstNote = List.of(Origin.ofScore(ruler.firstNote()));
        score.sections().forEach(section -> expand(section.items(), section.name(), firstNote));
        expand(score.items(), "", firstNote);
        return Collections.unmodifiableList(firings);
    }

    /** The sections whose limits have a time. */
    List<PlannedSoundtrack.Section> sections() {
        List<PlannedSoundtrack.Section> sections = new ArrayList<>();
        for (Score.Section section : score.sections()) {
            attempt(() -> sections.add(new PlannedSoundtrack.Section(section.name(), section.label(),
                    ruler.resolve(section.from(), ruler.firstNote()).timeUs(),
                    ruler.resolve(section.to(), ruler.firstNote()).timeUs(), section.source())));
        }
        return sections;
    }

    /** The hold windows whose limits have a time. */
    List<PlannedSoundtrack.Hold> holds() {
        List<PlannedSoundtrack.Hold> holds = new ArrayList<>();
        for (Score.Hold hold : score.holds()) {
            attempt(() -> holds.add(new PlannedSoundtrack.Hold(ruler.resolve(hold.from(), ruler.firstNote()).timeUs(),
                    ruler.resolve(hold.to(), ruler.firstNote()).timeUs(), hold.reason(), hold.source())));
        }
        return holds;
    }

    private void expand(List<ScoreItem> items, String section, List<Origin> origins) {
        for (ScoreItem item : items) {
            if (item instanceof ScoreItem.Cue cue) {
                expandCue(cue, section, origins);
            } else if (item instanceof ScoreItem.Repeat repeat) {
                expand(repeat.items(), section, rounds(repeat, origins));
            } else if (item instanceof ScoreItem.Play play) {
                expand(play.items(), section, figures(play, origins));
            }
        }
    }

    private List<Origin> rounds(ScoreItem.Repeat repeat, List<Origin> origins) {
        if (saturated(origins.size(), repeat.times()) > MOST_PIECES) {
            reportTooMany(repeat);
            return List.of();
        }
        List<Origin> rounds = new ArrayList<>();
        for (Origin origin : origins) {
            attempt(() -> {
                Moment from = ruler.resolve(repeat.from(), origin.at());
                for (int i = 0; i < repeat.times(); i++) {
                    rounds.add(origin.round(ruler.plus(from, repeat.every(), i), repeat, i));
                }
            });
        }
        return rounds;
    }

    private List<Origin> figures(ScoreItem.Play play, List<Origin> origins) {
        List<Origin> figures = new ArrayList<>();
        for (Origin origin : origins) {
            attempt(() -> figures.add(origin.figure(ruler.resolve(play.at(), origin.at()), play)));
        }
        return figures;
    }

    private void expandCue(ScoreItem.Cue cue, String section, List<Origin> origins) {
        Optional<Chain> chain = catalogue.chain(cue.effect());
        Optional<Effect> effect = catalogue.effect(chain.map(Chain::effect).orElse(cue.effect()));
        if (effect.isEmpty()) {
            reportUnknown(cue, chain.map(Chain::effect).orElse(cue.effect()), "effect or chain");
            return;
        }
        long made = saturated(origins.size(), cue.positions().size(), cue.count(), chain.map(Chain::items).orElse(1));
        if (pieces + made > MOST_PIECES) {
            reportTooMany(cue);
            return;
        }
        pieces += made;
        reportSurplus(cue, "pins", cue.pins().size());
        reportSurplus(cue, "tubes", cue.tubes().size());
        for (int place = 0; place < cue.positions().size(); place++) {
            String position = cue.positions().get(place);
            String line = keys.line(score.soundtrack(), section, cue, position);
            Optional<Point> at = site.position(position);
            if (at.isEmpty()) {
                reportUnknown(cue, position, "position of the site");
                continue;
            }
            for (Origin origin : origins) {
                expandPlace(cue, section, origin, place, at.get(), line, effect.get(), chain);
            }
        }
    }

    private void expandPlace(ScoreItem.Cue cue, String section, Origin origin, int place, Point at, String line, Effect effect,
            Optional<Chain> chain) {
        int steps = Distributions.stepsOf(cue.distribution().order(), place, cue.positions().size());
        attempt(() -> {
            Moment written = ruler.resolve(cue.at(), origin.at());
            Optional<Duration> every = cue.distribution().every();
            Moment moment = steps > 0 && every.isPresent() ? ruler.plus(written, every.get(), steps) : written;
            for (int shot = 0; shot < cue.count(); shot++) {
                firings.add(new Firing(keys.key(line, origin.rounds(), shot), score, section, cue, origin, written, steps, moment,
                        moment.timeUs(), cue.positions().get(place), place, at, shot, effect, chain));
            }
        });
    }

    /** The product, but never more than a little above the limit: counts come from a person and may be anything. */
    private static long saturated(int... factors) {
        long product = 1;
        for (int factor : factors) {
            product = Math.min(product * Math.max(0, factor), MOST_PIECES + 1L);
        }
        return product;
    }

    private void reportUnknown(ScoreItem.Cue cue, String name, String kind) {
        troubles.report(Troubles.NAME_UNKNOWN, "There is no " + kind + " named " + name)
                .found(name, "a name of the script")
                .remedy("correct the name or write what it stands for")
                .about(new Subject(List.of(cue.effect()), cue.positions()))
                .at(cue.source());
    }

    private void reportTooMany(ScoreItem item) {
        troubles.report(Troubles.TOO_MANY_CUES, "With this the score has more than " + MOST_PIECES + " pieces")
                .found("more than " + MOST_PIECES + " pieces", "at most " + MOST_PIECES)
                .remedy("correct the count or the number of repetitions")
                .at(item.source());
    }

    private void reportSurplus(ScoreItem.Cue cue, String what, int written) {
        int shots = cue.positions().size() * cue.count();
        if (written > shots) {
            troubles.report(Troubles.HAND_SURPLUS, written + " " + what + " are written for " + shots + " shots of " + cue.effect())
                    .found(written + " " + what, "at most " + shots)
                    .remedy("take away the " + what + " that belong to no shot, or correct the count")
                    .about(new Subject(List.of(cue.effect()), cue.positions()))
                    .at(cue.source());
        }
    }

    private void attempt(Attempt attempt) {
        try {
            attempt.run();
        } catch (Unresolved e) {
            troubles.report(e);
        }
    }

    /** Something that may find a moment without a time. */
    private interface Attempt {
        void run() throws Unresolved;
    }
}
