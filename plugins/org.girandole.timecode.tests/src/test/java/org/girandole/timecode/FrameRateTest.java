package org.girandole.timecode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrameRateTest {

	@ParameterizedTest
	@CsvSource({
			"25, FPS_25", "25 fps, FPS_25", "24, FPS_24", "30, FPS_30", "30 non-drop, FPS_30", "23.976, FPS_23_976", "24000/1001, FPS_23_976",
			"23.98 fps, FPS_23_976", "29.97, FPS_29_97", "29.97 non-drop, FPS_29_97", "29.97 ndf, FPS_29_97", "29.97 drop, FPS_29_97_DROP",
			"29.97 fps drop, FPS_29_97_DROP", "29.97 DF, FPS_29_97_DROP", "30000/1001 drop-frame, FPS_29_97_DROP" })
	void readsTheWordsForEachRate(String words, FrameRate expected) {
		assertThat(FrameRate.parse(words)).isEqualTo(expected);
	}

	@ParameterizedTest
	@EnumSource
	void readsItsOwnWords(FrameRate rate) {
		assertThat(FrameRate.parse(rate.words())).isEqualTo(rate);
		assertThat(FrameRate.parse(rate.toString())).isEqualTo(rate);
	}

	// SMPTE ST 12-1 defines drop-frame counting for 30000/1001 only.
	@ParameterizedTest
	@ValueSource(strings = { "23.976 drop", "24 drop", "25 df", "30 drop" })
	void refusesDropFrameCountingElsewhere(String words) {
		assertThatThrownBy(() -> FrameRate.parse(words)).isInstanceOf(TimecodeException.class).hasMessageContaining("not defined")
				.hasMessageContaining("29.97 drop");
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "fps", "26", "29.97 dropped", "50", "25,0", "25 25" })
	void namesTheRatesWhenTheWordsAreUnknown(String words) {
		assertThatThrownBy(() -> FrameRate.parse(words)).isInstanceOf(TimecodeException.class)
				.hasMessageContaining("23.976, 24, 25, 29.97, 29.97 drop, 30");
	}

	// Frames of an hour and a day of labels: arithmetic of SMPTE ST 12-1; 107 892 and 2 589 408 for drop-frame are the commonly published counts.
	@ParameterizedTest
	@CsvSource({
			"FPS_23_976, 86400, 2073600, 3603600000", "FPS_24, 86400, 2073600, 3600000000", "FPS_25, 90000, 2160000, 3600000000",
			"FPS_29_97, 108000, 2592000, 3603600000", "FPS_29_97_DROP, 107892, 2589408, 3599996400", "FPS_30, 108000, 2592000, 3600000000" })
	void countsTheFramesOfAnHourAndADay(FrameRate rate, int hour, int day, long hourUs) {
		assertThat(rate.framesPerLabelHour()).isEqualTo(hour);
		assertThat(rate.framesPerDay()).isEqualTo(day);
		assertThat(rate.startOf(hour)).isEqualTo(ExactMicros.of(hourUs));
	}

	@ParameterizedTest
	@CsvSource({
			"FPS_23_976, 125125, 3", "FPS_24, 125000, 3", "FPS_25, 40000, 1", "FPS_29_97, 100100, 3", "FPS_29_97_DROP, 100100, 3",
			"FPS_30, 100000, 3" })
	void knowsTheExactLengthOfAFrame(FrameRate rate, long numerator, long denominator) {
		assertThat(rate.frameLength()).isEqualTo(new ExactMicros(numerator, denominator));
	}

	@ParameterizedTest
	@EnumSource
	void aFrameContainsItsBeginningAndNotItsEnd(FrameRate rate) {
		for (long frame = -3000; frame < 200_000; frame += 7) {
			long first = rate.startOf(frame).ceilUs();
			assertThat(rate.framesIn(first)).isEqualTo(frame);
			assertThat(rate.framesIn(first - 1)).isEqualTo(frame - 1);
		}
	}

	@Test
	void countsFramesOfVeryLongTimesWithoutOverflow() {
		long yearUs = 365L * 86_400 * 1_000_000;
		assertThat(FrameRate.FPS_29_97.framesIn(1001 * yearUs)).isEqualTo(30_000L * 365 * 86_400);
	}
}
