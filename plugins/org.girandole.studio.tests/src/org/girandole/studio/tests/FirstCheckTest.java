package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;
import org.girandole.studio.views.workbench.FirstCheck;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** While nothing is known of a script, that is said, and only of the one that is looked at. */
class FirstCheckTest {
    private static final String FAST = "file:///shows/fast.show";
    private static final String LARGE = "file:///shows/large.show";

    private final List<String> said = new ArrayList<>();
    private final FirstCheck check = new FirstCheck(Display.getCurrent(), said::add);

    @AfterEach
    void end() {
        check.ends();
    }

    @Test
    void whatIsKnownSoonIsNotAnnounced() {
        check.begins(FAST);
        check.ends();
        check.begins(LARGE);
        assertThat(check.isOf(LARGE)).isTrue();
        assertThat(check.isOf(FAST)).isFalse();
        Ui.until("it is said", () -> !said.isEmpty());
        assertThat(said).singleElement().asString().contains("large.show is being checked").contains("no findings");
    }

    @Test
    void itStandsAmongWhatIsInProgressUntilTheAnswerComes() {
        check.begins(LARGE);
        check.begins(LARGE);
        Ui.until("it is in progress", () -> jobs() == 1);
        check.ends();
        Ui.until("it is no longer", () -> jobs() == 0);
        assertThat(said).hasSize(1);
    }

    private static long jobs() {
        return List.of(Job.getJobManager().find(null)).stream().filter(job -> job.getName().equals("Checking large.show")).count();
    }
}
