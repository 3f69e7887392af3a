package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import org.girandole.lang.check.CheckedShow;
import org.girandole.plan.Severity;
import org.junit.jupiter.api.Test;

/** What the server reads as it starts goes the whole way; a show that stopped half-way would leave the rest of the program asleep. */
class WarmUpTest {
    @Test
    void goesTheWholeWay() {
        CheckedShow checked = WarmUp.check(new Language(new ServedShowSetup(new ShowBoard()).createInjectorAndDoEMFRegistration()));
        assertThat(checked.findings()).noneMatch(finding -> finding.severity() == Severity.ERROR);
        assertThat(checked.plan().orElseThrow().plan().cues()).hasSizeGreaterThan(200);
    }
}
