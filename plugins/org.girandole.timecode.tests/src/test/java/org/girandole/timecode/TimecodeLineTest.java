package org.girandole.timecode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class TimecodeLineTest {
	private static final long MINUTE_US = 60_000_000;

	private static TimecodeLine line(FrameRate rate, String start, long prerollUs) {
		return new TimecodeLine(rate, Timecode.parse(start, rate), prerollUs);
	}

	@Test
	void theFirstNoteComesAfterThePreroll() {
		TimecodeLine line = line(FrameRate.FPS_25, "10:00:00:00", MINUTE_US);
		assertThat(line.firstNote()).hasToString("10:01:00:00");
		assertThat(line.labelAt(-MINUTE_US)).hasToString("10:00:00:00");
		assertThat(line.labelAt(17_160_000)).hasToString("10:01:17:04");
		assertThat(line.labelAt(39_999)).hasToString("10:01:00:00");
		assertThat(line.labelAt(40_000)).hasToString("10:01:00:01");
	}

	// Real time against 29.97 labels: 60 s is frame floor(60 * 30000/1001) = 1798; 600 s is 17982; 3600 s is 107892.
	@ParameterizedTest
	@CsvSource({ "60000000, 00:00:59;28", "600000000, 00:10:00;00", "3600000000, 01:00:00;00", "60060000, 00:01:00;02", "60059999, 00:00:59;29" })
	void dropFrameLabelsFollowRealTime(long elapsedUs, String label) {
		assertThat(line(FrameRate.FPS_29_97_DROP, "00:00:00;00", 0).labelAt(elapsedUs)).hasToString(label);
	}

	@Test
	void tellsHowFarIntoTheFrameAMomentLies() {
		TimecodeLine line = line(FrameRate.FPS_29_97, "01:00:00:00", 0);
		TimecodeLine.Moment moment = line.momentAt(100_000).orElseThrow();
		assertThat(moment.frame()).isEqualTo(2);
		assertThat(moment.label()).hasToString("01:00:00:02");
		// 100000 - 2 * 100100/3 = 99800/3
		assertThat(moment.remainder()).isEqualTo(new ExactMicros(99_800, 3)).hasToString("33266 2/3 us");
	}

	@Test
	void hasNoLabelBeforeItBegins() {
		TimecodeLine line = line(FrameRate.FPS_25, "10:00:00:00", MINUTE_US);
		assertThat(line.momentAt(-MINUTE_US - 1)).isEmpty();
		assertThatThrownBy(() -> line.labelAt(-MINUTE_US - 1)).isInstanceOf(TimecodeException.class).hasMessageContaining("before the timecode begins")
				.hasMessageContaining("10:00:00:00");
	}

	@ParameterizedTest
	@EnumSource
	void theWayBackLeadsToTheFirstMicrosecondOfTheFrame(FrameRate rate) {
		TimecodeLine line = line(rate, "23:59:30:10", 10_000_001);
		for (long us = -10_000_001; us < 120_000_000; us += 7_919) {
			TimecodeLine.Moment moment = line.momentAt(us).orElseThrow();
			long first = line.showUsOf(moment.label());
			assertThat(line.showTimeOf(moment.label())).isEqualTo(line.startOfFrame(moment.frame()));
			assertThat(first).isLessThanOrEqualTo(us);
			assertThat(ExactMicros.of(us).minus(line.showTimeOf(moment.label()))).isEqualTo(moment.remainder());
			assertThat(moment.remainder()).isGreaterThanOrEqualTo(ExactMicros.ZERO).isLessThan(rate.frameLength());
			assertThat(line.labelAt(first)).isEqualTo(moment.label());
			assertThat(first == -10_000_001 || !line.labelAt(first - 1).equals(moment.label())).isTrue();
		}
	}

	@Test
	void refusesWhatCannotBeALine() {
		assertThatThrownBy(() -> new TimecodeLine(FrameRate.FPS_25, Timecode.parse("10:00:00:00", FrameRate.FPS_30), 0))
				.isInstanceOf(TimecodeException.class).hasMessageContaining("30 fps").hasMessageContaining("25 fps");
		assertThatThrownBy(() -> line(FrameRate.FPS_25, "10:00:00:00", -1)).isInstanceOf(TimecodeException.class).hasMessageContaining("pre-roll");
	}

	@Test
	void exactMicrosRoundAndPrint() {
		assertThat(new ExactMicros(2, 4)).isEqualTo(new ExactMicros(1, 2)).hasToString("1/2 us");
		assertThat(new ExactMicros(-1, 3).floorUs()).isEqualTo(-1);
		assertThat(new ExactMicros(-1, 3).ceilUs()).isZero();
		assertThat(new ExactMicros(-1, 3)).hasToString("-1/3 us");
		assertThat(new ExactMicros(-7, 3)).hasToString("-2 1/3 us");
		assertThat(new ExactMicros(5, 2).roundUs()).isEqualTo(3);
		assertThat(new ExactMicros(-5, 2).roundUs()).isEqualTo(-2);
		assertThat(new ExactMicros(7, 3).roundUs()).isEqualTo(2);
		assertThat(ExactMicros.of(7)).hasToString("7 us");
	}
}
