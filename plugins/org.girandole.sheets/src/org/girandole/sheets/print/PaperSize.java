package org.girandole.sheets.print;

import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.ShowScript;

/** The papers that sheets are laid out for. */
public enum PaperSize {
	A4("A4", 210, 297), LETTER("letter", 215.9, 279.4);

	/** Margins at the left and right edge of every page, millimetres. */
	public static final double SIDE_MARGIN_MM = 13;

	private final String cssName;
	private final double widthMm;
	private final double heightMm;

	PaperSize(String cssName, double widthMm, double heightMm) {
		this.cssName = cssName;
		this.widthMm = widthMm;
		this.heightMm = heightMm;
	}

	/** The paper that a script's release names, {@code A4} or {@code Letter} in any case; A4 for anything else. */
	public static PaperSize of(ShowScript script) {
		return script.release().map(ReleaseSpec::paper).filter(LETTER.name()::equalsIgnoreCase).map(paper -> LETTER).orElse(A4);
	}

	/** The page size keyword of CSS. */
	public String cssName() {
		return cssName;
	}

	public double widthMm() {
		return widthMm;
	}

	public double heightMm() {
		return heightMm;
	}

	/** Width between the side margins, millimetres. */
	public double contentWidthMm() {
		return widthMm - 2 * SIDE_MARGIN_MM;
	}
}
