package org.girandole.sheets.diff;

import java.util.Optional;
import org.girandole.plan.diff.DiffReport;

/**
 * What changed since an earlier release.
 *
 * @param stamp of the earlier release, in full
 * @param stampPrinted of the earlier release, as it stands on its sheets
 * @param report earlier release against this one
 * @param caution what limits the comparison, in a sentence
 */
public record Since(String stamp, String stampPrinted, DiffReport report, Optional<String> caution) {
}
