package org.girandole.timecode.reader;

/**
 * What the line did in one second of the recording.
 *
 * @param second     counted from the recording's beginning
 * @param goodShare  the part of the second that good frames cover, 0 to 1
 * @param levelDbfs  mean level of the good frames; NaN without one
 * @param speedPpm   deviation of the speed from the rate, in parts per million; NaN without two good frames in a row
 * @param snrDb      mean signal-to-noise ratio of the frames; NaN without one
 */
public record LineSecond(long second, double goodShare, double levelDbfs, double speedPpm, double snrDb) {
}
