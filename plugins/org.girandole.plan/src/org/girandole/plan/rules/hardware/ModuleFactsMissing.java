package org.girandole.plan.rules.hardware;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.ModuleType;

/** Limits that a module type in use leaves open, so that the rules about them stay silent. */
public final class ModuleFactsMissing implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("module-facts-missing", RuleInfo.Family.HARDWARE, Severity.WARNING,
            "A module type does not give a limit that is checked against.",
            "Where no limit is written down, no cue can break it. A silent rule then means nothing.",
            Basis.COMMON_PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<String, ModuleType> types = new LinkedHashMap<>();
        plan.cues().forEach(cue -> index.moduleType(cue).ifPresent(type -> types.putIfAbsent(type.name(), type)));
        for (ModuleType type : types.values()) {
            List<String> missing = new ArrayList<>();
            add(missing, "igniters per pin", type.ignitersPerPin());
            add(missing, "pins at once", type.pinsAtOnce());
            add(missing, "pin gap", type.pinGapUs());
            add(missing, "lead at most", type.longestLeadM());
            if (!missing.isEmpty()) {
                out.report("Module type " + type.name() + " does not give " + String.join(", ", missing)
                        + ", so no cue was checked against it")
                        .found("no " + String.join(", no ", missing), "a number from the maker for each")
                        .remedy("add " + String.join(", ", missing) + " to module type " + type.name())
                        .about(Subject.of(type.name()))
                        .data(Map.of("missing", String.join(",", missing)))
                        .at(type.source());
            }
        }
    }

    private static void add(List<String> missing, String word, Optional<?> value) {
        if (value.isEmpty()) {
            missing.add(word);
        }
    }
}
