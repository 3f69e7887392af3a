package org.girandole.timecode.reader;

import java.util.List;
import java.util.Optional;

/**
 * What a recording of a timecode line holds.
 *
 * @param sampleRate   samples a second
 * @param sampleFrames length of the recording
 * @param warnings     what is wrong with the file itself, in words
 * @param channels     every channel
 */
public record LineReport(int sampleRate, long sampleFrames, List<String> warnings, List<ChannelReport> channels) {
	public LineReport {
		warnings = List.copyOf(warnings);
		channels = List.copyOf(channels);
	}

	/** The channel with the most good frames of timecode; the first of equals; empty if no channel has any. */
	public Optional<ChannelReport> timecodeChannel() {
		ChannelReport best = null;
		int most = 0;
		for (ChannelReport each : channels) {
			int good = each.timecode().map(TimecodeReading::goodFrames).orElse(0);
			if (good > most) {
				most = good;
				best = each;
			}
		}
		return Optional.ofNullable(best);
	}

	/** A place in the recording as a person writes it: minutes, seconds and milliseconds. */
	public String time(double sample) {
		return LineText.time(sample / sampleRate);
	}
}
