package org.girandole.plan.table;

import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;

/** What one row of a table is about. */
record Row(Plan plan, PlannedCue cue, Optional<PlannedSoundtrack> soundtrack) {
}
