package org.girandole.sheets.print.html;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.values.Head;
import org.girandole.sheets.print.values.NightReport;

/** The documents of rehearsed nights. */
public final class NightPage {
	private NightPage() {
	}

	/** All nights on pages. */
	public static String html(CheckedPlan checked, List<NightReport> nights, List<String> sweep, PaperSize paper, String toolVersion) {
		return new NightSheet(new Page(Head.of(checked, toolVersion), paper), checked.plan().script().show().syncWithinUs()).html(nights, sweep);
	}

	/** One night as a drawing. */
	public static String svg(NightReport night, String show, Optional<Long> syncUs) {
		return NightPicture.of(night.night(), syncUs, PaperSize.A4.contentWidthMm()).document(night.night().name() + " – " + show);
	}
}
