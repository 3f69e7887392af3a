/** What stands on each sheet, decided and worded but not yet laid out: plain records, made from a checked plan alone. */
package org.girandole.sheets.print.values;
