package org.girandole.timecode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimecodeTest {

	// The frame numbers follow from SMPTE ST 12-1: two labels fewer in nine of ten minutes; 17 981 and 17 982 are the commonly published pair.
	@ParameterizedTest
	@CsvSource({
			"00:00:00;00, 0", "00:00:59;29, 1799", "00:01:00;02, 1800", "00:01:59;29, 3597", "00:02:00;02, 3598", "00:09:59;29, 17981",
			"00:10:00;00, 17982", "00:11:00;02, 19782", "01:00:00;00, 107892", "23:59:59;29, 2589407" })
	void countsDropFrameLabels(String label, int frame) {
		Timecode timecode = Timecode.parse(label, FrameRate.FPS_29_97_DROP);
		assertThat(timecode.frameOfDay()).isEqualTo(frame);
		assertThat(Timecode.ofFrame(frame, FrameRate.FPS_29_97_DROP)).isEqualTo(timecode).hasToString(label);
	}

	@ParameterizedTest
	@ValueSource(strings = { "00:01:00;00", "00:01:00;01", "10:59:00;00", "00:09:00:01" })
	void refusesLabelsThatDropFrameCountingLeavesOut(String label) {
		assertThatThrownBy(() -> Timecode.parse(label, FrameRate.FPS_29_97_DROP)).isInstanceOf(TimecodeException.class)
				.hasMessageContaining("does not exist").hasMessageContaining("00;02");
	}

	@Test
	void theTenthMinuteLeavesOutNothing() {
		assertThat(Timecode.parse("00:10:00;01", FrameRate.FPS_29_97_DROP).frameOfDay()).isEqualTo(17_983);
		assertThat(Timecode.parse("00:01:00:00", FrameRate.FPS_29_97).frameOfDay()).isEqualTo(1800);
	}

	@ParameterizedTest
	@EnumSource
	void everyFrameOfADayHasOneLabelAndEachFollowsTheLast(FrameRate rate) {
		int day = rate.framesPerDay();
		int hours = 0;
		int minutes = 0;
		int seconds = 0;
		int frames = 0;
		for (int frame = 0; frame < day; frame++) {
			Timecode label = Timecode.ofFrame(frame, rate);
			if (label.hours() != hours || label.minutes() != minutes || label.seconds() != seconds || label.frames() != frames
					|| label.frameOfDay() != frame) {
				throw new AssertionError("frame " + frame + " is " + label + ", number " + label.frameOfDay());
			}
			do {
				// The plain counter of a clock, stepped over labels that do not exist: an independent way to the same sequence.
				frames++;
				if (frames == rate.nominal()) {
					frames = 0;
					seconds++;
				}
				if (seconds == 60) {
					seconds = 0;
					minutes++;
				}
				if (minutes == 60) {
					minutes = 0;
					hours = (hours + 1) % 24;
				}
			} while (rate.dropFrame() && minutes % 10 != 0 && seconds == 0 && frames < 2);
		}
		assertThat(hours + minutes + seconds + frames).as("the day ends where it began").isZero();
		assertThat(Timecode.ofFrame(day, rate)).isEqualTo(Timecode.ofFrame(0, rate));
		assertThat(Timecode.ofFrame(-1, rate)).isEqualTo(Timecode.ofFrame(day - 1, rate));
	}

	@Test
	void readsAndWritesLabels() {
		assertThat(Timecode.parse(" 1:2:3:4 ", FrameRate.FPS_25)).isEqualTo(new Timecode(1, 2, 3, 4, FrameRate.FPS_25)).hasToString("01:02:03:04");
		assertThat(Timecode.parse("10:00:00:00", FrameRate.FPS_29_97_DROP)).hasToString("10:00:00;00");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = {
			"10:00:00:25 | FPS_25 | 0 to 24", "10:00:00:24 | FPS_23_976 | 0 to 23", "24:00:00:00 | FPS_25 | 24 hours; expected 0 to 23",
			"00:60:00:00 | FPS_25 | 60 minutes", "00:00:60:00 | FPS_30 | 60 seconds", "10:00:00 | FPS_25 | as in 10:00:00:00",
			"ten | FPS_29_97_DROP | as in 10:00:00;00", "10:00:00;00 | FPS_25 | drop-frame label", "-1:00:00:00 | FPS_25 | no timecode label" })
	void saysWhatIsWrongWithALabel(String label, FrameRate rate, String part) {
		assertThatThrownBy(() -> Timecode.parse(label, rate)).isInstanceOf(TimecodeException.class).hasMessageContaining(part);
	}

	@Test
	void askingWhetherALabelExistsAgreesWithMakingIt() {
		assertThat(Timecode.exists(0, 1, 0, 1, FrameRate.FPS_29_97_DROP)).isFalse();
		assertThat(Timecode.exists(0, 1, 0, 2, FrameRate.FPS_29_97_DROP)).isTrue();
		assertThat(Timecode.exists(0, 1, 0, 1, FrameRate.FPS_29_97)).isTrue();
		assertThat(Timecode.exists(24, 0, 0, 0, FrameRate.FPS_25)).isFalse();
		assertThat(Timecode.exists(0, 0, 0, 25, FrameRate.FPS_25)).isFalse();
	}

	@Test
	void countsForwardsOverMidnight() {
		Timecode late = Timecode.parse("23:59:59:20", FrameRate.FPS_25);
		Timecode early = late.plusFrames(10);
		assertThat(early).hasToString("00:00:00:05");
		assertThat(early.framesAfter(late)).isEqualTo(10);
		assertThat(late.framesAfter(early)).isEqualTo(2_160_000 - 10);
		assertThat(early.plusFrames(-10)).isEqualTo(late);
		assertThatThrownBy(() -> early.framesAfter(Timecode.parse("10:00:00:00", FrameRate.FPS_30))).isInstanceOf(TimecodeException.class);
	}
}
