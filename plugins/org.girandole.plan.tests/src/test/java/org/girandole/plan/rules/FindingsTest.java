package org.girandole.plan.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.fallout.FlightMemory;
import org.junit.jupiter.api.Test;

class FindingsTest {
    private static final RuleInfo INFO = new RuleInfo("far-off", RuleInfo.Family.DISTANCE, Severity.ERROR, "Too near.", "Because.", "invented");

    @Test
    void aCureIsLookedForOnlyWhereSomebodyReadsIt() {
        AtomicInteger looked = new AtomicInteger();
        Rule rule = rule(() -> {
            looked.incrementAndGet();
            return "move it 3 m";
        });
        Workings workings = new Workings(new PlanBuilder().plan(), new FlightMemory());
        List<Finding> without = Checker.findingsWithoutCures(workings, List.of(rule));
        assertThat(looked).hasValue(0);
        List<Finding> with = Checker.findings(workings, List.of(rule));
        assertThat(looked).hasValue(1);
        assertThat(with).singleElement().extracting(Finding::remedy).isEqualTo("move it 3 m");
        assertThat(without).singleElement().extracting(Finding::remedy).isEqualTo("");
        assertThat(without).usingRecursiveFieldByFieldElementComparatorIgnoringFields("remedy").isEqualTo(with);
    }

    private static Rule rule(Supplier<String> cure) {
        return new Rule() {
            @Override
            public RuleInfo info() {
                return INFO;
            }

            @Override
            public void check(Plan plan, Findings out) {
                out.report("It is too near").found("3 m", "6 m").remedy(cure).at(PlanBuilder.line(1));
            }
        };
    }
}
