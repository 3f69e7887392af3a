package org.girandole.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.ExecutionException;

/** How long a show of 10,000 cues takes to open: prints a line of docs/performance-editor.md. Each process opens it once. */
public final class OpeningMeasure {
    private static final int CUES = 10_000;
    /** What somebody had open before. */
    private static final int SMALL = 300;
    private static final int LOOKED_AT_MS = 5_000;

    private OpeningMeasure() {
    }

    /** Expects a folder to write shows into, and whether a small show was open before: {@code first} or {@code after-another}. */
    public static void main(String[] args) throws IOException, InterruptedException, ExecutionException {
        Path folder = Files.createDirectories(Path.of(args[0]).toAbsolutePath().normalize());
        boolean after = args[1].equals("after-another");
        Path small = SyntheticShow.write(SMALL, Files.createDirectories(folder.resolve("small")).resolve("small.show"));
        Path big = SyntheticShow.write(CUES, Files.createDirectories(folder.resolve("big")).resolve("big.show"));
        String text = Files.readString(big);
        long begun = System.nanoTime();
        EditorSession session = new EditorSession();
        double started = EditorSession.millis(begun);
        if (after) {
            session.open(small.toUri().toString(), Files.readString(small));
            Thread.sleep(LOOKED_AT_MS);
            started = 0;
        }
        EditorSession.Waited waited = session.open(big.toUri().toString(), text);
        System.out.printf(Locale.ROOT, "opening %s: outline after %.0f ms, findings after %.0f ms%n",
                after ? "in a server in which a small show was open before" : "as the first thing of a new process, start of the server included",
                started + waited.answer(), started + waited.findings());
        session.end();
        System.exit(0);
    }
}
