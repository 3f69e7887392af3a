package org.girandole.timecode.ltc;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.wav.ResampledSource;
import org.girandole.timecode.wav.SampleSource;
import org.girandole.timecode.wav.WavWriter;

/**
 * Writes a timecode file as a stream: the same small memory for a minute and for a day. Music is brought to the file's sample rate, and its
 * first sample stands where the pre-roll ends.
 */
public final class TimecodeWavWriter {
	private static final int BLOCK_FRAMES = 4096;

	private final TimecodeFile file;
	private final SampleSource music;
	private final float[] timecode = new float[BLOCK_FRAMES];
	private final float[] musicBlock;
	private final float[] out;
	private long musicFrames;

	private TimecodeWavWriter(TimecodeFile file, SampleSource music) {
		this.file = file;
		this.music = music;
		this.musicBlock = new float[music == null ? 0 : BLOCK_FRAMES * music.channels()];
		this.out = new float[BLOCK_FRAMES * file.channels().size()];
	}

	/** What was written: sample frames, frames of timecode, its last label, samples of music, and samples that had to be clipped. */
	public record Written(long sampleFrames, long timecodeFrames, Timecode last, long musicFrames, long clippedSamples) {
	}

	/** Told about progress after each block; for long files. */
	@FunctionalInterface
	public interface Progress {
		void written(long sampleFrames, long ofSampleFrames);
	}

	/**
	 * Writes the file and closes the stream, but not the music.
	 *
	 * @param music needed if a channel wants it; its sample rate may be another than the file's
	 * @throws TimecodeException if the file wants music that is not there
	 */
	public static Written write(OutputStream to, TimecodeFile file, Optional<SampleSource> music, Progress progress) throws IOException {
		check(file, music);
		SampleSource source = file.wantsMusic() ? ResampledSource.of(music.orElseThrow(), file.sampleRate()) : null;
		return new TimecodeWavWriter(file, source).run(to, progress);
	}

	/** {@link #write(OutputStream, TimecodeFile, Optional, Progress)} without anybody watching. */
	public static Written write(OutputStream to, TimecodeFile file, Optional<SampleSource> music) throws IOException {
		return write(to, file, music, (done, of) -> {
		});
	}

	private static void check(TimecodeFile file, Optional<SampleSource> music) {
		if (!file.wantsMusic()) {
			return;
		}
		int channels = music.map(SampleSource::channels)
				.orElseThrow(() -> new TimecodeException("The timecode file is to carry music, but there is no music"));
		for (ChannelFeed feed : file.channels()) {
			if (feed instanceof ChannelFeed.MusicFeed wanted && wanted.channel() >= channels) {
				throw new TimecodeException("The timecode file is to carry music channel " + (wanted.channel() + 1) + ", but the music has " + channels
						+ (channels == 1 ? " channel" : " channels"));
			}
		}
	}

	private Written run(OutputStream to, Progress progress) throws IOException {
		long frames = file.timecodeFrames();
		long samples = file.sampleFrames();
		LtcSignal signal = new LtcSignal(file.line().rate(), file.sampleRate(), file.levelDbfs(), this::word, frames);
		long clipped;
		try (WavWriter wav = new WavWriter(to, file.sampleRate(), file.channels().size(), file.depth(), samples, file.cues())) {
			for (long at = 0; at < samples;) {
				int count = signal.read(timecode, 0, BLOCK_FRAMES);
				readMusic(at, count);
				for (int channel = 0; channel < file.channels().size(); channel++) {
					feed(channel, count);
				}
				wav.write(out, 0, count);
				at += count;
				progress.written(at, samples);
			}
			clipped = wav.clipped();
		}
		return new Written(samples, frames, file.line().start().plusFrames(Math.max(0, frames - 1)), musicFrames, clipped);
	}

	private LtcWord word(long frame) {
		Timecode label = file.line().start().plusFrames(frame);
		return LtcWord.of(label, file.mark().map(mark -> UserBits.of(mark, label.frames())).orElse(0));
	}

	/** Fills the music block for the sample frames from {@code at} on; silence before the first note and after the end. */
	private void readMusic(long at, int count) throws IOException {
		if (music == null) {
			return;
		}
		int channels = music.channels();
		int done = (int) Math.min(count, Math.max(0, file.firstNoteFrame() - at));
		Arrays.fill(musicBlock, 0, done * channels, 0);
		while (done < count) {
			int got = music.read(musicBlock, done * channels, count - done);
			if (got < 0) {
				Arrays.fill(musicBlock, done * channels, count * channels, 0);
				return;
			}
			done += got;
			musicFrames += got;
		}
	}

	private void feed(int channel, int count) {
		List<ChannelFeed> feeds = file.channels();
		ChannelFeed feed = feeds.get(channel);
		int step = feeds.size();
		if (feed instanceof ChannelFeed.TimecodeFeed) {
			for (int i = 0; i < count; i++) {
				out[i * step + channel] = timecode[i];
			}
		} else if (feed instanceof ChannelFeed.MusicFeed wanted) {
			for (int i = 0; i < count; i++) {
				out[i * step + channel] = musicBlock[i * music.channels() + wanted.channel()];
			}
		} else if (feed instanceof ChannelFeed.MusicMixFeed) {
			for (int i = 0; i < count; i++) {
				out[i * step + channel] = mean(i * music.channels());
			}
		} else {
			for (int i = 0; i < count; i++) {
				out[i * step + channel] = 0;
			}
		}
	}

	private float mean(int offset) {
		float sum = 0;
		for (int i = 0; i < music.channels(); i++) {
			sum += musicBlock[offset + i];
		}
		return sum / music.channels();
	}
}
