package org.girandole.timecode.reader;

import java.util.List;

/** A report as one page to print or to send: the verdict, the plot of every channel with timecode, the figures. */
public final class LineReportHtml {
	private LineReportHtml() {
	}

	/**
	 * The page.
	 *
	 * @param title what was read, and beside what
	 */
	public static String page(String title, LineReport report, LineVerdict verdict) {
		StringBuilder page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"UTF-8\"/><title>")
				.append(escape(title)).append("</title>\n<style>body{font-family:sans-serif;max-width:60em;margin:2em auto;line-height:1.4}"
						+ "h1{line-height:1.2}pre{white-space:pre-wrap;font-size:95%}svg{max-width:100%;height:auto}</style></head><body>\n<h1>")
				.append(escape(verdict.fitness().words())).append("</h1>\n<p>").append(escape(title)).append("</p>\n");
		for (ChannelReport channel : report.channels()) {
			channel.timecode().ifPresent(reading -> page.append(drawing(LinePlot.svg(report, reading, "channel " + channel.channel()))));
		}
		page.append("<pre>");
		List<String> lines = LineReportText.lines(report, verdict);
		lines.forEach(line -> page.append(escape(line)).append('\n'));
		return page.append("</pre>\n</body></html>\n").toString();
	}

	/** The drawing without the declaration that belongs to a file of its own. */
	private static String drawing(String svg) {
		return svg.substring(svg.indexOf("<svg")).stripTrailing() + "\n";
	}

	private static String escape(String text) {
		return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
	}
}
