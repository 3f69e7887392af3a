package org.girandole.plan.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.script.Waiver;
import org.junit.jupiter.api.Test;

class CheckerTest {
    private static final long AFTER_THE_END_US = 260_000_000;

    @Test
    void aWaiverTurnsItsFindingIntoAWrittenLine() {
        CheckedPlan checked = Checker.check(late().waive("outside-music", "Peony", "C", "2027-06-19").plan());
        assertThat(one(checked, "outside-music").waiver().map(Waiver::by)).contains("A. Inspector");
        assertThat(of(checked, "waiver-unused")).isEmpty();
        assertThat(of(checked, "waiver-expired")).isEmpty();
    }

    @Test
    void aWaiverWithoutSubjectAndPositionFitsEveryFindingOfItsRule() {
        CheckedPlan checked = Checker.check(late().shell("Willow", "A", AFTER_THE_END_US).waive("outside-music", null, null, null).plan());
        assertThat(of(checked, "outside-music")).hasSize(2).allMatch(Finding::waived);
    }

    @Test
    void aWaiverForAnotherEffectOrPositionFitsNothing() {
        CheckedPlan checked = Checker.check(late().waive("outside-music", "Willow", null, null)
                .waive("outside-music", "Peony", "A", null).plan());
        assertThat(one(checked, "outside-music").waived()).isFalse();
        assertThat(of(checked, "waiver-unused")).hasSize(2);
    }

    @Test
    void aWaiverEndsWithItsDay() {
        CheckedPlan dayBefore = Checker.check(late().waive("outside-music", "Peony", null, "2027-06-18").plan());
        assertThat(one(dayBefore, "outside-music").waived()).isFalse();
        assertThat(one(dayBefore, "waiver-expired").found()).contains("2027-06-18");
        // It was meant for something that is there: it is out of date, not out of use.
        assertThat(of(dayBefore, "waiver-unused")).isEmpty();
    }

    @Test
    void withoutAShowDateNoWaiverWithAnEndHolds() {
        CheckedPlan checked = Checker.check(late().undated().waive("outside-music", "Peony", null, "2099-01-01").plan());
        assertThat(one(checked, "outside-music").waived()).isFalse();
        assertThat(one(checked, "waiver-expired").message()).contains("a day the script does not give");
    }

    @Test
    void ofTwoWaiversTheOneThatStillHoldsIsPrinted() {
        CheckedPlan checked = Checker.check(late().waive("outside-music", "Peony", null, "2027-06-01")
                .waive("outside-music", "Peony", null, "2027-07-01").plan());
        assertThat(one(checked, "outside-music").waiver().flatMap(Waiver::until)).hasValueSatisfying(
                until -> assertThat(until).hasToString("2027-07-01"));
    }

    @Test
    void troublesOfThePlanAndFindingsAboutWaiversCannotBeWaived() {
        Finding trouble = new Finding("beat-without-tempo", Severity.ERROR, "No tempo", "", "", "", "", PlanBuilder.line(7),
                Subject.of("Peony"), Map.of(), Optional.empty());
        CheckedPlan checked = Checker.check(late().trouble(trouble).waive("beat-without-tempo", null, null, null)
                .waive("waiver-unused", null, null, null).plan());
        assertThat(one(checked, "beat-without-tempo").waived()).isFalse();
        assertThat(of(checked, "waiver-unused")).hasSize(2).noneMatch(Finding::waived);
        assertThat(checked.clean()).isFalse();
    }

    @Test
    void aMistypedRuleInAWaiverIsGuessed() {
        CheckedPlan checked = Checker.check(late().waive("outside-musik", null, null, null).plan());
        assertThat(one(checked, "waiver-unused").remedy()).isEqualTo("did you mean outside-music?");
    }

    @Test
    void theScriptRaisesASeverity() {
        CheckedPlan checked = Checker.check(late().set("lot-missing", "error").plan());
        assertThat(one(checked, "lot-missing").severity()).isEqualTo(Severity.ERROR);
        assertThat(of(checked, "rule-setting")).isEmpty();
    }

    @Test
    void theGravestOfTwoSettingsCounts() {
        CheckedPlan checked = Checker.check(late().set("unused-effect", "error").set("lot-missing", "error").set("lot-missing", "warning").plan());
        assertThat(one(checked, "lot-missing").severity()).isEqualTo(Severity.ERROR);
    }

    @Test
    void loweringASeverityIsRefused() {
        CheckedPlan checked = Checker.check(late().set("outside-music", "info").plan());
        assertThat(one(checked, "outside-music").severity()).isEqualTo(Severity.ERROR);
        assertThat(one(checked, "rule-setting").message()).isEqualTo("Rule outside-music is of severity error and cannot be lowered to info");
    }

    @Test
    void unknownRulesAndSeveritiesInSettingsAreToldApart() {
        CheckedPlan checked = Checker.check(late().set("outside-musik", "error").set("outside-music", "fatal").plan());
        assertThat(of(checked, "rule-setting")).extracting(Finding::remedy)
                .containsExactly("did you mean outside-music?", "write one of error, warning, info");
    }

    @Test
    void findingsStandInOneOrder() {
        List<Finding> findings = Checker.check(late().shell("Willow", "A", AFTER_THE_END_US).plan()).findings();
        assertThat(findings).isSortedAccordingTo((a, b) -> a.severity() != b.severity() ? a.severity().compareTo(b.severity())
                : a.source().compareTo(b.source()));
        assertThat(findings.get(0).severity()).isEqualTo(Severity.ERROR);
    }

    @Test
    void aShowWithoutDistancesIsNotClean() {
        CheckedPlan checked = Checker.check(new PlanBuilder().shell("Peony", "C", 10_000_000).plan());
        assertThat(of(checked, "separation-unchecked")).isNotEmpty();
        assertThat(checked.clean()).isFalse();
    }

    @Test
    void anEmptyShowIsNotClean() {
        assertThat(of(Checker.check(new PlanBuilder().plan()), "empty-show")).hasSize(1);
    }

    private static PlanBuilder late() {
        return new PlanBuilder().shell("Peony", "C", AFTER_THE_END_US);
    }

    private static List<Finding> of(CheckedPlan checked, String rule) {
        return checked.findings().stream().filter(finding -> finding.rule().equals(rule)).toList();
    }

    private static Finding one(CheckedPlan checked, String rule) {
        assertThat(of(checked, rule)).as(rule).hasSize(1);
        return of(checked, rule).get(0);
    }
}
