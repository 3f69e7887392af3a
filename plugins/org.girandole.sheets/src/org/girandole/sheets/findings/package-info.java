/** Findings for people, for programs and for code scanning services. */
package org.girandole.sheets.findings;
