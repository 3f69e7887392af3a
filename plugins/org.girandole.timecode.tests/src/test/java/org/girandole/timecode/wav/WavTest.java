package org.girandole.timecode.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;

import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WavTest {
	@TempDir
	Path folder;

	private WavReader open(byte[] bytes) throws IOException {
		Path path = folder.resolve("file.wav");
		Files.write(path, bytes);
		return WavReader.open(path);
	}

	private static float[] all(WavReader reader) throws IOException {
		float[] samples = new float[(int) reader.frames() * reader.channels()];
		int at = 0;
		int got;
		while ((got = reader.read(samples, at * reader.channels(), 7)) > 0) {
			at += got;
		}
		return Arrays.copyOf(samples, at * reader.channels());
	}

	private static byte[] write(SampleDepth depth, int channels, float[] samples, CuePoint... cues) throws IOException {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		try (WavWriter writer = new WavWriter(out, 48_000, channels, depth, samples.length / channels, List.of(cues))) {
			writer.write(samples, 0, samples.length / channels);
		}
		return out.toByteArray();
	}

	@ParameterizedTest
	@EnumSource
	void everySampleValueSurvivesARoundTrip(SampleDepth depth) throws Exception {
		int full = 1 << depth.bits() - 1;
		int step = depth == SampleDepth.PCM_16 ? 1 : 251;
		float[] samples = new float[2 * full / step / 2 * 2];
		for (int i = 0; i < samples.length; i++) {
			samples[i] = (i * step - full) / (float) full;
		}
		WavReader reader = open(write(depth, 2, samples));
		assertThat(reader.warnings()).isEmpty();
		assertThat(reader.format()).isEqualTo(new WavFormat(WavFormat.Encoding.INTEGER, 48_000, 2, depth.bits() / 8, depth.bits()));
		assertThat(all(reader)).isEqualTo(samples);
	}

	@Test
	void cutsAndCountsWhatExceedsFullScale() throws Exception {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		try (WavWriter writer = new WavWriter(out, 48_000, 1, SampleDepth.PCM_16, 4, List.of())) {
			writer.write(new float[] { 1.5f, -1.5f, 1, -1 }, 0, 4);
			assertThat(writer.clipped()).isEqualTo(3);
		}
		assertThat(all(open(out.toByteArray()))).containsExactly(32767 / 32768f, -1, 32767 / 32768f, -1);
	}

	// The cue and labl chunks of a file with cue points at 48000 "Verse" and 72000 "Hit!", as written by libsndfile 1.2.0.
	@Test
	void writesCuePointsAsLibsndfileDoes() throws Exception {
		byte[] file = write(SampleDepth.PCM_16, 1, new float[2], new CuePoint(48_000, "Verse"), new CuePoint(72_000, "Hit!"));
		byte[] expected = HexFormat.ofDelimiter(" ").parseHex("63 75 65 20 34 00 00 00 02 00 00 00 01 00 00 00 80 BB 00 00 64 61 74 61 00 00 00 00 "
				+ "00 00 00 00 80 BB 00 00 02 00 00 00 40 19 01 00 64 61 74 61 00 00 00 00 00 00 00 00 40 19 01 00 "
				+ "4C 49 53 54 28 00 00 00 61 64 74 6C 6C 61 62 6C 0A 00 00 00 01 00 00 00 56 65 72 73 65 00 "
				+ "6C 61 62 6C 09 00 00 00 02 00 00 00 48 69 74 21 00 00");
		assertThat(Arrays.copyOfRange(file, 48, file.length)).isEqualTo(expected);
		assertThat(open(file).cues()).containsExactly(new CuePoint(48_000, "Verse"), new CuePoint(72_000, "Hit!"));
	}

	@Test
	void cuePointsSurviveARoundTrip() throws Exception {
		CuePoint[] cues = { new CuePoint(0, ""), new CuePoint(0xFFFF_FFFFL, "Glut, Böller, 花火"), new CuePoint(7, "same"), new CuePoint(7, "same", "with a note") };
		WavReader reader = open(write(SampleDepth.PCM_24, 1, new float[3], cues));
		assertThat(reader.cues()).containsExactly(cues);
		assertThat(reader.warnings()).isEmpty();
		assertThatThrownBy(() -> new CuePoint(-1, "")).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new CuePoint(0x1_0000_0000L, "")).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new CuePoint(1, "a\0b")).isInstanceOf(TimecodeException.class).hasMessageContaining("null");
	}

	@ParameterizedTest
	@EnumSource
	void soxAndLibsndfileReadOurFiles(SampleDepth depth) throws Exception {
		Tool.require("sox");
		Tool.require("sndfile-info");
		for (int channels : new int[] { 1, 2, 3, 5 }) {
			float[] samples = new float[channels * 101];
			for (int i = 0; i < samples.length; i++) {
				samples[i] = (i * 37 % 200 - 100) / 128f;
			}
			Path path = folder.resolve("ours.wav");
			Files.write(path, write(depth, channels, samples, new CuePoint(5, "Odd")));
			Path raw = folder.resolve("raw.f32");
			Tool.run(folder, "sox", path, "-t", "f32", raw);
			ByteBuffer buffer = ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN);
			float[] theirs = new float[samples.length];
			buffer.asFloatBuffer().get(theirs);
			assertThat(buffer.capacity()).isEqualTo(4 * samples.length);
			assertThat(theirs).isEqualTo(samples);
			String info = Tool.run(folder, "sndfile-info", path);
			assertThat(info).containsPattern("Channels *: " + channels + "\n").containsPattern("Frames *: 101\n").containsPattern("Sample Rate *: 48000\n")
					.containsPattern("Bit Width *: " + depth.bits() + "\n").contains("Offset :     5").contains("labl : 1 : Odd");
		}
	}

	@Test
	void weReadWhatSoxWrites() throws Exception {
		Tool.require("sox");
		for (String[] form : new String[][] { { "-e", "unsigned", "-b", "8" }, { "-b", "16" }, { "-b", "24" }, { "-b", "32" },
				{ "-e", "float", "-b", "32" }, { "-e", "float", "-b", "64" } }) {
			Path path = folder.resolve("theirs.wav");
			Tool.run(folder, "sox", "-r", "44100", "-n", form[0], form[1], form[form.length - 2], form[form.length - 1], path, "synth", "0.1", "sine", "1000",
					"vol", "0.5");
			try (WavReader reader = WavReader.open(path)) {
				assertThat(reader.warnings()).isEmpty();
				float[] samples = all(reader);
				assertThat(samples).hasSize(4410);
				for (int i = 0; i < samples.length; i++) {
					assertThat(Math.abs(samples[i] - 0.5 * Math.sin(2 * Math.PI * 1000 * i / 44_100))).as("%s sample %d", List.of(form), i).isLessThan(0.02);
				}
			}
		}
	}

	@Test
	void readsEveryWidthByHandMadeFiles() throws Exception {
		assertThat(all(open(new WavBytes().riff(38).format(1, 1, 8000, 1, 8).text("data").u32(2).raw(0, 192).done()))).containsExactly(-1, 0.5f);
		assertThat(all(open(new WavBytes().riff(44).format(1, 1, 8000, 4, 24).text("data").u32(8).raw(0, 0, 0, 0xC0, 0, 0, 0, 0x40).done())))
				.as("24 bits in 32, left-justified").containsExactly(-0.5f, 0.5f);
		assertThat(all(open(new WavBytes().riff(40).format(1, 1, 8000, 4, 32).text("data").u32(4).raw(0, 0, 0, 0x80).done()))).containsExactly(-1);
		assertThat(all(open(new WavBytes().riff(44).format(3, 2, 8000, 8, 32).text("data").u32(8).f32(0.25f).f32(-2).done()))).containsExactly(0.25f, -2);
		assertThat(all(open(new WavBytes().riff(44).format(3, 1, 8000, 8, 64).text("data").u32(8).f64(0.125).done()))).containsExactly(0.125f);
	}

	@Test
	void numbersThatAreNoneAreSilenceAndAreNamed() throws Exception {
		WavReader reader = open(new WavBytes().riff(52).format(3, 1, 8000, 4, 32).text("data").u32(16).f32(Float.NaN).f32(Float.POSITIVE_INFINITY)
				.f32(Float.NEGATIVE_INFINITY).f32(1).done());
		assertThat(all(reader)).containsExactly(0, 0, 0, 1);
		assertThat(reader.warnings()).singleElement().asString().contains("3 samples are not numbers");
	}

	private WavBytes mono16(long riffSize) {
		return new WavBytes().riff(riffSize).format(1, 1, 8000, 2, 16);
	}

	@Test
	void aTruncatedFileIsReadAsFarAsItGoes() throws Exception {
		WavReader reader = open(mono16(1036).text("data").u32(1000).raw(0, 64, 0, 32, 9).done());
		assertThat(all(reader)).containsExactly(0.5f, 0.25f);
		assertThat(reader.warnings()).anySatisfy(w -> assertThat(w).contains("cut off: 1000 bytes").contains("5 are there").contains("byte 36"))
				.anySatisfy(w -> assertThat(w).contains("last 1 bytes")).anySatisfy(w -> assertThat(w).contains("announces a file of 1044"));
	}

	@Test
	void aRecordingThatWasNeverClosedIsReadToItsEnd() throws Exception {
		for (long size : new long[] { 0, 0xFFFF_FFFFL }) {
			WavReader reader = open(mono16(size).text("data").u32(size).raw(0, 64, 0, 32).done());
			assertThat(all(reader)).containsExactly(0.5f, 0.25f);
			assertThat(reader.warnings()).singleElement().asString().contains("never filled in");
		}
		WavReader empty = open(mono16(48).text("data").u32(0).text("junk").u32(4).u32(0).done());
		assertThat(all(empty)).isEmpty();
		assertThat(empty.warnings()).isEmpty();
	}

	@Test
	void namesOtherFaultsAndReadsOn() throws Exception {
		WavReader noPadding = open(mono16(56).text("junk").u32(3).raw(1, 2, 3).text("data").u32(2).raw(0, 64).done());
		assertThat(all(noPadding)).containsExactly(0.5f);
		assertThat(noPadding.warnings()).anySatisfy(w -> assertThat(w).contains("lacks its padding"));

		WavReader rubbish = open(mono16(0).text("data").u32(2).raw(0, 64).raw(0, 0, 0, 0, 0, 0, 0, 0, 0).done());
		assertThat(all(rubbish)).containsExactly(0.5f);
		assertThat(rubbish.warnings()).singleElement().asString().contains("byte 46").contains("no chunk");

		WavReader blockAlign = open(new WavBytes().riff(40).format(1, 1, 8000, 77, 16).text("data").u32(4).raw(0, 64, 0, 32).done());
		assertThat(blockAlign.format().containerBytes()).isEqualTo(77 / 2 > 8 ? 2 : 0);
		assertThat(all(blockAlign)).containsExactly(0.5f, 0.25f);
		assertThat(blockAlign.warnings()).singleElement().asString().contains("77 bytes for 1 samples of 16 bits");

		WavReader twice = open(mono16(66).format(1, 2, 9000, 4, 16).text("data").u32(2).raw(0, 64).text("data").u32(2).raw(0, 32).done());
		assertThat(all(twice)).containsExactly(0.5f);
		assertThat(twice.sampleRate()).isEqualTo(8000);
		assertThat(twice.warnings()).anySatisfy(w -> assertThat(w).contains("second format")).anySatisfy(w -> assertThat(w).contains("second audio"));
	}

	@Test
	void saysWhyAFileCannotBeRead() {
		assertFails(new byte[0], "0 bytes");
		assertFails(new WavBytes().text("RIFF").u32(4).text("AVI ").done(), "\"AVI \"");
		assertFails(new WavBytes().text("ID3\u0004").u32(4).text("....").done(), "\"ID3?\"");
		assertFails(new WavBytes().text("RIFX").u32(4).text("WAVE").done(), "big-endian");
		assertFails(new WavBytes().riff(4).done(), "no format chunk");
		assertFails(mono16(28).done(), "no data chunk");
		assertFails(new WavBytes().riff(36).format(1, 0, 8000, 2, 16).text("data").u32(0).done(), "0 channels");
		assertFails(new WavBytes().riff(36).format(1, 1, 0, 2, 16).text("data").u32(0).done(), "sample rate of 0 Hz");
		assertFails(new WavBytes().riff(36).format(1, 1, 8000, 2, 0).text("data").u32(0).done(), "0 bits");
		assertFails(new WavBytes().riff(36).format(3, 1, 8000, 2, 16).text("data").u32(0).done(), "float");
		assertFails(new WavBytes().riff(36).format(1, 1, 8000, 8, 64).text("data").u32(0).done(), "64 bits");
		assertFails(new WavBytes().riff(36).format(7, 1, 8000, 1, 8).text("data").u32(0).done(), "mu-law");
		assertFails(new WavBytes().riff(36).format(0x55, 1, 8000, 1, 0).text("data").u32(0).done(), "MPEG audio");
		assertFails(new WavBytes().riff(36).text("fmt ").u32(4).u32(1).text("data").u32(0).done(), "4 bytes; expected at least 16");
	}

	private void assertFails(byte[] bytes, String part) {
		assertThatThrownBy(() -> open(bytes)).isInstanceOf(WavException.class).hasMessageContaining(part);
	}

	// EBU Tech 3306: RF64, 32-bit sizes all ones, the true ones in ds64. libsndfile reads the same numbers.
	@Test
	void largeFilesAreRf64() throws Exception {
		long frames = 1_500_000_000L;
		ByteArrayOutputStream head = new ByteArrayOutputStream();
		WavWriter writer = new WavWriter(head, 96_000, 1, SampleDepth.PCM_24, frames, List.of());
		byte[] expected = new WavBytes().text("RF64").u32(0xFFFF_FFFFL).text("WAVE").text("ds64").u32(28).u64(4 + 36 + 48 + 8 + 3 * frames).u64(3 * frames)
				.u64(frames).u32(0).text("fmt ").u32(40).u16(0xFFFE).u16(1).u32(96_000).u32(288_000).u16(3).u16(24).u16(22).u16(24).u32(4)
				.raw(1, 0, 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71).text("data").u32(0xFFFF_FFFFL).done();
		assertThat(head.toByteArray()).isEqualTo(expected);
		assertThatThrownBy(writer::close).isInstanceOf(IOException.class).hasMessageContaining("Only 0 of the announced");

		Path path = folder.resolve("large.wav");
		try (RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw")) {
			file.write(expected);
			file.setLength(expected.length + 3 * frames);
			file.seek(file.length() - 3);
			file.write(new byte[] { 0, 0, 0x40 });
		}
		try (WavReader reader = WavReader.open(path)) {
			assertThat(reader.frames()).isEqualTo(frames);
			assertThat(reader.warnings()).isEmpty();
			assertThat(reader.read(new float[10], 0, 10)).isEqualTo(10);
		}
		Tool.require("sndfile-info");
		assertThat(Tool.run(folder, "sndfile-info", path)).containsPattern("Frames *: 1500000000\n").contains("RF64");
	}

	@Test
	void theWriterHoldsItselfToItsWord() throws Exception {
		WavWriter writer = new WavWriter(new ByteArrayOutputStream(), 48_000, 1, SampleDepth.PCM_16, 1, List.of());
		assertThatThrownBy(() -> writer.write(new float[2], 0, 2)).isInstanceOf(IllegalStateException.class);
		assertThatThrownBy(() -> new WavWriter(new ByteArrayOutputStream(), 48_000, 0, SampleDepth.PCM_16, 1, List.of()))
				.isInstanceOf(IllegalArgumentException.class).hasMessageContaining("0 channels");
	}
}
