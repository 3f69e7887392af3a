package org.girandole.benchmarks;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** Runs the program as whole processes and writes the times as a table. */
public final class Measure {
    private static final int RUNS = 3;
    private static final int[] SIZES = {1_000, 10_000, 50_000};

    private final Path jar;
    private final Path folder;
    private final StringBuilder report = new StringBuilder();

    private Measure(Path jar, Path folder) {
        this.jar = jar;
        this.folder = folder;
    }

    /** Expects the runnable jar, a folder for scratch files, and scripts of real shows. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(args[1]));
        Measure measure = new Measure(Path.of(args[0]), folder);
        measure.run(Arrays.stream(args).skip(2).map(Path::of).toList());
        System.out.print(measure.report);
    }

    private void run(List<Path> shows) throws IOException, InterruptedException {
        row("what", "best of " + RUNS + " (s)", "all (s)");
        row("---", "---:", "---:");
        time("--help", 0, List.of("-jar", jar.toString(), "--help"));
        for (Path show : shows) {
            time("check " + show.getFileName(), 1, List.of("-jar", jar.toString(), "check", show.toString()));
        }
        List<String> ratios = new ArrayList<>();
        double last = 0;
        for (int cues : SIZES) {
            Path show = SyntheticShow.write(cues, folder.resolve("big-" + cues + ".show"));
            String path = jar + File.pathSeparator + ownClasses();
            double parse = time("parse alone, " + cues + " cues", 0,
                    List.of("-Xmx2g", "-cp", path, ParseAlone.class.getName(), show.toString()));
            double check = time("check, " + cues + " cues", 1, List.of("-Xmx2g", "-jar", jar.toString(), "check", show.toString()));
            ratios.add(cues + " cues: check takes " + number(check / parse) + " times as long as parsing alone"
                    + (last == 0 ? "" : ", and " + number(check / last) + " times as long as the size before"));
            last = check;
        }
        report.append('\n');
        ratios.forEach(line -> report.append("- ").append(line).append('\n'));
    }

    private double time(String what, int worstCode, List<String> options) throws IOException, InterruptedException {
        double best = Double.MAX_VALUE;
        List<String> all = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            double seconds = once(what, worstCode, options);
            best = Math.min(best, seconds);
            all.add(number(seconds));
        }
        row(what, number(best), String.join(", ", all));
        return best;
    }

    private double once(String what, int worstCode, List<String> options) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        Path output = folder.resolve("output.txt");
        long start = System.nanoTime();
        int code = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile()).start().waitFor();
        long end = System.nanoTime();
        if (code > worstCode) {
            throw new IllegalStateException(what + " ended with code " + code + "; see " + output);
        }
        return TimeUnit.NANOSECONDS.toMillis(end - start) / 1000.0;
    }

    private static String ownClasses() {
        return Path.of(Measure.class.getProtectionDomain().getCodeSource().getLocation().getPath()).toString();
    }

    private void row(String... cells) {
        report.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
