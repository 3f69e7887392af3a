package org.girandole.sheets.print;

import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.print.html.Page;
import org.girandole.sheets.print.html.SitePlan;
import org.girandole.sheets.print.html.SiteSheet;
import org.girandole.sheets.print.values.Head;
import org.girandole.sheets.print.values.SiteMap;

/** The site from above by itself, outside of a release: as a drawing, and as the sheet. */
public final class SiteDrawing {
	private SiteDrawing() {
	}

	/** An SVG document in millimetres of paper, with names, scale and scale bar; without a site an empty drawing that says so. */
	public static String svg(CheckedPlan checked) {
		Optional<SiteMap> map = SiteMap.of(checked);
		return map.map(site -> SitePlan.svg(site, PaperSize.A4.contentWidthMm()))
				.orElse("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100mm\" height=\"20mm\"><text x=\"4\" y=\"20\">no site</text></svg>\n");
	}

	/**
	 * Sheet 8 as a document for {@link PdfWriter}; empty without a site.
	 *
	 * @param otherWind whether the plan was put into another wind than that of its script, which the sheet then says
	 */
	public static Optional<String> sheet(CheckedPlan checked, PaperSize paper, String toolVersion, boolean otherWind) {
		return SiteMap.of(checked, otherWind).map(map -> new SiteSheet(new Page(Head.of(checked, toolVersion), paper)).html(map));
	}
}
