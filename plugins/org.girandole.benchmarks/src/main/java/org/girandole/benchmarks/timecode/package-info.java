/** Measures writing and reading of timecode beside libltc. */
package org.girandole.benchmarks.timecode;
