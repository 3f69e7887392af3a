package org.girandole.sheets.print.values;

import java.util.List;
import java.util.function.Predicate;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;

/**
 * A finding as a sheet prints it.
 *
 * @param heading severity, or that it is an agreed risk
 * @param message the finding's own sentence
 * @param limit found and allowed value and where the limit comes from; may be empty
 * @param agreement who agreed and why; empty for open findings
 * @param source place in the script
 */
public record Notice(String heading, String rule, String message, String limit, String agreement, String source) {

	/** The findings that pass, in their own order. */
	public static List<Notice> of(CheckedPlan checked, Predicate<Finding> wanted) {
		return checked.findings().stream().filter(wanted).map(Notice::of).toList();
	}

	/** Everything found about a position or about one of the things there. */
	public static List<Notice> about(CheckedPlan checked, String position, List<String> things) {
		return of(checked, finding -> finding.subject().positions().contains(position)
				|| finding.subject().names().stream().anyMatch(things::contains));
	}

	private static Notice of(Finding finding) {
		String limit = finding.found().isEmpty() && finding.allowed().isEmpty() ? ""
				: "found " + finding.found() + ", allowed " + finding.allowed()
						+ (finding.basis().isEmpty() ? "" : " (" + finding.basis() + ")");
		return new Notice(finding.waived() ? "agreed" : finding.severity().word(), finding.rule(), finding.message(), limit,
				finding.waiver().map(waiver -> "Agreed by " + waiver.by() + ": " + waiver.because()
						+ waiver.until().map(until -> " Until " + until + ".").orElse("")).orElse(""),
				finding.source().toString());
	}
}
