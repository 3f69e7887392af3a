package org.girandole.benchmarks;

import java.io.IOException;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.girandole.lang.ScriptFormat;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.DiffReport;
import org.girandole.plan.diff.DiffReporter;
import org.girandole.plan.diff.PlanDiff;
import org.girandole.sheets.diff.DiffFormat;

/**
 * Measures what a review asks for: comparing two large plans, giving a large script its form, and how long a difference of text and one of
 * plans are for the same edit. All shows are invented.
 */
public final class ReviewMeasurement {
    private static final int CUES = 10_000;
    /** So many cues make a script of some fifty thousand lines: hardware has lines too. */
    private static final int LONG_SCRIPT_CUES = 42_000;
    private static final int RUNS = 5;

    private final Path folder;

    private ReviewMeasurement(Path folder) {
        this.folder = folder;
    }

    /** Expects a folder for scratch files and the folder of the example. */
    public static void main(String[] args) throws IOException, InterruptedException {
        ReviewMeasurement measurement = new ReviewMeasurement(Files.createDirectories(Path.of(args[0])));
        measurement.speed();
        measurement.sizes(Path.of(args[1]));
    }

    private void speed() throws IOException {
        print("| what | best of %d (s) | all (s) | processor, best (s) |", RUNS);
        print("| --- | ---: | ---: | ---: |");
        String text = SyntheticShow.of(CUES);
        CheckedPlan before = plan(text, "before.show");
        // One effect rises later, one position moves, and every fiftieth line of the score is gone.
        CheckedPlan after = plan(Stream.of(text.replace("rise 2307 ms", "rise 2427 ms").replace("position P7 at (-260 m", "position P7 at (-261 m")
                .split("\n")).filter(line -> !(line.startsWith("    at ") && line.hashCode() % 50 == 0)).collect(Collectors.joining("\n")),
                "after.show");
        time("compare two plans of " + before.plan().cues().size() + " and " + after.plan().cues().size() + " cues and tell it as text", () -> {
            DiffReport report = DiffReporter.report(PlanDiff.between(before, after), before, after);
            StringWriter out = new StringWriter();
            DiffFormat.TEXT.write(report, out);
        });
        String script = SyntheticShow.of(LONG_SCRIPT_CUES);
        String ragged = script.replace("    at ", "  at   ");
        ScriptFormat format = new ScriptFormat();
        long lines = script.lines().count();
        time("format a script of " + lines + " lines that is not in its form", () -> require(format.format(ragged), ragged));
    }

    private static void require(Optional<String> formatted, String ragged) {
        if (formatted.isEmpty() || formatted.get().equals(ragged)) {
            throw new IllegalStateException("the script was not formatted");
        }
    }

    private static void time(String what, Work work) throws IOException {
        List<Double> wall = new ArrayList<>();
        List<Double> processor = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            long start = System.nanoTime();
            work.run();
            wall.add((System.nanoTime() - start) / 1e9);
            processor.add((ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e9);
        }
        print("| %s | %.2f | %s | %.2f |", what, Collections.min(wall),
                wall.stream().map(each -> String.format(Locale.ROOT, "%.2f", each)).collect(Collectors.joining(", ")), Collections.min(processor));
    }

    private CheckedPlan plan(String text, String name) throws IOException {
        Path file = Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
        return plan(file, folder);
    }

    private static CheckedPlan plan(Path file, Path root) {
        CheckedShow show = new ShowPipeline().check(file, root);
        if (show.loaded().hasErrors()) {
            throw new IllegalStateException(file + " cannot be read: " + show.findings().get(0).message());
        }
        return show.plan().orElseThrow();
    }

    private void sizes(Path example) throws IOException, InterruptedException {
        print("");
        print("| edit of the example | lines that git changes | cues that change in more than their line | paragraphs of the plan's difference |");
        print("| --- | ---: | ---: | ---: |");
        size(example, "one lot rises 0.12 s later", "stock.show", "rise 4.62 s", "rise 4.74 s");
        size(example, "a mark a bar later", "harbour.show", "mark Peak  at bar 61", "mark Peak  at bar 62");
        size(example, "a section has another name", "harbour.show", "section Drive ", "section Rush ");
        size(example, "two comment lines at the top", "harbour.show", "", "// one\n// two\n");
        size(example, "a space more before every cue", "harbour.show", "    at ", "     at ");
    }

    private void size(Path example, String what, String file, String from, String to) throws IOException, InterruptedException {
        Path before = copy(example, "size-before");
        Path after = copy(example, "size-after");
        String text = Files.readString(before.resolve(file));
        String edited = from.isEmpty() ? to + text : text.replace(from, to);
        if (edited.equals(text)) {
            throw new IllegalStateException("the example has no '" + from + "' any more");
        }
        Files.writeString(after.resolve(file), edited);
        Process git = new ProcessBuilder("git", "diff", "--no-index", "--numstat", before.resolve(file).toString(), after.resolve(file).toString())
                .redirectErrorStream(true).start();
        String[] counts = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8).split("\t");
        git.waitFor();
        CheckedPlan old = plan(before.resolve("harbour.show"), before);
        CheckedPlan now = plan(after.resolve("harbour.show"), after);
        PlanDiff diff = PlanDiff.between(old, now);
        DiffReport report = DiffReporter.report(diff, old, now);
        print("| %s | %d | %d | %d |", what, Integer.parseInt(counts[0]) + Integer.parseInt(counts[1]), diff.cues().stream().filter(PlanDiff::matters)
                .count(), report.parts().stream().mapToInt(part -> part.entries().size()).sum());
    }

    private Path copy(Path example, String name) throws IOException {
        Path copy = folder.resolve(name);
        try (Stream<Path> walk = Files.walk(example)) {
            for (Path path : walk.filter(each -> each.toString().endsWith(".show")).toList()) {
                Path target = copy.resolve(example.relativize(path).toString());
                Files.createDirectories(target.getParent());
                Files.write(target, Files.readAllBytes(path));
            }
        }
        return copy;
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    /** What is timed. */
    private interface Work {
        void run() throws IOException;
    }
}
