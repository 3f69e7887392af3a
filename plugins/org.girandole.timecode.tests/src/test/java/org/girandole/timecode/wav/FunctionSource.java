package org.girandole.timecode.wav;

/** Audio that is computed, in uneven pieces, as a file might deliver it. */
public final class FunctionSource implements SampleSource {
	/** The sample of a frame in a channel. */
	public interface Function {
		double at(long frame, int channel);
	}

	private final int sampleRate;
	private final int channels;
	private final long frames;
	private final Function function;
	private long at;

	public FunctionSource(int sampleRate, int channels, long frames, Function function) {
		this.sampleRate = sampleRate;
		this.channels = channels;
		this.frames = frames;
		this.function = function;
	}

	@Override
	public int sampleRate() {
		return sampleRate;
	}

	@Override
	public int channels() {
		return channels;
	}

	@Override
	public long frames() {
		return frames;
	}

	@Override
	public int read(float[] interleaved, int offset, int count) {
		int part = (int) Math.min(Math.min(count, 1 + at % 991), frames - at);
		if (part <= 0) {
			return -1;
		}
		for (int i = 0; i < part; i++) {
			for (int channel = 0; channel < channels; channel++) {
				interleaved[offset + i * channels + channel] = (float) function.at(at + i, channel);
			}
		}
		at += part;
		return part;
	}

	@Override
	public void close() {
		// Nothing is open.
	}
}
