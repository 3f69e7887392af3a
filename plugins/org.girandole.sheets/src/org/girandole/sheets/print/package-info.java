/** The printed sheets of a release: what stands on them, how they look, and how they become PDF. */
package org.girandole.sheets.print;
