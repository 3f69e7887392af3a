/**
 * Reads a recorded timecode line and judges it. {@link org.girandole.timecode.reader.LineReader} reads a file,
 * {@link org.girandole.timecode.reader.LineJudge} says whether it is fit, {@link org.girandole.timecode.reader.LineReportText},
 * {@link org.girandole.timecode.reader.LineReportJson} and {@link org.girandole.timecode.reader.LinePlot} show it.
 */
package org.girandole.timecode.reader;
