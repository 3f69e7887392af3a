package org.girandole.timecode.reader;

/** Mean and extremes of something measured frame by frame. */
public record Range(double least, double mean, double most) {
}
