package org.girandole.sheets.print;

/** A sheet could not be laid out. The message says which and why. */
public final class SheetException extends RuntimeException {
	private static final long serialVersionUID = 1L;

	SheetException(String message, Throwable cause) {
		super(message, cause);
	}
}
