package org.girandole.timecode.ltc;

import java.util.List;
import java.util.Optional;

import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.wav.CuePoint;
import org.girandole.timecode.wav.SampleDepth;

/**
 * What a timecode file is to be. The file begins where the line begins, its pre-roll before the first note; it ends with the first whole
 * frame at or after {@code lengthUs + runOutUs}, and the short fall that closes the signal.
 *
 * @param line       rate, first label and pre-roll
 * @param lengthUs   from the first note to the end of the last effect or of the music, whichever is later
 * @param runOutUs   how long the timecode goes on after that
 * @param sampleRate 8000 to 384000; 44100, 48000 and 96000 are usual
 * @param levelDbfs  peak level of the timecode in decibels below full scale
 * @param channels   what each channel of the file carries, in order
 * @param mark       what the user bits say; without it they are 0
 * @param cues       cue points to put into the file
 */
public record TimecodeFile(TimecodeLine line, long lengthUs, long runOutUs, int sampleRate, SampleDepth depth, double levelDbfs,
		List<ChannelFeed> channels, Optional<ReleaseMark> mark, List<CuePoint> cues) {

	/** The level at which timecode is written unless one is asked for: well above noise, and with room for a desk to add gain. */
	public static final double DEFAULT_LEVEL_DBFS = -12;
	private static final long LONGEST_US = 86_400_000_000L;

	public TimecodeFile {
		channels = List.copyOf(channels);
		cues = List.copyOf(cues);
		if (channels.isEmpty()) {
			throw new TimecodeException("A timecode file without channels; expected at least one");
		}
		if (lengthUs < 0 || runOutUs < 0) {
			throw new TimecodeException("A length of " + lengthUs + " us and a run-out of " + runOutUs + " us; expected none below zero");
		}
		if (line.prerollUs() > LONGEST_US || lengthUs > LONGEST_US || runOutUs > LONGEST_US
				|| line.prerollUs() + lengthUs + runOutUs > LONGEST_US) {
			throw new TimecodeException("A timecode file longer than 24 hours: its labels would repeat");
		}
	}

	/** Timecode alone on one channel. */
	public static TimecodeFile timecodeAlone(TimecodeLine line, long lengthUs, long runOutUs, int sampleRate, SampleDepth depth) {
		return new TimecodeFile(line, lengthUs, runOutUs, sampleRate, depth, DEFAULT_LEVEL_DBFS, List.of(new ChannelFeed.TimecodeFeed()),
				Optional.empty(), List.of());
	}

	public TimecodeFile withLevel(double dbfs) {
		return new TimecodeFile(line, lengthUs, runOutUs, sampleRate, depth, dbfs, channels, mark, cues);
	}

	public TimecodeFile withChannels(ChannelFeed... feeds) {
		return new TimecodeFile(line, lengthUs, runOutUs, sampleRate, depth, levelDbfs, List.of(feeds), mark, cues);
	}

	public TimecodeFile withMark(ReleaseMark releaseMark) {
		return new TimecodeFile(line, lengthUs, runOutUs, sampleRate, depth, levelDbfs, channels, Optional.of(releaseMark), cues);
	}

	public TimecodeFile withCues(List<CuePoint> cuePoints) {
		return new TimecodeFile(line, lengthUs, runOutUs, sampleRate, depth, levelDbfs, channels, mark, cuePoints);
	}

	/** Whole timecode frames in the file. */
	public long timecodeFrames() {
		long us = line.prerollUs() + lengthUs + runOutUs;
		long whole = line.rate().framesIn(us);
		return line.rate().startOf(whole).ceilUs() >= us ? whole : whole + 1;
	}

	/** Sample frames in the file. */
	public long sampleFrames() {
		return LtcSignal.samples(line.rate(), sampleRate, timecodeFrames());
	}

	/** The sample frame at which the first note stands, to the nearest. */
	public long firstNoteFrame() {
		return sampleFrameAt(0);
	}

	/** The sample frame of a moment of the show, to the nearest; for cue points. */
	public long sampleFrameAt(long showUs) {
		long us = Math.addExact(showUs, line.prerollUs());
		return Math.floorDiv(us, 1_000_000) * sampleRate + (Math.floorMod(us, 1_000_000L) * sampleRate + 500_000) / 1_000_000;
	}

	boolean wantsMusic() {
		return channels.stream().anyMatch(feed -> feed instanceof ChannelFeed.MusicFeed || feed instanceof ChannelFeed.MusicMixFeed);
	}
}
