/** Firing tables as files: CSV for controllers, one workbook for people. */
package org.girandole.sheets.tables;
