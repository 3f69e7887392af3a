/**
 * Timecode: frame rates and labels, the line of labels along a soundtrack, linear timecode as a signal in both directions, and the exchange
 * of marks.
 */
package org.girandole.timecode;
