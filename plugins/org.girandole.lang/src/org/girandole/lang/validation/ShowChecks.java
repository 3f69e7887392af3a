package org.girandole.lang.validation;

import com.google.inject.ImplementedBy;
import java.util.List;
import org.girandole.plan.Finding;
import org.girandole.plan.script.ShowScript;

/** What looks at a script after the language has: bind the plan and its rules here, and the editor says what they say. */
@ImplementedBy(ShowChecks.None.class)
public interface ShowChecks {
    /** Findings on a compiled script, waived ones included. */
    List<Finding> check(ShowScript script);

    /** Looks at nothing. */
    final class None implements ShowChecks {
        @Override
        public List<Finding> check(ShowScript script) {
            return List.of();
        }
    }
}
