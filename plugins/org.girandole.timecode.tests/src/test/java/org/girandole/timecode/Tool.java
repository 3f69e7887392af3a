package org.girandole.timecode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.Assumptions;

/**
 * Programs of other makers, held against ours. Where one is missing the test is skipped and says so; in continuous integration (environment
 * variable CI) it fails instead, so that a counterpart cannot vanish unnoticed.
 */
public final class Tool {
	private static Path counterpart;

	private Tool() {
	}

	public static void require(String program) {
		boolean there = Stream.of(System.getenv("PATH").split(":")).anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
		refuseInIntegration(there, program + " is not installed");
		Assumptions.assumeTrue(there, () -> program + " is not installed: the check against it is SKIPPED");
	}

	private static void refuseInIntegration(boolean there, String what) {
		if (!there && System.getenv("CI") != null) {
			throw new AssertionError(what + "; continuous integration needs it (see build/apt-packages.txt)");
		}
	}

	/** The output of a program that must end well. */
	public static String run(Path folder, Object... command) throws IOException, InterruptedException {
		List<String> words = new ArrayList<>();
		for (Object word : command) {
			words.add(word.toString());
		}
		Path out = Files.createTempFile("tool", ".out");
		Path err = Files.createTempFile("tool", ".err");
		try {
			Process process = new ProcessBuilder(words).directory(folder.toFile()).redirectOutput(out.toFile()).redirectError(err.toFile()).start();
			int code = process.waitFor();
			assertThat(code).as("%s: %s", words, Files.readString(err, StandardCharsets.ISO_8859_1)).isZero();
			return Files.readString(out, StandardCharsets.ISO_8859_1);
		} finally {
			Files.delete(out);
			Files.delete(err);
		}
	}

	/** The program over libltc, compiled once for all tests. */
	public static synchronized Path libltc() throws IOException, InterruptedException {
		if (counterpart == null) {
			require("gcc");
			boolean header = Files.exists(Path.of("/usr/include/ltc.h"));
			refuseInIntegration(header, "libltc-dev is not installed");
			Assumptions.assumeTrue(header, "libltc-dev is not installed: the check against libltc is SKIPPED");
			Path folder = Files.createTempDirectory("libltc");
			folder.toFile().deleteOnExit();
			Path source = folder.resolve("ltc_counterpart.c");
			try (InputStream in = Tool.class.getResourceAsStream("ltc_counterpart.c")) {
				Files.copy(in, source);
			}
			Path program = folder.resolve("ltc_counterpart");
			run(folder, "gcc", "-O2", "-o", program, source, "-lltc", "-lm");
			source.toFile().deleteOnExit();
			program.toFile().deleteOnExit();
			counterpart = program;
		}
		return counterpart;
	}
}
