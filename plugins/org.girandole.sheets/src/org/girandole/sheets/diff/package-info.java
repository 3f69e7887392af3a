/** A plan difference as text for a terminal, Markdown for a review, HTML to print, and JSON. */
package org.girandole.sheets.diff;
