package org.girandole.timecode.reader;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.girandole.timecode.wav.SampleSource;
import org.girandole.timecode.wav.WavException;
import org.girandole.timecode.wav.WavReader;

/** Reads a recording once, from beginning to end, and reports the timecode on each of its channels. */
public final class LineReader {
	private static final int BLOCK_FRAMES = 8192;
	private static final int MOST_CHANNELS = 64;

	private LineReader() {
	}

	/** Told about progress after each block; {@code ofSampleFrames} is -1 where the length is not known. */
	@FunctionalInterface
	public interface Progress {
		void read(long sampleFrames, long ofSampleFrames);
	}

	/**
	 * Reads a WAV file. What is wrong with the file itself stands in the report.
	 *
	 * @throws WavException if it is no WAV file, or cannot hold timecode: its sample rate is too low or too high, or it has too many channels
	 */
	public static LineReport read(Path wav, Progress progress) throws IOException {
		try (WavReader reader = WavReader.open(wav)) {
			return read(reader, progress);
		}
	}

	/** Reads a WAV file that is open, to its end, and leaves it open. */
	public static LineReport read(WavReader reader, Progress progress) throws IOException {
		if (reader.sampleRate() < LtcDecoder.LEAST_SAMPLE_RATE || reader.sampleRate() > LtcDecoder.MOST_SAMPLE_RATE) {
			throw new WavException("The recording has a sample rate of " + reader.sampleRate() + " Hz; timecode is read at " + LtcDecoder.LEAST_SAMPLE_RATE
					+ " to " + LtcDecoder.MOST_SAMPLE_RATE);
		}
		if (reader.channels() > MOST_CHANNELS) {
			throw new WavException("The recording has " + reader.channels() + " channels; timecode is read from at most " + MOST_CHANNELS);
		}
		LineReport report = read((SampleSource) reader, progress);
		return new LineReport(report.sampleRate(), report.sampleFrames(), reader.warnings(), report.channels());
	}

	/** Reads any other audio to its end; the report has no warnings about a file. */
	public static LineReport read(SampleSource source, Progress progress) throws IOException {
		int count = source.channels();
		List<Channel> channels = new ArrayList<>();
		for (int i = 0; i < count; i++) {
			channels.add(new Channel(source.sampleRate()));
		}
		float[] block = new float[BLOCK_FRAMES * count];
		long frames = 0;
		int got;
		while ((got = source.read(block, 0, BLOCK_FRAMES)) > 0) {
			for (int i = 0; i < count; i++) {
				channels.get(i).add(block, i, got, count);
			}
			frames += got;
			progress.read(frames, source.frames());
		}
		List<ChannelReport> reports = new ArrayList<>();
		for (int i = 0; i < count; i++) {
			reports.add(channels.get(i).report(i + 1, source.sampleRate(), frames));
		}
		return new LineReport(source.sampleRate(), frames, List.of(), reports);
	}

	private static final class Channel {
		private final ChannelMeter meter = new ChannelMeter();
		private final FrameTrack.Builder track = new FrameTrack.Builder();
		private final LtcDecoder decoder;

		Channel(int sampleRate) {
			decoder = new LtcDecoder(sampleRate, track::add);
		}

		void add(float[] block, int offset, int frames, int stride) {
			meter.add(block, offset, frames, stride);
			decoder.write(block, offset, frames, stride);
		}

		ChannelReport report(int number, int sampleRate, long frames) {
			decoder.finish();
			return new ChannelReport(number, meter.result(), ReadingBuilder.build(track.build(), sampleRate, frames));
		}
	}
}
