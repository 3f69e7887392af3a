package org.girandole.benchmarks.timecode;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.ltc.LtcSignal;
import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.reader.LtcDecoder;
import org.girandole.timecode.reader.LtcFrame;

/**
 * Writing and reading of timecode beside libltc, in one run: speed in nanoseconds of processor time a sample, the frames that each reads right
 * through white noise, and the memory that an hour needs. Arguments: the C source of the program over libltc, and a folder to work in.
 */
public final class TimecodeMeasurement {
	private static final FrameRate RATE = FrameRate.FPS_25;
	private static final int SAMPLE_RATE = 48_000;
	private static final int PER_FRAME = 1920;
	private static final Timecode START = Timecode.parse("10:00:00:00", RATE);
	private static final int SPEED_SECONDS = 600;
	private static final int REPEATS = 15;
	private static final int THEIR_REPEATS = 5;
	private static final int NOISE_FRAMES = 1500;
	private static final double[] SNR_DB = { 20, 15, 14, 13, 12, 11, 10, 9, 8, 6, 3, 0, -3, -4, -5, -6 };
	private static final int SEEDS = 3;

	private TimecodeMeasurement() {
	}

	public static void main(String[] args) throws IOException, InterruptedException {
		Path folder = Path.of(args[1]);
		Files.createDirectories(folder);
		Libltc libltc = new Libltc(Path.of(args[0]), folder);
		speed(libltc);
		noise(libltc);
		memory(folder);
	}

	private static void speed(Libltc libltc) throws IOException, InterruptedException {
		print("| at 48 kHz, 25 fps, ten minutes | ours ns/sample | libltc ns/sample | ratio |");
		print("| --- | --- | --- | --- |");
		row("encode (ours to float, libltc to 8 bit)", encode(), libltc.encode(SAMPLE_RATE, SPEED_SECONDS, THEIR_REPEATS));
		float[] samples = signal(SPEED_SECONDS * 25);
		double theirs = Math.min(libltc.decode("u8", libltc.raw8(samples, "speed.u8"), SAMPLE_RATE, THEIR_REPEATS),
				libltc.decode("f32", libltc.raw(samples, "speed.f32"), SAMPLE_RATE, THEIR_REPEATS));
		row("decode, clean (ours from float, libltc from the faster of 8 bit and float)", decode(samples), theirs);
		float[] noisy = noisy(samples, 20, 1);
		double theirsNoisy = Math.min(libltc.decode("u8", libltc.raw8(noisy, "speed.u8"), SAMPLE_RATE, THEIR_REPEATS),
				libltc.decode("f32", libltc.raw(noisy, "speed.f32"), SAMPLE_RATE, THEIR_REPEATS));
		row("decode, noise at 20 dB", decode(noisy), theirsNoisy);
		print("");
	}

	private static void row(String what, double ours, double theirs) {
		print("| %s | %.2f | %.2f | %.2f |", what, ours, theirs, theirs / ours);
	}

	private static double encode() {
		float[] block = new float[4096];
		double best = Double.MAX_VALUE;
		for (int repeat = 0; repeat < REPEATS; repeat++) {
			long begin = processorTime();
			LtcSignal signal = new LtcSignal(RATE, SAMPLE_RATE, -3, frame -> LtcWord.of(START.plusFrames(frame), 0), SPEED_SECONDS * 25L);
			long count = 0;
			int got;
			while ((got = signal.read(block, 0, block.length)) > 0) {
				count += got;
			}
			best = Math.min(best, (processorTime() - begin) / (double) count);
		}
		return best;
	}

	private static double decode(float[] samples) {
		double best = Double.MAX_VALUE;
		for (int repeat = 0; repeat < REPEATS; repeat++) {
			int[] frames = new int[1];
			long begin = processorTime();
			LtcDecoder decoder = new LtcDecoder(SAMPLE_RATE, frame -> frames[0]++);
			for (int at = 0; at < samples.length; at += 4096) {
				decoder.write(samples, at, Math.min(4096, samples.length - at), 1);
			}
			decoder.finish();
			best = Math.min(best, (processorTime() - begin) / (double) samples.length);
			if (frames[0] != SPEED_SECONDS * 25) {
				throw new IllegalStateException(frames[0] + " frames");
			}
		}
		return best;
	}

	private static void noise(Libltc libltc) throws IOException, InterruptedException {
		print("| white noise, signal to noise in dB | ours right | ours called good but wrong | libltc right | libltc wrong |");
		print("| --- | --- | --- | --- | --- |");
		float[] samples = signal(NOISE_FRAMES);
		for (double snr : SNR_DB) {
			int[] sums = new int[4];
			for (int seed = 1; seed <= SEEDS; seed++) {
				float[] noisy = noisy(samples, snr, seed);
				List<LtcFrame> frames = new ArrayList<>();
				LtcDecoder decoder = new LtcDecoder(SAMPLE_RATE, frames::add);
				decoder.write(noisy, 0, noisy.length, 1);
				decoder.finish();
				for (LtcFrame frame : frames) {
					if (frame.quality().isGood()) {
						sums[frame.word().digits().equals(label(frame.begin())) ? 0 : 1]++;
					}
				}
				for (Libltc.Frame frame : libltc.frames(noisy, SAMPLE_RATE)) {
					sums[frame.label().equals(label(frame.sample())) ? 2 : 3]++;
				}
			}
			double all = (double) SEEDS * NOISE_FRAMES;
			print("| %.0f | %.1f %% | %d | %.1f %% | %d |", snr, 100 * sums[0] / all, sums[1], 100 * sums[2] / all, sums[3]);
		}
		print("");
	}

	private static String label(double sample) {
		return START.plusFrames(Math.round(sample / PER_FRAME)).toString();
	}

	private static void memory(Path folder) throws IOException, InterruptedException {
		print("| an hour, in a process of its own | largest heap allowed | resident at most | seconds |");
		print("| --- | --- | --- | --- |");
		Path wav = folder.resolve("hour.wav");
		HourInProcess.row("write 96 kHz, 24 bit, music from 44.1 kHz beside the timecode", "32m", "write", wav, 96_000);
		HourInProcess.row("write 48 kHz, 24 bit, the same", "32m", "write", wav, 48_000);
		HourInProcess.row("read that recording, both channels, with report", "64m", "read", wav, 48_000);
	}

	private static float[] signal(int frames) {
		LtcSignal signal = new LtcSignal(RATE, SAMPLE_RATE, -6, frame -> LtcWord.of(START.plusFrames(frame), 0), frames);
		float[] samples = new float[(int) LtcSignal.samples(RATE, SAMPLE_RATE, frames)];
		int at = 0;
		int got;
		while ((got = signal.read(samples, at, samples.length - at)) > 0) {
			at += got;
		}
		return samples;
	}

	private static float[] noisy(float[] samples, double snrDb, long seed) {
		double power = 0;
		for (float sample : samples) {
			power += sample * (double) sample;
		}
		double deviation = Math.sqrt(power / samples.length / Math.pow(10, snrDb / 10));
		Random random = new Random(seed);
		float[] noisy = new float[samples.length];
		for (int i = 0; i < samples.length; i++) {
			noisy[i] = (float) (samples[i] + deviation * random.nextGaussian());
		}
		return noisy;
	}

	private static long processorTime() {
		return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
	}

	static void print(String format, Object... values) {
		System.out.println(String.format(Locale.ROOT, format, values));
	}
}
