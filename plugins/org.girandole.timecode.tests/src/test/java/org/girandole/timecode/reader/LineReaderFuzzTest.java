package org.girandole.timecode.reader;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.wav.BytesChannel;
import org.girandole.timecode.wav.CuePoint;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.WavException;
import org.girandole.timecode.wav.WavReader;
import org.girandole.timecode.wav.WavWriter;
import org.junit.jupiter.api.Test;

/**
 * Throws damaged files at the reader: whatever the bytes, it ends, and ends with a report or a named refusal. As many files as the system property
 * {@code girandole.fuzz} says, 100 000 unless it says otherwise; every file follows from its number.
 */
class LineReaderFuzzTest {
	private static final int FILES = Integer.getInteger("girandole.fuzz", 100_000);
	/** Header bytes are where most damage is done. */
	private static final int HEAD = 80;

	@Test
	void everyDamagedFileEndsInAReportOrANamedRefusal() throws Exception {
		List<byte[]> seeds = seeds();
		int reported = 0;
		int refused = 0;
		int withTimecode = 0;
		for (int i = 0; i < FILES; i++) {
			byte[] bytes = damaged(seeds.get(i % seeds.size()), new Random(i));
			try (WavReader reader = WavReader.open(new BytesChannel(bytes))) {
				assertThat(reader.cues()).hasSizeLessThan(bytes.length);
				LineReport report = LineReader.read(reader, (done, of) -> {
				});
				LineVerdict verdict = LineJudge.judge(report, LineExpectation.none(), LineDemands.usual());
				assertThat(verdict.reasons()).as("file %d", i).isNotEmpty();
				reported++;
				withTimecode += report.timecodeChannel().isPresent() ? 1 : 0;
			} catch (WavException e) {
				assertThat(e.getMessage()).as("file %d", i).isNotBlank();
				refused++;
			} catch (RuntimeException | Error e) {
				throw new AssertionError("file " + i, e);
			}
		}
		assertThat(reported + refused).isEqualTo(FILES);
		assertThat(reported).as("the damage is not so great that nothing is left to read").isGreaterThan(FILES / 10);
		assertThat(refused).isPositive();
		assertThat(withTimecode).isPositive();
	}

	private static List<byte[]> seeds() throws IOException {
		float[] line = Line.clean(FrameRate.FPS_25, 8_000, "10:00:00:00", 5);
		List<byte[]> seeds = new ArrayList<>();
		seeds.add(wav(line, SampleDepth.PCM_16));
		seeds.add(wav(line, SampleDepth.PCM_24, new CuePoint(100, "Swell", "a note"), new CuePoint(200, "Break")));
		seeds.add(floats(line));
		seeds.add(rf64(wav(line, SampleDepth.PCM_16)));
		return seeds;
	}

	private static byte[] wav(float[] line, SampleDepth depth, CuePoint... cues) throws IOException {
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		try (WavWriter writer = new WavWriter(out, 8_000, 1, depth, line.length, List.of(cues))) {
			writer.write(line, 0, line.length);
		}
		return out.toByteArray();
	}

	private static byte[] floats(float[] line) {
		ByteBuffer bytes = ByteBuffer.allocate(44 + 4 * line.length).order(ByteOrder.LITTLE_ENDIAN);
		bytes.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 4 * line.length).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16).putShort((short) 3).putShort((short) 1).putInt(8_000)
				.putInt(32_000).putShort((short) 4).putShort((short) 32).put("data".getBytes(StandardCharsets.US_ASCII)).putInt(4 * line.length);
		for (float sample : line) {
			bytes.putFloat(sample);
		}
		return bytes.array();
	}

	private static byte[] rf64(byte[] riff) {
		ByteBuffer bytes = ByteBuffer.allocate(riff.length + 36).order(ByteOrder.LITTLE_ENDIAN);
		bytes.put("RF64".getBytes(StandardCharsets.US_ASCII)).putInt(-1).put("WAVEds64".getBytes(StandardCharsets.US_ASCII)).putInt(28).putLong(riff.length + 28L).putLong(riff.length - 44L).putLong(0).putInt(0);
		bytes.put(riff, 12, riff.length - 12);
		bytes.putInt(36 + 40, -1);
		return bytes.array();
	}

	private static byte[] damaged(byte[] seed, Random random) {
		byte[] bytes = seed.clone();
		int places = 1 + random.nextInt(6);
		for (int i = 0; i < places; i++) {
			int at = random.nextInt(random.nextInt(4) == 0 ? bytes.length : HEAD);
			switch (random.nextInt(4)) {
				case 0 -> bytes[at] ^= 1 << random.nextInt(8);
				case 1 -> bytes[at] = (byte) random.nextInt(256);
				case 2 -> {
					int value = new int[] { 0, 1, -1, Integer.MAX_VALUE, Integer.MIN_VALUE, bytes.length }[random.nextInt(6)];
					ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(Math.min(at, bytes.length - 4), value);
				}
				default -> System.arraycopy(seed, random.nextInt(bytes.length - 32), bytes, Math.min(at, bytes.length - 32), random.nextInt(32));
			}
		}
		return random.nextInt(5) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
	}
}
