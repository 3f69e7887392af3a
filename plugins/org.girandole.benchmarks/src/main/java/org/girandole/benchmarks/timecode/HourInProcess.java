package org.girandole.benchmarks.timecode;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ChannelFeed.MusicMixFeed;
import org.girandole.timecode.ltc.ChannelFeed.TimecodeFeed;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.ltc.TimecodeWavWriter;
import org.girandole.timecode.reader.LineDemands;
import org.girandole.timecode.reader.LineExpectation;
import org.girandole.timecode.reader.LineJudge;
import org.girandole.timecode.reader.LineReader;
import org.girandole.timecode.reader.LineReport;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.SampleSource;

/** Writes or reads an hour of timecode and says how much memory the process took, as Linux counts it. */
public final class HourInProcess {
	private static final long PREROLL_US = 60_000_000;
	private static final long LENGTH_US = 3_540_000_000L;
	private static final int MUSIC_RATE = 44_100;

	private HourInProcess() {
	}

	static void row(String what, String heap, String action, Path wav, int sampleRate) throws IOException, InterruptedException {
		long begin = System.nanoTime();
		Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + heap, "-cp",
				System.getProperty("java.class.path"), HourInProcess.class.getName(), action, wav.toString(), String.valueOf(sampleRate))
				.redirectError(ProcessBuilder.Redirect.INHERIT).start();
		String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
		if (process.waitFor() != 0) {
			throw new IOException(what + " failed");
		}
		TimecodeMeasurement.print("| %s | %s | %s | %.0f |", what, heap, out, (System.nanoTime() - begin) / 1e9);
	}

	public static void main(String[] args) throws IOException {
		Path wav = Path.of(args[1]);
		if (args[0].equals("write")) {
			TimecodeLine line = new TimecodeLine(FrameRate.FPS_25, Timecode.parse("10:00:00:00", FrameRate.FPS_25), PREROLL_US);
			TimecodeFile file = TimecodeFile.timecodeAlone(line, LENGTH_US, 0, Integer.parseInt(args[2]), SampleDepth.PCM_24).withChannels(new MusicMixFeed(),
					new TimecodeFeed());
			try (OutputStream out = Files.newOutputStream(wav)) {
				TimecodeWavWriter.write(out, file, Optional.of(new Tone()));
			}
		} else {
			LineReport report = LineReader.read(wav, (done, of) -> {
			});
			int good = report.timecodeChannel().orElseThrow().timecode().orElseThrow().goodFrames();
			LineJudge.judge(report, LineExpectation.none(), LineDemands.usual());
			if (good != 90_000) {
				throw new IllegalStateException(good + " frames");
			}
		}
		System.out.println(resident());
	}

	private static String resident() throws IOException {
		for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
			if (line.startsWith("VmHWM:")) {
				return Long.parseLong(line.replaceAll("\\D", "")) / 1024 + " MiB";
			}
		}
		return "unknown";
	}

	/** Two channels of a tone that wanders, for music. */
	private static final class Tone implements SampleSource {
		private long at;

		@Override
		public int sampleRate() {
			return MUSIC_RATE;
		}

		@Override
		public int channels() {
			return 2;
		}

		@Override
		public long frames() {
			return LENGTH_US / 1_000_000 * MUSIC_RATE;
		}

		@Override
		public int read(float[] interleaved, int offset, int frames) {
			int count = (int) Math.min(frames, frames() - at);
			if (count <= 0) {
				return -1;
			}
			for (int i = 0; i < count; i++) {
				float saw = ((at + i) * (100 + (at >> 16 & 63)) % MUSIC_RATE) / (float) MUSIC_RATE - 0.5f;
				interleaved[offset + 2 * i] = saw * 0.5f;
				interleaved[offset + 2 * i + 1] = -saw * 0.3f;
			}
			at += count;
			return count;
		}

		@Override
		public void close() {
			// Nothing is open.
		}
	}
}
