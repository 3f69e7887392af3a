package org.girandole.sheets.print;

import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.sheets.print.html.SitePlan;
import org.girandole.sheets.print.values.SiteMap;

/** The site from above as a drawing of its own, at the scale of the site plan on A4. */
public final class SiteDrawing {
	private SiteDrawing() {
	}

	/** An SVG document in millimetres of paper, with names, scale and scale bar; without a site an empty drawing that says so. */
	public static String svg(CheckedPlan checked) {
		Optional<SiteMap> map = SiteMap.of(checked);
		return map.map(site -> SitePlan.svg(site, PaperSize.A4.contentWidthMm()))
				.orElse("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100mm\" height=\"20mm\"><text x=\"4\" y=\"20\">no site</text></svg>\n");
	}
}
