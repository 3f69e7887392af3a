package org.girandole.plan.rules.hardware;

import java.util.LinkedHashMap;
import java.util.Map;
import org.girandole.physics.circuit.TestCurrent;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.ScriptIndex;
import org.girandole.plan.rules.SharingRule;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.ModuleType;

/** A continuity test that drives more through an igniter than it should ever see before its moment. */
public final class TestCurrentTooHigh implements SharingRule {
    private static final RuleInfo INFO = new RuleInfo("test-current-too-high", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "The continuity test drives too much current for an igniter.",
            "The test is made with everything loaded and people near. A test current close to the no-fire current can fire a "
                    + "shell.",
            "Washington WAC 212-17-317 (2005): the smaller of 0.05 A and 20 % of the no-fire current");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Workings workings, Findings out) {
        Plan plan = workings.plan();
        ScriptIndex index = workings.index();
        Map<Pair, PlannedCue> pairs = new LinkedHashMap<>();
        for (PlannedCue cue : plan.cues()) {
            index.moduleType(cue).ifPresent(type -> index.igniter(cue)
                    .ifPresent(igniter -> pairs.putIfAbsent(new Pair(type, igniter), cue)));
        }
        pairs.keySet().forEach(pair -> pair.type().testA().ifPresent(testA -> pair.igniter().noFireA().filter(a -> a > 0)
                .ifPresent(noFireA -> check(pair, testA, noFireA, out))));
    }

    private static void check(Pair pair, double testA, double noFireA, Findings out) {
        double limitA = TestCurrent.limitA(noFireA).result().value();
        if (testA > limitA) {
            out.report("Modules of type " + pair.type().name() + " test with " + Quantity.amperes(testA) + ", too much for igniter "
                    + pair.igniter().name())
                    .found(Quantity.amperes(testA), "at most " + Quantity.amperes(limitA) + ", for a no-fire current of "
                            + Quantity.amperes(noFireA))
                    .remedy("set a lower test current, use another module type, or igniters with a higher no-fire current")
                    .about(Subject.of(pair.type().name(), pair.igniter().name()))
                    .data(Map.of("limitA", Double.toString(limitA)))
                    .at(pair.type().source());
        }
    }

    private record Pair(ModuleType type, Igniter igniter) {
    }
}
