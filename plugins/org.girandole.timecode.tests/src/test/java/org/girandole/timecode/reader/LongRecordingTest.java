package org.girandole.timecode.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.ltc.LtcWord;
import org.junit.jupiter.api.Test;

/** A recording of a whole evening, frame by frame as the decoder hands it over. */
class LongRecordingTest {
	private static final int SAMPLE_RATE = 48_000;
	/** 48,000 samples a second, 25 frames a second. */
	private static final int SAMPLES_A_FRAME = 1_920;
	/** Three hours; half an hour is enough for frames times sample rate to leave the range of an int. */
	private static final int FRAMES = 3 * 3_600 * 25;

	@Test
	void theSpeedOfThreeHoursIsThatOfASecond() {
		FrameTrack.Builder builder = new FrameTrack.Builder();
		for (int i = 0; i < FRAMES; i++) {
			builder.add(new LtcFrame((double) i * SAMPLES_A_FRAME, (i + 1.0) * SAMPLES_A_FRAME, LtcWord.of(Timecode.ofFrame(i, FrameRate.FPS_25), 0), Quality.READ, 1, false,
					-12, 40, 3));
		}

		TimecodeReading reading = ReadingBuilder.build(builder.build(), SAMPLE_RATE, (long) FRAMES * SAMPLES_A_FRAME).orElseThrow();

		assertThat(reading.rate()).isEqualTo(FrameRate.FPS_25);
		assertThat(reading.speedPpm()).isCloseTo(0, within(1e-6));
		assertThat(reading.goodFrames()).isEqualTo(FRAMES);
	}
}
