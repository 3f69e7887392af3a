package org.girandole.timecode.marks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;

import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.wav.CuePoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelTrackTest {
	private static final List<Mark> MARKS = List.of(new Mark(0, "Start"), new Mark(1, ""), new Mark(12_480_003, "Glut, Böller 花火"),
			new Mark(3_599_999_999L, " blanks "), new Mark(12_480_003, "again"));

	private static List<Mark> read(String text) throws MarksException {
		return LabelTrack.read(text.getBytes(StandardCharsets.UTF_8));
	}

	@Test
	void marksSurviveARoundTrip() throws Exception {
		assertThat(LabelTrack.write(MARKS)).startsWith("0.000000\t0.000000\tStart\n0.000001\t0.000001\t\n12.480003\t12.480003\tGlut");
		assertThat(read(LabelTrack.write(MARKS))).isEqualTo(MARKS);
	}

	@Test
	void readsWhatOthersWrite() throws Exception {
		assertThat(read("\uFEFF12.5\t13.25\tSwell\r\n\\\t100.0\t200.0\r\n\r\n14,75\t14,75\r\n16\t16\ta\tb")).containsExactly(new Mark(12_500_000, "Swell"),
				new Mark(14_750_000, ""), new Mark(16_000_000, "a\tb"));
		assertThat(read("0.0000005\t1\tx")).containsExactly(new Mark(1, "x"));
		assertThat(read("")).isEmpty();
	}

	@ParameterizedTest
	@ValueSource(strings = { "Swell", "1.5 2.5 Swell", "-1.0\t2.0\tx", "1.5\tx", "1:02.5\t1:02.5\tx", "NaN\t1\tx" })
	void namesTheLineThatIsWrong(String line) {
		assertThatThrownBy(() -> read("1.0\t1.0\tfine\n" + line)).isInstanceOf(MarksException.class).hasMessageContaining("Line 2");
	}

	@Test
	void refusesWhatWouldTearTheTable() {
		assertThatThrownBy(() -> LabelTrack.write(List.of(new Mark(5, "a\tb")))).isInstanceOf(TimecodeException.class).hasMessageContaining("5 us");
		assertThatThrownBy(() -> LabelTrack.read(new byte[] { (byte) 0xC3, 0x28 })).isInstanceOf(MarksException.class).hasMessageContaining("UTF-8");
	}

	@ParameterizedTest
	@ValueSource(ints = { 8_000, 44_100, 48_000, 96_000 })
	void cuePointsBringMarksBackToTheMicrosecond(int sampleRate) {
		assertThat(WavMarks.fromCues(WavMarks.toCues(MARKS, sampleRate), sampleRate)).isEqualTo(MARKS);
	}

	@Test
	void aCuePointThatWasMovedIsBelieved() {
		CuePoint cue = WavMarks.toCues(List.of(new Mark(1_000_010, "Swell")), 48_000).get(0);
		assertThat(cue).isEqualTo(new CuePoint(48_000, "Swell", "1.000010 s"));
		assertThat(WavMarks.fromCues(List.of(new CuePoint(48_001, "Swell", cue.note())), 48_000)).containsExactly(new Mark(1_000_021, "Swell"));
		assertThat(WavMarks.fromCues(List.of(new CuePoint(24_000, "Plain")), 48_000)).containsExactly(new Mark(500_000, "Plain"));
	}
}
