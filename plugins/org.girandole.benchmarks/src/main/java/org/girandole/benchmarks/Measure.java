package org.girandole.benchmarks;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/** Runs the program as whole processes and writes the times as a table. */
public final class Measure {
    private static final int RUNS = 5;
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
        time(List.of(new Task("--help", 0, List.of("-jar", jar.toString(), "--help"))));
        for (Path show : shows) {
            time(List.of(new Task("check " + show.getFileName(), 1, List.of("-jar", jar.toString(), "check", show.toString()))));
        }
        List<String> ratios = new ArrayList<>();
        double last = 0;
        for (int cues : SIZES) {
            Path show = SyntheticShow.write(cues, folder.resolve("big-" + cues + ".show"));
            String path = jar + File.pathSeparator + ownClasses();
            Task parsing = new Task("parse alone, " + cues + " cues", 0,
                    List.of("-Xmx2g", "-cp", path, ParseAlone.class.getName(), show.toString()));
            Task checking = new Task("check, " + cues + " cues", 1, List.of("-Xmx2g", "-jar", jar.toString(), "check", show.toString()));
            List<Double> best = time(List.of(parsing, checking));
            double parse = best.get(0);
            double check = best.get(1);
            ratios.add(cues + " cues: check takes " + number(check / parse) + " times as long as parsing alone"
                    + (last == 0 ? "" : ", and " + number(check / last) + " times as long as the size before"));
            last = check;
        }
        report.append('\n');
        ratios.forEach(line -> report.append("- ").append(line).append('\n'));
    }

    /** Best times of tasks that are compared: they run in turn, so that whatever else slows the machine slows them all. */
    private List<Double> time(List<Task> tasks) throws IOException, InterruptedException {
        Map<Task, List<Double>> all = new LinkedHashMap<>();
        for (int i = 0; i < RUNS; i++) {
            for (Task task : tasks) {
                all.computeIfAbsent(task, key -> new ArrayList<>()).add(once(task));
            }
        }
        all.forEach((task, times) -> row(task.what(), number(Collections.min(times)),
                times.stream().map(Measure::number).collect(Collectors.joining(", "))));
        return all.values().stream().map(Collections::min).toList();
    }

    private double once(Task task) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(task.options());
        Path output = folder.resolve("output.txt");
        long start = System.nanoTime();
        int code = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile()).start().waitFor();
        long end = System.nanoTime();
        if (code > task.worstCode()) {
            throw new IllegalStateException(task.what() + " ended with code " + code + "; see " + output);
        }
        return TimeUnit.NANOSECONDS.toMillis(end - start) / 1000.0;
    }

    /**
     * A process to time.
     *
     * @param worstCode the highest exit code that still means that it did its work
     */
    private record Task(String what, int worstCode, List<String> options) {
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
