package org.girandole.timecode.reader;

/**
 * A channel as plain audio.
 *
 * @param peakDbfs       highest sample in decibels below full scale; negative infinity for silence
 * @param rmsDbfs        root mean square without the offset, likewise
 * @param offset         mean of all samples, in parts of full scale
 * @param clippedSamples samples in runs of three and more at full scale
 */
public record ChannelAudio(double peakDbfs, double rmsDbfs, double offset, long clippedSamples) {
}
