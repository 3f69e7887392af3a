package org.girandole.timecode.ltc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Random;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class LtcWordTest {
	private static final HexFormat SPACED = HexFormat.ofDelimiter(" ").withUpperCase();

	// Made with libltc 1.3.2 (Debian libltc-dev 1.3.2-1), user bits 0.
	@ParameterizedTest
	@CsvSource({
			"00:00:00:00, FPS_30, 00 00 00 08 00 00 00 00 FC BF", "00:00:00:00, FPS_25, 00 00 00 00 00 00 00 08 FC BF",
			"01:00:00:00, FPS_25, 00 00 00 00 00 00 01 00 FC BF", "01:00:00:00, FPS_30, 00 00 00 00 00 00 01 00 FC BF",
			"01:02:03:04, FPS_24, 04 00 03 00 02 00 01 00 FC BF", "01:02:03:04, FPS_25, 04 00 03 00 02 00 01 00 FC BF",
			"01:02:03:04, FPS_30, 04 00 03 00 02 00 01 00 FC BF", "00:01:00;02, FPS_29_97_DROP, 02 04 00 00 01 00 00 00 FC BF",
			"07:32:54;18, FPS_29_97_DROP, 08 05 04 0D 02 03 07 00 FC BF", "23:59:59:29, FPS_30, 09 02 09 0D 09 05 03 02 FC BF",
			"23:59:59:24, FPS_25, 04 02 09 05 09 05 03 02 FC BF" })
	void makesThePublishedWords(String label, FrameRate rate, String bytes) {
		LtcWord word = LtcWord.of(Timecode.parse(label, rate), 0);
		assertThat(SPACED.formatHex(word.toBytes())).isEqualTo(bytes);
		assertThat(word.evenZeros()).isTrue();
		assertThat(word.label(rate)).contains(Timecode.parse(label, rate));
	}

	// SMPTE ST 12-1: bit 0 is sent first; the sync word is 0011 1111 1111 1101 in sending order.
	@Test
	void sendsTheBitsInTheRightOrder() {
		LtcWord word = LtcWord.of(Timecode.parse("00:01:00;02", FrameRate.FPS_29_97_DROP), 0);
		StringBuilder bits = new StringBuilder();
		for (int i = 0; i < LtcWord.BITS; i++) {
			bits.append(word.bit(i) ? '1' : '0');
		}
		assertThat(bits).hasToString("0100000000100000000000000000000010000000000000000000000000000000" + "0011111111111101");
	}

	@ParameterizedTest
	@EnumSource
	void agreesWithLibltcOnAnyLabelAndUserBits(FrameRate rate) throws Exception {
		Path libltc = Tool.libltc();
		Random random = new Random(12);
		for (int i = 0; i < 12; i++) {
			Timecode label = Timecode.ofFrame(random.nextInt(rate.framesPerDay()), rate);
			int user = random.nextInt();
			String theirs = Tool.run(libltc.getParent(), libltc, "word", rate.number() + (rate.dropFrame() ? "d" : ""), label.toString().replace(';', ':'),
					String.format(Locale.ROOT, "%08x", user));
			assertThat(SPACED.formatHex(LtcWord.of(label, user).toBytes())).as("%s %08x", label, user).isEqualTo(theirs.strip());
		}
	}

	@ParameterizedTest
	@EnumSource
	void readsBackEveryLabelOfTheDay(FrameRate rate) {
		for (int frame = 0; frame < rate.framesPerDay(); frame += 61) {
			Timecode label = Timecode.ofFrame(frame, rate);
			LtcWord word = LtcWord.of(label, frame * 0x9E3779B9);
			assertThat(word.label(rate)).contains(label);
			assertThat(word.userBits()).isEqualTo(frame * 0x9E3779B9);
			assertThat(word.dropFrame()).isEqualTo(rate.dropFrame());
			assertThat(word.evenZeros()).isTrue();
			assertThat(word.digits()).isEqualTo(label.toString());
		}
	}

	@Test
	void aWordWhoseDigitsAreNoLabelHasNone() {
		assertThat(new LtcWord(0xAL).label(FrameRate.FPS_30)).isEmpty();
		LtcWord leftOut = new LtcWord(1L << 32 | 1L << 10);
		assertThat(leftOut.label(FrameRate.FPS_29_97_DROP)).isEmpty();
		assertThat(leftOut.digits()).isEqualTo("00:01:00;00");
		assertThat(leftOut.label(FrameRate.FPS_29_97)).isPresent();
	}

	@Test
	void theUserBitsCarrySlotAndStampInTwoPages() {
		ReleaseMark mark = new ReleaseMark(3, "0f1e2d3c4b5a");
		assertThat(mark.stamp()).isEqualTo("0f1e2d3c");
		// Written out by the layout, group 8 first; the checks 0 and 8 are from a long division by x^4 + x + 1 done outside this code.
		int first = UserBits.of(mark, 10);
		assertThat(UserBits.hex(first)).isEqualTo("0e1f003c");
		assertThat(UserBits.hex(UserBits.of(mark, 11))).isEqualTo("8c3d203d");
		assertThat(UserBits.page(first)).contains(new UserBits.Page(true, 3, "0f1e"));
		assertThat(UserBits.page(UserBits.of(mark, 11))).contains(new UserBits.Page(false, 3, "2d3c"));
	}

	@Test
	void noSingleOrDoubleNeighbouringErrorInAPageGoesUnnoticed() {
		int bits = UserBits.of(new ReleaseMark(200, "deadbeef"), 4);
		for (int i = 0; i < 32; i++) {
			assertThat(UserBits.page(bits ^ 1 << i).filter(page -> !page.first() || page.slot() != 200 || !page.digits().equals("dead")))
					.as("bit %d", i).isEmpty();
		}
		assertThat(UserBits.page(0)).isEmpty();
		assertThat(UserBits.page(-1)).isEmpty();
	}

	@Test
	void refusesWhatTheUserBitsCannotCarry() {
		assertThatThrownBy(() -> new ReleaseMark(256, "00000000")).isInstanceOf(TimecodeException.class).hasMessageContaining("0 to 255");
		assertThatThrownBy(() -> new ReleaseMark(-1, "00000000")).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new ReleaseMark(0, "xyz")).isInstanceOf(TimecodeException.class).hasMessageContaining("hexadecimal");
		assertThatThrownBy(() -> new ReleaseMark(0, "1234567")).isInstanceOf(TimecodeException.class);
	}
}
