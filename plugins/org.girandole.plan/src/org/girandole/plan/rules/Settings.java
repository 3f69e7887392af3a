package org.girandole.plan.rules;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.script.RuleSetting;

/** The severities that a script raises. Lowering one would be silence without a signature: that is what waivers are for. */
final class Settings {
    static final RuleInfo INFO = new RuleInfo("rule-setting", RuleInfo.Family.HOUSEKEEPING, Severity.ERROR,
            "A rule is set to a severity that it cannot have.",
            "Whoever wrote the line believes that something is now watched more closely, and it is not.",
            "a script may raise a severity, never lower it");

    private final Map<String, Severity> raised = new HashMap<>();
    private final Findings out = new Findings(INFO, INFO.severity());

    private Settings() {
    }

    static Settings of(Plan plan) {
        Settings settings = new Settings();
        plan.script().rules().forEach(settings::read);
        return settings;
    }

    /** What is wrong with the settings themselves. */
    List<Finding> findings() {
        return out.all();
    }

    /** The finding at the severity that the script wants, if that is graver than its own. */
    Finding raise(Finding finding) {
        Severity wanted = raised.get(finding.rule());
        if (wanted == null || wanted.compareTo(finding.severity()) >= 0) {
            return finding;
        }
        return new Finding(finding.rule(), wanted, finding.message(), finding.found(), finding.allowed(), finding.basis(),
                finding.remedy(), finding.source(), finding.subject(), finding.data(), finding.waiver());
    }

    private void read(RuleSetting setting) {
        Optional<Severity> wanted = Arrays.stream(Severity.values()).filter(s -> s.word().equals(setting.severity())).findFirst();
        Optional<RuleInfo> rule = Rules.infos().stream().filter(info -> info.id().equals(setting.rule())).findFirst();
        if (wanted.isEmpty()) {
            report(setting, "There is no severity '" + setting.severity() + "' for rule " + setting.rule(), setting.severity(), severities(),
                    "write one of " + severities());
        } else if (rule.isEmpty()) {
            report(setting, "There is no rule '" + setting.rule() + "' whose severity could be raised", setting.rule(),
                    "the id of a rule" + Nearest.of(setting.rule()).map(id -> ", such as " + id).orElse(""),
                    Nearest.of(setting.rule()).map(id -> "did you mean " + id + "?").orElse("look the id up in the list of rules"));
        } else if (wanted.get().compareTo(rule.get().severity()) > 0) {
            String own = rule.get().severity().word();
            report(setting, "Rule " + setting.rule() + " is of severity " + own + " and cannot be lowered to " + setting.severity(),
                    setting.severity(), own + (rule.get().severity() == Severity.ERROR ? "" : ", or graver"),
                    "take the line out; to live with one finding in writing, use a waiver");
        } else {
            raised.merge(setting.rule(), wanted.get(), (a, b) -> a.compareTo(b) <= 0 ? a : b);
        }
    }

    private void report(RuleSetting setting, String message, String found, String allowed, String remedy) {
        out.report(message).found(found, allowed).remedy(remedy).about(Subject.of(setting.rule())).at(setting.source());
    }

    private static String severities() {
        return Arrays.stream(Severity.values()).map(Severity::word).collect(Collectors.joining(", "));
    }
}
