package org.girandole.benchmarks.music;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.TrackAnalyser;
import org.girandole.music.analysis.TrackAnalysis;
import org.girandole.music.synth.HarbourTides;
import org.girandole.music.synth.Piece;
import org.girandole.music.synth.PieceRenderer;

/**
 * Measures all of the listening and prints the tables of docs/performance-music.md.
 *
 * <p>Arguments: a folder for files, then the parts to run (all if none): finders, aligner, decoders, loudness, example, odd, speed.
 */
public final class MusicEvaluation {
    /** Not the seed of the pieces the finders were developed on, which was 1. */
    private static final long SEED = 2027;
    private static final int PIECES = 42;

    private final Path folder;
    private final PrintStream out;

    private MusicEvaluation(Path folder, PrintStream out) {
        this.folder = folder;
        this.out = out;
    }

    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args.length > 0 ? args[0] : "target/music"));
        List<String> parts = args.length > 1 ? Arrays.asList(args).subList(1, args.length)
                : List.of("finders", "aligner", "decoders", "loudness", "example", "odd", "speed");
        MusicEvaluation evaluation = new MusicEvaluation(folder, System.out);
        for (String part : parts) {
            evaluation.run(part);
        }
    }

    private void run(String part) throws IOException {
        line("");
        line("## %s", part);
        line("");
        switch (part) {
            case "finders" -> new FinderEvaluation(folder, out, SEED, PIECES).evaluate();
            case "aligner" -> new AlignmentEvaluation(folder, out).evaluate(SEED + 1, 14);
            case "decoders" -> new ReadingEvaluation(folder, out).decoders(GeneratedPieces.set(SEED, 1).get(0));
            case "loudness" -> new ReadingEvaluation(folder, out).loudness(GeneratedPieces.set(SEED, 14));
            case "example" -> example();
            case "odd" -> odd();
            case "speed" -> speed();
            default -> throw new IllegalArgumentException("no part '" + part + "'");
        }
    }

    private void line(String pattern, Object... values) {
        out.println(String.format(Locale.ROOT, pattern, values));
    }

    private void example() throws IOException {
        Piece piece = HarbourTides.compose();
        Path wav = folder.resolve("harbour-tides.wav");
        PieceRenderer.writeWav(piece, wav);
        TrackAnalysis track = TrackAnalyser.analyse(wav);
        TempoMap found = track.tempo().orElseThrow();
        long worst = 0;
        for (int bar = 1; bar <= piece.bars(); bar++) {
            worst = Math.max(worst, Math.abs(found.timeUsOfBar(bar, Rational.ONE) - piece.map().timeUsOfBar(bar, Rational.ONE)));
        }
        line("True map: %s", piece.map().events());
        line("Found: %s, beats %.2f, bars %.2f; worst bar line %.1f ms.", found.events(), track.beatConfidence(), track.barConfidence(), worst / 1e3);
    }

    private void odd() throws IOException {
        Path noise = folder.resolve("noise.wav");
        Tools.run("sox", "-V1", "-R", "-n", "-r", "44100", "-c", "2", noise.toString(), "synth", "40", "whitenoise", "vol", "0.3");
        Path silence = folder.resolve("silence.wav");
        Tools.run("sox", "-V1", "-n", "-r", "44100", "-c", "1", silence.toString(), "trim", "0", "20");
        Path tone = folder.resolve("tone.wav");
        Tools.run("sox", "-V1", "-n", "-r", "8000", "-c", "1", tone.toString(), "synth", "20", "sine", "300");
        for (Path file : List.of(noise, silence, tone)) {
            report(file);
        }
        if (Tools.has("espeak-ng")) {
            Path speech = folder.resolve("speech.wav");
            Tools.run("espeak-ng", "-w", speech.toString(), "The tide comes in over the sand, and nobody is standing there. We count the boats"
                    + " along the quay, one after another, and then we wait until the evening grows dark. Somebody asks about the wind,"
                    + " but the wind has turned long ago, and the harbour is quiet.");
            report(speech);
        }
    }

    private void report(Path file) throws IOException {
        TrackAnalysis t = TrackAnalyser.analyse(file);
        line("%s: %d onsets, %d beats with confidence %.2f, bars with confidence %.2f.", file.getFileName(), t.onsets().size(),
                t.beats().size(), t.beatConfidence(), t.barConfidence());
    }

    private void speed() throws IOException {
        Path tides = folder.resolve("harbour-tides.wav");
        PieceRenderer.writeWav(HarbourTides.compose(), tides);
        Path six = folder.resolve("six-minutes.wav");
        Tools.run("sox", "-V1", tides.toString(), tides.toString(), six.toString(), "trim", "0", "360");
        Path hours = folder.resolve("three-hours.flac");
        if (!Files.exists(hours)) {
            Tools.run("ffmpeg", "-v", "error", "-y", "-stream_loop", "43", "-i", tides.toString(), "-t", "10800", hours.toString());
        }
        for (Path file : List.of(six, hours)) {
            System.gc();
            long start = System.nanoTime();
            TrackAnalysis track = TrackAnalyser.analyse(file);
            line("%s: %.0f s of sound in %.1f s, %d beats; heap limit %d MiB.", file.getFileName(), track.facts().lengthUs() / 1e6,
                    (System.nanoTime() - start) / 1e9, track.beats().size(), Runtime.getRuntime().maxMemory() >> 20);
        }
    }
}
