/** The report after the show, and the stock brought up to date. */
package org.girandole.sheets.account;
