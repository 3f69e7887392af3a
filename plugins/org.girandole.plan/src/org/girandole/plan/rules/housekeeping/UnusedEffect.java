package org.girandole.plan.rules.housekeeping;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;

/** An effect or chain that stands in a file of the show itself and is never fired. Catalogues that are only used stay out of it. */
public final class UnusedEffect implements Rule {
    private static final RuleInfo INFO = new RuleInfo("unused-effect", RuleInfo.Family.HOUSEKEEPING, Severity.INFO,
            "An effect or chain is described but never fired.",
            "Most often a cue was lost, or the effect was to be taken out and its description forgotten.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Set<String> files = new HashSet<>();
        files.add(plan.script().show().source().file());
        plan.script().scores().forEach(score -> files.add(score.source().file()));
        Set<String> used = used(plan);
        plan.script().effects().stream().filter(effect -> files.contains(effect.source().file()) && !used.contains(effect.name()))
                .forEach(effect -> report(out, effect.kind().word(), effect.name(), effect.source()));
        plan.script().chains().stream().filter(chain -> files.contains(chain.source().file()) && !used.contains(chain.name()))
                .forEach(chain -> report(out, "chain", chain.name(), chain.source()));
    }

    private static Set<String> used(Plan plan) {
        Set<String> used = new HashSet<>();
        // What the score asks for counts, not what could be planned: a cue left out for another reason is not a forgotten effect.
        for (Score score : plan.script().scores()) {
            collect(score.items(), used);
            score.sections().forEach(section -> collect(section.items(), used));
        }
        // What is fired nowhere may still be what another one is like, or what a chain is made of.
        plan.script().effects().forEach(effect -> effect.like().ifPresent(used::add));
        plan.script().chains().forEach(chain -> used.add(chain.effect()));
        return used;
    }

    private static void collect(List<ScoreItem> items, Set<String> used) {
        for (ScoreItem item : items) {
            if (item instanceof ScoreItem.Cue cue) {
                used.add(cue.effect());
            } else if (item instanceof ScoreItem.Repeat repeat) {
                collect(repeat.items(), used);
            } else if (item instanceof ScoreItem.Play play) {
                collect(play.items(), used);
            }
        }
    }

    private static void report(Findings out, String kind, String name, SourceRef source) {
        out.report("The " + kind + " " + name + " is described but never fired")
                .found("0 firings", "1 or more")
                .remedy("fire it, or take its description out")
                .about(Subject.of(name))
                .at(source);
    }
}
