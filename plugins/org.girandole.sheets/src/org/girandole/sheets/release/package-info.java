/** The release folder: everything that a show is fired from, written whole or not at all. */
package org.girandole.sheets.release;
