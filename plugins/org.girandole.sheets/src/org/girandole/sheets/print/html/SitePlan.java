package org.girandole.sheets.print.html;

import org.girandole.sheets.print.values.SiteMap;

/** The site plan's drawing with its words, as one document. */
public final class SitePlan {
	private static final double BIG_MM = 4.6;
	private static final double SMALL_MM = 2.8;
	private static final double CAPTION_MM = 8;
	private static final String END = "</svg>";

	private SitePlan() {
	}

	/** An SVG document, its sizes in millimetres of paper. */
	public static String svg(SiteMap map, double widthMm) {
		SitePicture picture = SitePicture.of(map, widthMm);
		double heightMm = picture.heightMm() + CAPTION_MM;
		StringBuilder out = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(Svg.number(picture.widthMm()))
				.append("mm\" height=\"").append(Svg.number(heightMm)).append("mm\" viewBox=\"0 0 ")
				.append(Svg.point(picture.widthMm(), heightMm)).append("\" font-family=\"sans-serif\">\n");
		// The drawing stands in this one: there its own size is that of its view box.
		out.append(picture.drawing().replaceFirst("(width=\"[0-9.]+)mm(\" height=\"[0-9.]+)mm", "$1$2")).append('\n');
		for (SitePicture.Word word : picture.words()) {
			double size = word.big() ? BIG_MM : SMALL_MM;
			text(out, word.xMm(), word.yMm() + size, size, word.text());
		}
		text(out, 1, picture.heightMm() + 4, SMALL_MM, map.site() + ", scale 1 : " + picture.scale() + " when printed without shrinking; up is +y, from which winds are counted"
				+ map.wind().map(wind -> "; wind " + wind.words()).orElse("; no wind stated"));
		return out.append(END).append('\n').toString();
	}

	private static void text(StringBuilder out, double x, double y, double size, String text) {
		out.append("<text x=\"").append(Svg.number(x)).append("\" y=\"").append(Svg.number(y)).append("\" fill=\"#000000\" stroke=\"#ffffff\" stroke-width=\"0.7\" paint-order=\"stroke\" font-size=\"").append(Svg.number(size))
				.append("\">").append(Html.text(text)).append("</text>\n");
	}
}
