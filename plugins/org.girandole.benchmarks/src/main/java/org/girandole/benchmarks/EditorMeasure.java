package org.girandole.benchmarks;

import com.google.inject.Injector;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import org.eclipse.emf.common.util.URI;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.ShowStandaloneSetup;

/** How long an editor waits on a show of 10,000 cues: prints the table of docs/performance-editor.md. */
public final class EditorMeasure {
    private static final int CUES = 10_000;
    private static final int WARM_PARSES = 8;
    /** A session lasts hours; the compiler of the virtual machine is busy for its first minute. */
    private static final int WARM_PRESSES = 60;
    private static final int PRESSES = 100;
    /** Full parses between so many key presses: what slows the machine slows both. The next key press pays for their garbage and is not counted. */
    private static final int PRESSES_A_BLOCK = 20;
    private static final int PARSES_A_BLOCK = 4;
    /** A line as somebody types it, and how often; the first time is not counted. */
    private static final String TYPED = "    at Start + 301 beats  P3  Peony7";
    private static final int TYPED_LINES = 6;
    private static final double MEDIAN = 0.5;
    private static final double P95 = 0.95;

    private EditorMeasure() {
    }

    /** Expects a folder to write the show into, and perhaps a number of key presses. */
    public static void main(String[] args) throws IOException, InterruptedException, ExecutionException {
        Path folder = Files.createDirectories(Path.of(args[0]).toAbsolutePath().normalize());
        Path file = SyntheticShow.write(CUES, folder.resolve("big.show"));
        String text = Files.readString(file);
        List<Double> parses = new ArrayList<>();
        EditorSession session = new EditorSession();
        String uri = file.toUri().toString();
        session.open(uri, text);
        Parser parser = new Parser(file);
        for (int i = 0; i < WARM_PARSES; i++) {
            parser.millis();
        }
        int line = (int) text.substring(0, text.indexOf("Start + 300 beats")).lines().count() - 1;
        int column = text.lines().skip(line).findFirst().orElseThrow().indexOf("300");
        int version = 1;
        List<Double> early = new ArrayList<>();
        List<Double> findings = new ArrayList<>();
        List<Double> completions = new ArrayList<>();
        int presses = args.length > 1 ? Integer.parseInt(args[1]) : PRESSES;
        for (int i = 0; findings.size() < presses; i++) {
            Range digit = new Range(new Position(line, column + 2), new Position(line, column + 3));
            EditorSession.Waited waited = session.press(uri, ++version, digit, Integer.toString((i + 1) % 10), new Position(line, column + 10));
            boolean afterParses = i % PRESSES_A_BLOCK == 0;
            if (i < WARM_PRESSES) {
                early.add(waited.findings());
            } else if (!afterParses) {
                completions.add(waited.answer());
                findings.add(waited.findings());
            }
            if (i >= WARM_PRESSES && (i + 1) % PRESSES_A_BLOCK == 0) {
                for (int k = 0; k < PARSES_A_BLOCK; k++) {
                    parses.add(parser.millis());
                }
            }
        }
        List<Double> typed = new ArrayList<>();
        List<Double> parsesBetween = new ArrayList<>();
        for (int k = 0; k < TYPED_LINES; k++) {
            session.press(uri, ++version, new Range(new Position(line, 0), new Position(line, 0)), "\n", new Position(line, 0));
            for (int i = 0; i < TYPED.length(); i++) {
                Position here = new Position(line, i);
                double waited = session.press(uri, ++version, new Range(here, here), TYPED.substring(i, i + 1), new Position(line, i + 1)).findings();
                if (k > 0) {
                    typed.add(waited);
                }
            }
            for (int i = 0; i < PARSES_A_BLOCK; i++) {
                parsesBetween.add(parser.millis());
            }
        }
        double parse = at(parses, MEDIAN);
        double between = at(parsesBetween, MEDIAN);
        System.out.printf(Locale.ROOT, "key press to fresh findings, the first %d after opening: median %.0f ms, p95 %.0f ms%n", early.size(),
                at(early, MEDIAN), at(early, P95));
        System.out.printf(Locale.ROOT, "key press to completion: median %.0f ms, p95 %.0f ms%n", at(completions, MEDIAN), at(completions, P95));
        System.out.printf(Locale.ROOT, "key press in a cue to fresh findings, the next %d: median %.0f ms, p95 %.0f ms; in full parses (median of %d: %.0f ms): "
                + "median %.2f, p95 %.2f%n", findings.size(), at(findings, MEDIAN), at(findings, P95), parses.size(), parse,
                at(findings, MEDIAN) / parse, at(findings, P95) / parse);
        System.out.printf(Locale.ROOT, "the same, letter by letter of new cue lines, which cannot be read before they are whole, %d of them after a first line: "
                + "median %.0f ms, p95 %.0f ms; in full parses (median of %d: %.0f ms): median %.2f, p95 %.2f%n", typed.size(), at(typed, MEDIAN),
                at(typed, P95), parsesBetween.size(), between, at(typed, MEDIAN) / between, at(typed, P95) / between);
        session.end();
        System.exit(0);
    }

    /** The parser alone, without a server. */
    private static final class Parser {
        private final Injector language = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration();
        private final URI file;

        Parser(Path file) {
            this.file = URI.createFileURI(file.toString());
        }

        /** How long one full parse takes. */
        double millis() {
            long begun = System.nanoTime();
            language.getInstance(XtextResourceSet.class).getResource(file, true);
            return EditorSession.millis(begun);
        }
    }

    private static double at(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(Math.ceil(share * sorted.size())) - 1));
    }
}
