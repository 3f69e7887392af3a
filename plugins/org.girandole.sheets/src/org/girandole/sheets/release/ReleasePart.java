package org.girandole.sheets.release;

import java.io.IOException;
import java.util.List;
import org.girandole.plan.CheckedPlan;

/** One kind of output. */
interface ReleasePart {
    /**
     * Writes its files.
     *
     * @return what the script asks for and this part does not make, in words; it is told, never passed over
     */
    List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException;
}
