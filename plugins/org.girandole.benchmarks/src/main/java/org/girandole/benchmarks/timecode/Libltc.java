package org.girandole.benchmarks.timecode;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The small program over libltc that the tests use too, compiled with -O2. */
final class Libltc {
	private final Path program;
	private final Path folder;

	Libltc(Path source, Path folder) throws IOException, InterruptedException {
		this.folder = folder;
		this.program = folder.resolve("ltc_counterpart");
		run("gcc", "-O2", "-o", program, source, "-lltc", "-lm");
	}

	/** Nanoseconds of processor time a sample. */
	double encode(int sampleRate, int seconds, int repeats) throws IOException, InterruptedException {
		return Double.parseDouble(run(program, "bench-encode", "25", sampleRate, seconds, repeats).strip());
	}

	/** Nanoseconds of processor time a sample; {@code format} is u8 or f32. */
	double decode(String format, Path file, int sampleRate, int repeats) throws IOException, InterruptedException {
		return Double.parseDouble(run(program, "bench-decode", format, file, sampleRate, 25, repeats).split(" ")[0]);
	}

	/** A label and the sample at which libltc says its frame begins. */
	record Frame(String label, long sample) {
	}

	List<Frame> frames(float[] samples, int sampleRate) throws IOException, InterruptedException {
		List<Frame> frames = new ArrayList<>();
		for (String line : run(program, "decode", "f32", raw(samples, "decode.f32"), sampleRate, 25).split("\n")) {
			String[] words = line.split(" ");
			if (words.length > 3) {
				frames.add(new Frame(words[0], Long.parseLong(words[3])));
			}
		}
		return frames;
	}

	Path raw(float[] samples, String name) throws IOException {
		ByteBuffer bytes = ByteBuffer.allocate(4 * samples.length).order(ByteOrder.nativeOrder());
		bytes.asFloatBuffer().put(samples);
		return Files.write(folder.resolve(name), bytes.array());
	}

	Path raw8(float[] samples, String name) throws IOException {
		byte[] bytes = new byte[samples.length];
		for (int i = 0; i < samples.length; i++) {
			bytes[i] = (byte) Math.max(0, Math.min(255, Math.round(samples[i] * 127) + 128));
		}
		return Files.write(folder.resolve(name), bytes);
	}

	private String run(Object... command) throws IOException, InterruptedException {
		List<String> words = new ArrayList<>();
		for (Object word : command) {
			words.add(word.toString());
		}
		Path out = folder.resolve("out.txt");
		Process process = new ProcessBuilder(words).redirectOutput(out.toFile()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
		if (process.waitFor() != 0) {
			throw new IOException(words + " failed");
		}
		return Files.readString(out, StandardCharsets.US_ASCII);
	}
}
