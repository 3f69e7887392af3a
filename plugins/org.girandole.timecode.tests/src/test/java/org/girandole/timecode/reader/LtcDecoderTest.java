package org.girandole.timecode.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.ltc.UserBits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class LtcDecoderTest {
	private static final int RATE = 48_000;
	private static final String START = "09:59:50:00";
	private static final int FRAMES = 500;

	static List<LtcFrame> decode(float[] samples, int sampleRate) {
		List<LtcFrame> frames = new ArrayList<>();
		LtcDecoder decoder = new LtcDecoder(sampleRate, frames::add);
		Random pieces = new Random(4);
		for (int at = 0; at < samples.length;) {
			int count = Math.min(samples.length - at, 1 + pieces.nextInt(3000));
			decoder.write(samples, at, count, 1);
			at += count;
		}
		decoder.finish();
		for (int i = 1; i < frames.size(); i++) {
			assertThat(frames.get(i).begin()).as("frames come in order").isGreaterThan(frames.get(i - 1).begin());
		}
		return frames;
	}

	private static float[] line(FrameRate rate) {
		return Line.clean(rate, RATE, START, FRAMES);
	}

	/** Counts the labels that are right for a line whose frames are all equally long; wrong ones that are called good fail at once. */
	private static int right(List<LtcFrame> frames, FrameRate rate, double samplesPerFrame, boolean backwards, int total) {
		int right = 0;
		for (LtcFrame frame : frames) {
			int index = (int) Math.round(frame.begin() / samplesPerFrame);
			Timecode label = Timecode.parse(START, rate).plusFrames(backwards ? total - 1 - index : index);
			boolean same = frame.word().label(rate).filter(label::equals).isPresent();
			assertThat(same || !frame.quality().isGood()).as("%s where %s is", frame, label).isTrue();
			right += same && frame.quality().isGood() ? 1 : 0;
		}
		return right;
	}

	private static void assertAllRight(float[] samples, FrameRate rate, int sampleRate, double speed) {
		double perFrame = sampleRate * (double) rate.denominator() / rate.numerator() / speed;
		assertThat(right(decode(samples, sampleRate), rate, perFrame, false, FRAMES)).isEqualTo(FRAMES);
	}

	@ParameterizedTest
	@EnumSource
	void readsEveryFrameOfACleanLine(FrameRate rate) {
		List<LtcFrame> frames = decode(line(rate), RATE);
		double perFrame = RATE * (double) rate.denominator() / rate.numerator();
		assertThat(frames).hasSize(FRAMES);
		for (int i = 0; i < FRAMES; i++) {
			LtcFrame frame = frames.get(i);
			Timecode label = Timecode.parse(START, rate).plusFrames(i);
			assertThat(frame.word()).isEqualTo(LtcWord.of(label, UserBits.of(Line.MARK, label.frames())));
			assertThat(frame.quality()).isEqualTo(Quality.READ);
			assertThat(frame.begin()).isBetween(i * perFrame - 1, i * perFrame + 1);
			assertThat(frame.levelDbfs()).isBetween(-6.1, -5.9);
			assertThat(frame.reverse()).isFalse();
			assertThat(frame.confidence()).isGreaterThan(0.99999);
		}
	}

	@ParameterizedTest
	@EnumSource
	void readsBackwards(FrameRate rate) {
		double perFrame = RATE * (double) rate.denominator() / rate.numerator();
		List<LtcFrame> frames = decode(Line.backwards(line(rate)), RATE);
		assertThat(frames).allMatch(LtcFrame::reverse);
		assertThat(right(frames, rate, perFrame, true, FRAMES)).isEqualTo(FRAMES);
	}

	// The goal: 99 % right at 6 dB and 90 % at 3 dB, with no wrong label called good; the signal is 25 frames, 48 kHz, white noise to 24 kHz.
	@ParameterizedTest
	@CsvSource({ "15, 1.0", "6, 0.99", "3, 0.90", "0, 0.90" })
	void readsThroughWhiteNoise(double snrDb, double share) {
		int total = 1500;
		for (long seed = 1; seed <= 3; seed++) {
			float[] noisy = Line.whiteNoise(Line.clean(FrameRate.FPS_25, RATE, START, total), snrDb, seed);
			assertThat(right(decode(noisy, RATE), FrameRate.FPS_25, 1920, false, total)).as("seed %d", seed).isGreaterThanOrEqualTo((int) (share * total));
		}
	}

	// Below what can be read, what is called good must still be right.
	@ParameterizedTest
	@ValueSource(doubles = { -3, -5, -6 })
	void callsNoWrongLabelGoodInHeavyNoise(double snrDb) {
		for (FrameRate rate : List.of(FrameRate.FPS_25, FrameRate.FPS_29_97_DROP)) {
			float[] noisy = Line.whiteNoise(Line.clean(rate, RATE, START, 1500), snrDb, 9);
			right(decode(noisy, RATE), rate, RATE * (double) rate.denominator() / rate.numerator(), false, 1500);
		}
	}

	@Test
	void readsThroughPinkNoise() {
		assertAllRight(Line.pinkNoise(line(FrameRate.FPS_25), 10, 5), FrameRate.FPS_25, RATE, 1);
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0.5, 0.6, 0.8, 0.96, 1.0434782608695652, 1.2, 1.6, 2.0 })
	void readsAtHalfToTwiceTheSpeed(double speed) {
		// What was made for another sample rate plays at another speed.
		int made = (int) Math.round(RATE / speed);
		float[] samples = Line.clean(FrameRate.FPS_25, made, START, FRAMES);
		assertAllRight(samples, FrameRate.FPS_25, RATE, (double) RATE / made);
		assertAllRight(Line.whiteNoise(samples, 6, 2), FrameRate.FPS_25, RATE, (double) RATE / made);
		assertThat(decode(Line.backwards(samples), RATE)).hasSize(FRAMES).allMatch(frame -> frame.quality() == Quality.READ);
	}

	@ParameterizedTest
	@ValueSource(ints = { 8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 96_000, 192_000 })
	void readsAtAnySampleRate(int sampleRate) {
		assertAllRight(Line.clean(FrameRate.FPS_25, sampleRate, START, FRAMES), FrameRate.FPS_25, sampleRate, 1);
	}

	@ParameterizedTest
	@ValueSource(doubles = { 1, 0.02, 1e-3, 5e-5 })
	void readsAtAnyLevelAndEitherPolarity(double gain) {
		float[] samples = line(FrameRate.FPS_25);
		assertAllRight(Line.each(samples, (i, x) -> x * gain), FrameRate.FPS_25, RATE, 1);
		assertAllRight(Line.each(samples, (i, x) -> -x * gain), FrameRate.FPS_25, RATE, 1);
	}

	@Test
	void readsWithAnOffset() {
		assertAllRight(Line.each(line(FrameRate.FPS_25), (i, x) -> x * 0.1 + 0.8), FrameRate.FPS_25, RATE, 1);
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0.5, 1, 2 })
	void readsThroughMainsHum(double timesTheSignal) {
		float[] samples = line(FrameRate.FPS_25);
		double height = 0.5 * timesTheSignal;
		assertAllRight(Line.each(samples, (i, x) -> x + height * Math.sin(2 * Math.PI * 50 * i / RATE)), FrameRate.FPS_25, RATE, 1);
		assertAllRight(Line.each(samples, (i, x) -> x + height / 2 * (Math.sin(2 * Math.PI * 60 * i / RATE) + Math.sin(2 * Math.PI * 180 * i / RATE) / 2)),
				FrameRate.FPS_25, RATE, 1);
	}

	@ParameterizedTest
	@CsvSource({ "0.003, 0.5", "0.003, 10", "0.01, 0.5", "0.01, 6", "0.01, 25", "0.02, 4" })
	void followsWowAndFlutter(double depth, double hertz) {
		float[] samples = Line.atSpeed(line(FrameRate.FPS_25), RATE, second -> 1 + depth * Math.sin(2 * Math.PI * hertz * second));
		assertSameLabels(samples);
		assertSameLabels(Line.whiteNoise(samples, 10, 8));
	}

	@Test
	void followsATapeThatSlowsDown() {
		float[] samples = Line.atSpeed(line(FrameRate.FPS_25), RATE, second -> 2 * Math.exp(-second / 20));
		assertSameLabels(samples);
	}

	private static void assertSameLabels(float[] samples) {
		List<String> found = labels(decode(samples, RATE));
		List<String> expected = expectedLabels(FrameRate.FPS_25);
		List<String> missing = new ArrayList<>(expected);
		missing.removeAll(found);
		List<String> foreign = new ArrayList<>(found);
		foreign.removeAll(expected);
		assertThat(missing).as("missing").isEmpty();
		assertThat(foreign).as("foreign").isEmpty();
		assertThat(found).hasSameSizeAs(expected);
	}

	private static List<String> labels(List<LtcFrame> frames) {
		return frames.stream().filter(frame -> frame.quality().isGood()).map(frame -> frame.word().digits()).toList();
	}

	private static List<String> expectedLabels(FrameRate rate) {
		List<String> labels = new ArrayList<>();
		for (int i = 0; i < FRAMES; i++) {
			labels.add(Timecode.parse(START, rate).plusFrames(i).toString());
		}
		return labels;
	}

	@Test
	void readsClippedLines() {
		assertAllRight(Line.each(line(FrameRate.FPS_25), (i, x) -> Math.max(-0.3, Math.min(0.3, 20 * x))), FrameRate.FPS_25, RATE, 1);
		float[] humming = Line.each(line(FrameRate.FPS_25), (i, x) -> Math.max(-0.9, Math.min(0.9, 1.5 * x + 0.3 * Math.sin(2 * Math.PI * 50 * i / RATE))));
		assertAllRight(humming, FrameRate.FPS_25, RATE, 1);
	}

	// A telephone line passes 300 to 3400 Hz (ITU-T G.712 in rough outline).
	@Test
	void readsNarrowBands() {
		float[] samples = line(FrameRate.FPS_25);
		float[] telephone = Line.lowPass(Line.highPass(samples, RATE, 300, 2), RATE, 3400, 4);
		assertSameLabels(telephone);
		assertSameLabels(Line.whiteNoise(telephone, 6, 3));
		assertSameLabels(Line.lowPass(samples, RATE, 1500, 4));
		assertSameLabels(Line.highPass(samples, RATE, 400, 2));
	}

	@Test
	void readsEveryWholeFrameAroundDropOuts() {
		int[][] holes = { { 100_000, 103_000 }, { 300_007, 371_003 }, { 500_000, 500_400 }, { 700_000, 900_001 } };
		float[] samples = Line.each(line(FrameRate.FPS_25), (i, x) -> inside(i, holes) ? 0 : x);
		float[] noisy = Line.whiteNoise(Line.each(line(FrameRate.FPS_25), (i, x) -> inside(i, holes) ? 0 : x), 10, 3);
		for (float[] each : List.of(samples, noisy)) {
			List<LtcFrame> frames = decode(each, RATE);
			right(frames, FrameRate.FPS_25, 1920, false, FRAMES);
			boolean[] good = new boolean[FRAMES];
			frames.stream().filter(frame -> frame.quality().isGood()).forEach(frame -> good[(int) Math.round(frame.begin() / 1920)] = true);
			for (int frame = 0; frame < FRAMES; frame++) {
				int[] whole = { frame * 1920, (frame + 1) * 1920 };
				boolean torn = false;
				for (int[] hole : holes) {
					// A frame's neighbourhood reaches a few bits beyond its ends.
					torn |= hole[0] < whole[1] + 96 && hole[1] > whole[0] - 480;
				}
				assertThat(good[frame] || torn).as("frame %d, untouched", frame).isTrue();
			}
		}
	}

	private static boolean inside(int index, int[][] holes) {
		for (int[] hole : holes) {
			if (index >= hole[0] && index < hole[1]) {
				return true;
			}
		}
		return false;
	}

	@Test
	void findsNothingInSilenceNoiseAndMusic() {
		assertThat(decode(new float[RATE * 5], RATE)).isEmpty();
		assertThat(decode(Line.whiteNoise(Line.each(new float[RATE * 20], (i, x) -> 1e-3), -60, 6), RATE)).isEmpty();
		float[] chords = Line.each(new float[RATE * 20], (i, x) -> {
			double t = i / (double) RATE;
			double root = 110 * Math.pow(2, Math.floor(t * 2) % 12 / 12);
			return 0.3 * Math.exp(-2 * (t % 0.5)) * (Math.signum(Math.sin(2 * Math.PI * root * t)) + Math.sin(2 * Math.PI * 3 * root * t) + Math.sin(14 * root * t));
		});
		assertThat(decode(chords, RATE)).isEmpty();
		float[] square = Line.each(new float[RATE * 5], (i, x) -> i / 24 % 2 == 0 ? 0.5 : -0.5);
		assertThat(decode(square, RATE)).isEmpty();
		assertThat(decode(new float[0], RATE)).isEmpty();
		assertThat(decode(new float[] { 1, -1, 1 }, RATE)).isEmpty();
	}

	@Test
	void followsAJumpOfTheLabels() {
		float[] before = Line.clean(FrameRate.FPS_25, RATE, "01:00:00:00", 60);
		float[] after = Line.clean(FrameRate.FPS_25, RATE, "23:59:59:00", 60);
		float[] spliced = new float[2 * 60 * 1920];
		System.arraycopy(before, 0, spliced, 0, 60 * 1920);
		System.arraycopy(after, 0, spliced, 60 * 1920, 60 * 1920);
		List<String> labels = labels(decode(spliced, RATE));
		assertThat(labels).hasSize(120);
		assertThat(labels.get(59)).isEqualTo("01:00:02:09");
		assertThat(labels.get(60)).isEqualTo("23:59:59:00");
		assertThat(labels.get(119)).isEqualTo("00:00:01:09");
	}

	@Test
	void refusesSampleRatesThatAreNoUse() {
		assertThatThrownBy(() -> new LtcDecoder(4_000, frame -> {
		})).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("4000 Hz");
	}
}
