package org.girandole.plan.rules.hardware;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.Module;

/** Two modules that answer to the same address. */
public final class AddressTaken implements Rule {
    private static final RuleInfo INFO = new RuleInfo("address-taken", RuleInfo.Family.HARDWARE, Severity.ERROR,
            "Two modules have the same address.",
            "Both fire when one is told to: shells go up at a position where nobody expects them.",
            "an address names one module");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        Map<String, Module> owners = new HashMap<>();
        for (Module module : plan.script().modules()) {
            Module owner = owners.putIfAbsent(module.address(), module);
            if (owner != null) {
                out.report("Module " + module.name() + " has the address " + module.address() + ", which module " + owner.name()
                        + " has already")
                        .found("address " + module.address() + " twice", "an address of its own for each module")
                        .basis(Basis.script("module " + owner.name() + " \"" + owner.address() + "\"", owner.source()))
                        .remedy("give one of them another address, on paper and on the module")
                        .about(new Subject(List.of(module.name(), owner.name()), module.positions()))
                        .at(module.source());
            }
        }
    }
}
