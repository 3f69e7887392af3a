package org.girandole.timecode.marks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MidiTimecodeTest {
	private static final HexFormat SPACED = HexFormat.ofDelimiter(" ").withUpperCase();

	@TempDir
	Path folder;

	// Worked out from the bit layout of MMA RP-004/RP-008.
	@ParameterizedTest
	@CsvSource({
			"01:02:03:04, FPS_25, F0 7F 7F 01 01 21 02 03 04 F7, F1 04 F1 10 F1 23 F1 30 F1 42 F1 50 F1 61 F1 72",
			"00:01:00;02, FPS_29_97_DROP, F0 7F 7F 01 01 40 01 00 02 F7, F1 02 F1 10 F1 20 F1 30 F1 41 F1 50 F1 60 F1 74",
			"23:59:59:29, FPS_30, F0 7F 7F 01 01 77 3B 3B 1D F7, F1 0D F1 11 F1 2B F1 33 F1 4B F1 53 F1 67 F1 77" })
	void makesTheMessages(String label, FrameRate rate, String full, String quarters) {
		Timecode timecode = Timecode.parse(label, rate);
		assertThat(SPACED.formatHex(MidiTimecode.fullFrame(timecode))).isEqualTo(full);
		assertThat(SPACED.formatHex(MidiTimecode.quarterFrames(timecode))).isEqualTo(quarters);
	}

	@ParameterizedTest
	@EnumSource
	void readsThemBack(FrameRate rate) {
		for (int frame = 0; frame < rate.framesPerDay(); frame += 9973) {
			Timecode label = Timecode.ofFrame(frame, rate);
			assertThat(MidiTimecode.readFullFrame(MidiTimecode.fullFrame(label), rate)).isEqualTo(label);
			assertThat(MidiTimecode.readQuarterFrames(MidiTimecode.quarterFrames(label), rate)).isEqualTo(label);
		}
	}

	@Test
	void refusesOtherMessagesAndRates() {
		Timecode label = Timecode.parse("01:02:03:04", FrameRate.FPS_25);
		assertThatThrownBy(() -> MidiTimecode.readFullFrame(MidiTimecode.fullFrame(label), FrameRate.FPS_30)).isInstanceOf(TimecodeException.class)
				.hasMessageContaining("counts 25").hasMessageContaining("30 fps is expected");
		assertThatThrownBy(() -> MidiTimecode.readFullFrame(new byte[10], FrameRate.FPS_30)).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> MidiTimecode.readQuarterFrames(new byte[16], FrameRate.FPS_30)).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> MidiTimecode.readQuarterFrames(new byte[2], FrameRate.FPS_30)).isInstanceOf(TimecodeException.class);
		byte[] leftOut = MidiTimecode.fullFrame(Timecode.parse("00:01:00;02", FrameRate.FPS_29_97_DROP));
		leftOut[8] = 0;
		assertThatThrownBy(() -> MidiTimecode.readFullFrame(leftOut, FrameRate.FPS_29_97_DROP)).isInstanceOf(TimecodeException.class)
				.hasMessageContaining("does not exist");
	}

	// midicsv 1.1 shows the file's messages; a tick is a quarter frame: 100 ticks in 1 000 000 us at 25, 120 in 1 001 000 us at 29.97.
	@Test
	void midicsvReadsTheFile() throws Exception {
		Tool.require("midicsv");
		Path file = folder.resolve("mtc.mid");
		Files.write(file, MidiTimecode.file(new TimecodeLine(FrameRate.FPS_25, Timecode.parse("01:02:03:04", FrameRate.FPS_25), 0), 4));
		List<String> lines = Tool.run(folder, "midicsv", file).lines().map(line -> line.replaceAll("\\s*,\\s*", ",")).toList();
		assertThat(lines).contains("0,0,Header,0,1,100", "1,0,Tempo,1000000", "1,0,System_exclusive,9,127,127,1,1,33,2,3,4,247",
				"1,0,System_exclusive_packet,2,241,4", "1,7,System_exclusive_packet,2,241,114", "1,8,System_exclusive_packet,2,241,6");

		Files.write(file, MidiTimecode.file(new TimecodeLine(FrameRate.FPS_29_97, Timecode.parse("01:02:03:04", FrameRate.FPS_29_97), 0), 4));
		assertThat(Tool.run(folder, "midicsv", file).lines().map(line -> line.replaceAll("\\s*,\\s*", ",")).toList()).contains("0,0,Header,0,1,120",
				"1,0,Tempo,1001000");
	}
}
