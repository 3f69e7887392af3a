package org.girandole.timecode.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

import org.girandole.timecode.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResampledSourceTest {
	@TempDir
	Path folder;

	private static float[] all(SampleSource source) throws IOException {
		float[] samples = new float[(int) (source.frames() + 10) * source.channels()];
		int at = 0;
		int got;
		while ((got = source.read(samples, at * source.channels(), 613)) > 0) {
			at += got;
		}
		assertThat((long) at).isEqualTo(source.frames());
		return samples;
	}

	private static SampleSource sine(int sampleRate, double hertz, int seconds) {
		return new FunctionSource(sampleRate, 1, (long) sampleRate * seconds, (frame, channel) -> 0.5 * Math.sin(2 * Math.PI * hertz * frame / sampleRate));
	}

	// The truth is the sine itself: no delay, no drift, and an error 90 dB below it, up to 18 kHz.
	@ParameterizedTest
	@CsvSource({ "44100, 48000, 100", "44100, 48000, 18000", "48000, 44100, 1000", "48000, 44100, 17000", "44100, 96000, 10000", "96000, 48000, 18000",
			"22050, 48000, 9000", "8000, 44100, 3000" })
	void keepsASineWhatAndWhereItIs(int from, int to, double hertz) throws Exception {
		int seconds = 4;
		float[] samples = all(ResampledSource.of(sine(from, hertz, seconds), to));
		double error = 0;
		int count = 0;
		for (int i = to / 10; i < to * seconds - to / 10; i++) {
			double difference = samples[i] - 0.5 * Math.sin(2 * Math.PI * hertz * i / to);
			error += difference * difference;
			count++;
		}
		assertThat(10 * Math.log10(0.125 / (error / count))).as("signal to error in dB").isGreaterThan(90);
	}

	@Test
	void whatWouldFoldBackIsGone() throws Exception {
		float[] samples = all(ResampledSource.of(sine(96_000, 30_000, 2), 48_000));
		for (int i = 5_000; i < 90_000; i++) {
			assertThat(Math.abs(samples[i])).isLessThan(0.5f * 2e-5f);
		}
	}

	// sox 14.4.2, rate -v: 95 % bandwidth, 175 dB; a published resampler of high quality.
	@Test
	void agreesWithSoxOnMusicLikeSound() throws Exception {
		Tool.require("sox");
		Path in = folder.resolve("in.wav");
		Path out = folder.resolve("out.f32");
		Tool.run(folder, "sox", "-R", "-r", "44100", "-n", "-b", "24", in, "synth", "3", "pluck", "A3", "synth", "3", "sine", "mix", "200-9000", "vol", "0.4");
		Tool.run(folder, "sox", "-D", in, "-t", "f32", out, "rate", "-v", "48000");
		ByteBuffer buffer = ByteBuffer.wrap(Files.readAllBytes(out)).order(ByteOrder.LITTLE_ENDIAN);
		float[] theirs = new float[buffer.capacity() / 4];
		buffer.asFloatBuffer().get(theirs);
		float[] ours;
		try (WavReader reader = WavReader.open(in)) {
			ours = all(ResampledSource.of(reader, 48_000));
		}
		double difference = 0;
		double power = 0;
		for (int i = 2_000; i < theirs.length - 2_000; i++) {
			difference += (ours[i] - theirs[i]) * (double) (ours[i] - theirs[i]);
			power += theirs[i] * (double) theirs[i];
		}
		assertThat(10 * Math.log10(power / difference)).as("agreement in dB").isGreaterThan(70);
	}

	@Test
	void channelsStayApartAndShortSoundsStayWhole() throws Exception {
		SampleSource stereo = new FunctionSource(24_000, 2, 1, (frame, channel) -> channel == 0 ? 1 : 0);
		float[] samples = all(ResampledSource.of(stereo, 48_000));
		assertThat(samples[0]).isGreaterThan(0.9f);
		assertThat(samples[1]).isZero();
		assertThat(all(ResampledSource.of(new FunctionSource(44_100, 1, 0, (f, c) -> 0), 48_000))).containsOnly(0);
	}

	@Test
	void theSameRateIsLeftAlone() {
		SampleSource source = sine(48_000, 1000, 1);
		assertThat(ResampledSource.of(source, 48_000)).isSameAs(source);
	}

	@Test
	void refusesRatesWithoutACommonMeasure() {
		assertThatThrownBy(() -> ResampledSource.of(sine(1_535_999, 1000, 1), 96_000)).isInstanceOf(IllegalArgumentException.class)
				.hasMessageContaining("1535999").hasMessageContaining("convert it");
	}
}
