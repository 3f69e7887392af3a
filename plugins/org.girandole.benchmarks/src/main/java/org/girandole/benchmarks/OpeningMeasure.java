package org.girandole.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.ExecutionException;

/** How long a show of 10,000 cues takes to open: prints a line of docs/performance-editor.md. Each process opens it once. */
public final class OpeningMeasure {
    private static final int CUES = 10_000;
    /** A workbench starts its server as its window opens; to find a script in it takes some seconds. */
    private static final int LOOKED_FOR_MS = 5_000;

    private OpeningMeasure() {
    }

    /** Expects a folder to write shows into, and when the show is opened: {@code first} or {@code running}. */
    public static void main(String[] args) throws IOException, InterruptedException, ExecutionException {
        Path folder = Files.createDirectories(Path.of(args[0]).toAbsolutePath().normalize());
        boolean running = args[1].equals("running");
        Path big = SyntheticShow.write(CUES, folder.resolve("big.show"));
        String text = Files.readString(big);
        long begun = System.nanoTime();
        EditorSession session = new EditorSession();
        double started = EditorSession.millis(begun);
        if (running) {
            Thread.sleep(LOOKED_FOR_MS);
            started = 0;
        }
        EditorSession.Waited waited = session.open(big.toUri().toString(), text);
        System.out.printf(Locale.ROOT, "opening %s: outline after %.0f ms, findings after %.0f ms%n",
                running ? "in a server that has been running for five seconds" : "as the first thing of a new process, start of the server included",
                started + waited.answer(), started + waited.findings());
        session.end();
        System.exit(0);
    }
}
