package org.girandole.sheets.release;

import java.io.IOException;
import java.util.List;
import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.json.PlanJson;

/** {@code plan.json}. */
final class PlanPart implements ReleasePart {
    static final String NAME = "plan.json";

    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        folder.writeText(NAME, out -> PlanJson.write(checked, out));
        return List.of();
    }
}
