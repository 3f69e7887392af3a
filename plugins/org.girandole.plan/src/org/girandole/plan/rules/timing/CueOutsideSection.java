package org.girandole.plan.rules.timing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack.Section;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Cues;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;

/** A cue written in one section whose moment lies in another. A cue on a section's very end still belongs to it. */
public final class CueOutsideSection implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("cue-outside-section", RuleInfo.Family.TIMING, Severity.WARNING,
            "A cue's moment lies outside of the section it is written in.",
            "The running sheet lists cues by section: the shooter looks for this one on the wrong page, or its time was mistyped.",
            "the script's own sections");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        Map<String, Map<String, Section>> sections = new HashMap<>();
        plan.soundtracks().forEach(track -> {
            Map<String, Section> byName = new HashMap<>();
            track.sections().forEach(section -> byName.putIfAbsent(section.name(), section));
            sections.put(track.name(), byName);
        });
        for (PlannedCue cue : workings.oncePerPlace()) {
            long seenUs = cue.timing().seenUs();
            Optional.ofNullable(sections.get(cue.soundtrack())).map(byName -> byName.get(cue.section()))
                    .filter(section -> seenUs < section.fromUs() || seenUs > section.toUs())
                    .ifPresent(section -> out.report(Cues.name(cue) + " is written in section " + section.name()
                            + " but lies outside of it")
                            .found(Quantity.moment(seenUs),
                                    Quantity.moment(section.fromUs()) + " to " + Quantity.moment(section.toUs()))
                            .basis(Basis.script("section " + section.name(), section.source()))
                            .remedy("move the line to the section in which it is seen, or correct its time")
                            .about(Cues.subject(cue))
                            .at(cue.source()));
        }
    }
}
