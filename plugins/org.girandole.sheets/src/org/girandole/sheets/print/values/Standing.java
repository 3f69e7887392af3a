package org.girandole.sheets.print.values;

import java.util.List;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;

/**
 * How the show stands after its checks. There is no verdict that says "safe".
 *
 * @param errors errors nobody agreed to
 * @param warnings warnings nobody agreed to
 * @param waived findings somebody agreed to in writing
 * @param gaps what is not known
 */
public record Standing(long errors, long warnings, long waived, List<Gap> gaps) {
	public Standing {
		gaps = List.copyOf(gaps);
	}

	/** Counts the findings and the gaps. */
	public static Standing of(CheckedPlan checked) {
		return new Standing(open(checked, Severity.ERROR), open(checked, Severity.WARNING),
				checked.findings().stream().filter(Finding::waived).count(), Gap.of(checked.plan()));
	}

	/** The verdict, the graver first. */
	public Verdict verdict() {
		if (errors > 0) {
			return Verdict.ERRORS;
		}
		return gaps.isEmpty() ? Verdict.NO_ERRORS_FOUND : Verdict.DATA_MISSING;
	}

	private static long open(CheckedPlan checked, Severity severity) {
		return checked.findings().stream().filter(finding -> finding.severity() == severity && !finding.waived()).count();
	}

	/** What may be said of a show on paper. */
	public enum Verdict {
		/** At least one error is open. */
		ERRORS,
		/** No error is open, but not everything could be looked at. */
		DATA_MISSING,
		/** No error is open and nothing that the sheets need is missing. */
		NO_ERRORS_FOUND
	}
}
