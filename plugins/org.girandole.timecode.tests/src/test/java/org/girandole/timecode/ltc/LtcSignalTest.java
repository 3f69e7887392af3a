package org.girandole.timecode.ltc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class LtcSignalTest {

	static float[] signal(FrameRate rate, int sampleRate, double dbfs, String start, long frames) {
		Timecode first = Timecode.parse(start, rate);
		LtcSignal signal = new LtcSignal(rate, sampleRate, dbfs, n -> LtcWord.of(first.plusFrames(n), 0), frames);
		float[] samples = new float[(int) LtcSignal.samples(rate, sampleRate, frames)];
		int at = 0;
		int got;
		while ((got = signal.read(samples, at, Math.min(777, samples.length - at))) > 0) {
			at += got;
		}
		assertThat(at).isEqualTo(samples.length);
		assertThat(signal.read(new float[1], 0, 1)).isEqualTo(-1);
		return samples;
	}

	// Samples a frame: rate arithmetic; 8008/5 samples at 29.97 and 48 kHz is a customary figure.
	@ParameterizedTest
	@CsvSource({ "FPS_25, 48000, 1920.0", "FPS_24, 48000, 2000.0", "FPS_23_976, 48000, 2002.0", "FPS_29_97, 48000, 1601.6", "FPS_30, 44100, 1470.0",
			"FPS_23_976, 44100, 1839.3375", "FPS_29_97_DROP, 44100, 1471.47", "FPS_25, 96000, 3840.0" })
	void aThousandFramesHaveTheRightNumberOfSamples(FrameRate rate, int sampleRate, double perFrame) {
		double closing = perFrame / 80;
		assertThat(LtcSignal.samples(rate, sampleRate, 1000)).isEqualTo((long) Math.ceil(1000 * perFrame + closing - 1e-9));
	}

	// Bi-phase mark: a transition opens every bit, a one has another in its middle; SMPTE ST 12-1.
	@ParameterizedTest
	@EnumSource
	void crossesZeroExactlyWhereTheBitsSay(FrameRate rate) {
		int sampleRate = 96_000;
		int frames = 50;
		float[] samples = signal(rate, sampleRate, -3, "09:59:59:10", frames);
		Timecode start = Timecode.parse("09:59:59:10", rate);
		double cell = (double) sampleRate * rate.denominator() / rate.numerator() / 80;
		int at = 1;
		for (int frame = 0; frame < frames; frame++) {
			LtcWord word = LtcWord.of(start.plusFrames(frame), 0);
			for (int bit = 0; bit < 80; bit++) {
				double begin = (frame * 80L + bit) * cell;
				if (begin > 0) {
					at = expectCrossing(samples, at, begin);
				}
				if (word.bit(bit)) {
					at = expectCrossing(samples, at, begin + cell / 2);
				}
			}
		}
	}

	private static int expectCrossing(float[] samples, int from, double expected) {
		int at = from;
		while (samples[at - 1] * samples[at] > 0 || samples[at - 1] == 0) {
			at++;
		}
		double crossing = at - samples[at] / (samples[at] - samples[at - 1]);
		assertThat(crossing).isCloseTo(expected, within(0.02));
		return at + 1;
	}

	// SMPTE ST 12-1: 10 % to 90 % in 40 us +- 10 us. Measured on a signal sampled finely.
	@Test
	void risesInFortyMicroseconds() {
		float[] samples = signal(FrameRate.FPS_25, 384_000, 0, "00:00:00:00", 2);
		int zero = 192 * 4;
		int low = zero;
		while (Math.abs(samples[low]) < 0.8) {
			low--;
		}
		int high = zero;
		while (Math.abs(samples[high]) < 0.8) {
			high++;
		}
		assertThat((high - low) / 0.384).isBetween(36.0, 46.0);
	}

	@ParameterizedTest
	@CsvSource({ "0, 1.0", "-3, 0.70795", "-12, 0.25119", "-40, 0.01" })
	void hasTheAskedLevel(double dbfs, double peak) {
		float[] samples = signal(FrameRate.FPS_30, 48_000, dbfs, "01:02:03:04", 10);
		float highest = 0;
		float lowest = 0;
		for (float sample : samples) {
			highest = Math.max(highest, sample);
			lowest = Math.min(lowest, sample);
		}
		assertThat((double) highest).isCloseTo(peak, within(peak * 1e-4));
		assertThat((double) lowest).isCloseTo(-peak, within(peak * 1e-4));
	}

	// The polarity correction bit exists so that every word begins with the same direction.
	@ParameterizedTest
	@EnumSource
	void everyWordBeginsWithARise(FrameRate rate) {
		float[] samples = signal(rate, 48_000, -3, "10:00:00:00", 100);
		double perFrame = 48_000.0 * rate.denominator() / rate.numerator();
		for (int frame = 1; frame < 100; frame++) {
			int begin = (int) Math.round(frame * perFrame);
			assertThat(samples[begin - 4]).isNegative();
			assertThat(samples[begin + 4]).isPositive();
		}
	}

	@Test
	void endsAtRest() {
		float[] samples = signal(FrameRate.FPS_25, 48_000, -3, "10:00:00:00", 3);
		assertThat(samples[0]).isZero();
		assertThat(samples[3 * 1920 + 8]).isPositive();
		assertThat(samples[samples.length - 1]).isZero();
		assertThat(LtcSignal.samples(FrameRate.FPS_25, 48_000, 0)).isZero();
		assertThat(signal(FrameRate.FPS_25, 48_000, -3, "10:00:00:00", 0)).isEmpty();
	}

	@Test
	void refusesWhatIsNoSignal() {
		assertThatThrownBy(() -> signal(FrameRate.FPS_25, 48_000, 0.1, "10:00:00:00", 1)).isInstanceOf(TimecodeException.class).hasMessageContaining("dBFS");
		assertThatThrownBy(() -> signal(FrameRate.FPS_25, 48_000, Double.NaN, "10:00:00:00", 1)).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> signal(FrameRate.FPS_25, 4_000, -3, "10:00:00:00", 1)).isInstanceOf(TimecodeException.class).hasMessageContaining("4000 Hz");
	}
}
