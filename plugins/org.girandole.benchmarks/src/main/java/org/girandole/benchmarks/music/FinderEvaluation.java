package org.girandole.benchmarks.music;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.girandole.benchmarks.music.GeneratedPieces.Known;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.Beat;
import org.girandole.music.analysis.Onset;
import org.girandole.music.analysis.TrackAnalyser;
import org.girandole.music.analysis.TrackAnalysis;

/** Onsets, beats, downbeats and tempo maps on generated pieces, with aubio beside. */
final class FinderEvaluation {
    /** Settings of aubioonset: those that came out best on the pieces the finders were developed on, and the default. */
    private static final List<List<String>> AUBIO_ONSET = List.of(
            List.of(), List.of("-O", "hfc", "-t", "0.01"), List.of("-O", "hfc", "-t", "0.03"), List.of("-O", "hfc", "-t", "0.1"),
            List.of("-O", "hfc", "-t", "0.03", "-B", "1024", "-H", "256"), List.of("-O", "hfc", "-t", "0.03", "-s", "-90"),
            List.of("-O", "mkl", "-t", "0.1"), List.of("-O", "kl", "-t", "0.2"), List.of("-O", "complex", "-t", "0.03"),
            List.of("-O", "specflux", "-t", "0.3"));

    private final Path folder;
    private final PrintStream out;
    private final List<Known> pieces;

    FinderEvaluation(Path folder, PrintStream out, long seed, int count) throws IOException {
        this.folder = Files.createDirectories(folder.resolve("set-" + seed));
        this.out = out;
        this.pieces = GeneratedPieces.set(seed, count);
        for (Known known : pieces) {
            if (!Files.exists(wav(known))) {
                PlatformSynthesizer.writeWav(known.piece(), wav(known));
            }
        }
    }

    private Path wav(Known known) {
        return folder.resolve(known.texture() + ".wav");
    }

    private void line(String pattern, Object... values) {
        out.println(String.format(Locale.ROOT, pattern, values));
    }

    void evaluate() throws IOException {
        line("| piece | onset F | P | R | beat F | downbeat F | beats in bar (true) | confidence beat, bar | worst bar ms |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        List<Double> onsetF = new ArrayList<>();
        Map<Boolean, List<Double>> beatF = new TreeMap<>();
        List<Double> downF = new ArrayList<>();
        EventScores all = new EventScores(0, 0, 0);
        int metres = 0;
        int wrongAndSure = 0;
        List<Long> errors = new ArrayList<>();
        for (Known known : pieces) {
            TrackAnalysis track = TrackAnalyser.analyse(wav(known));
            long[] found = track.onsets().stream().mapToLong(Onset::timeUs).toArray();
            long[] beats = track.beats().stream().mapToLong(Beat::timeUs).toArray();
            long[] downbeats = track.beats().stream().filter(Beat::isDownbeat).mapToLong(Beat::timeUs).toArray();
            EventScores onset = EventScores.onsets(known.onsetsUs(), found);
            EventScores beat = EventScores.beats(known.beatsUs(), beats);
            EventScores down = EventScores.beats(known.downbeatsUs(), downbeats);
            all = all.plus(onset);
            onsetF.add(onset.f());
            beatF.computeIfAbsent(known.changing(), k -> new ArrayList<>()).add(beat.f());
            downF.add(down.f());
            metres += track.beatsPerBar() == known.tappedInBar() ? 1 : 0;
            wrongAndSure += down.f() < 0.5 && track.barConfidence() > 0.6 ? 1 : 0;
            nearest(known.onsetsUs(), found, errors);
            line("| %s | %.3f | %.3f | %.3f | %.3f | %.3f | %d (%d) | %.2f, %.2f | %s |", known.texture(), onset.f(), onset.precision(),
                    onset.recall(), beat.f(), down.f(), track.beatsPerBar(), known.tappedInBar(), track.beatConfidence(),
                    track.barConfidence(), worstBar(known, track));
        }
        errors.sort(null);
        line("");
        line("Onsets: mean F %.4f, all together F %.4f (P %.3f, R %.3f); distance to the true onset: median %.1f ms, 90 %% between %.1f and %.1f ms.",
                mean(onsetF), all.f(), all.precision(), all.recall(), errors.get(errors.size() / 2) / 1e3,
                errors.get(errors.size() / 20) / 1e3, errors.get(errors.size() * 19 / 20) / 1e3);
        line("Beats: mean F steady %.4f, changing tempo %.4f. Downbeats: mean F %.4f; bar length right in %d of %d; wrong with a confidence above 0.6: %d.",
                mean(beatF.get(false)), mean(beatF.get(true)), mean(downF), metres, pieces.size(), wrongAndSure);
        if (Tools.has("aubioonset")) {
            aubio();
        } else {
            line("aubio is not installed; not compared.");
        }
        crossCheck();
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
    }

    private static void nearest(long[] truth, long[] found, List<Long> errors) {
        for (long f : found) {
            long best = Arrays.stream(truth).map(t -> f - t).reduce(Long.MAX_VALUE, (a, b) -> Math.abs(a) <= Math.abs(b) ? a : b);
            if (Math.abs(best) <= EventScores.ONSET_WINDOW_US) {
                errors.add(best);
            }
        }
    }

    /** Greatest distance of a bar line of the found map from the true one, where the bar length is right. */
    private static String worstBar(Known known, TrackAnalysis track) {
        if (track.tempo().isEmpty() || track.beatsPerBar() != known.tappedInBar()) {
            return "-";
        }
        TempoMap found = track.tempo().get();
        long first = found.timeUsOfBar(1, Rational.ONE);
        long[] truth = known.downbeatsUs();
        int shift = 0;
        for (int i = 0; i < truth.length; i++) {
            shift = Math.abs(truth[i] - first) < Math.abs(truth[shift] - first) ? i : shift;
        }
        long worst = 0;
        for (int i = shift; i < truth.length; i++) {
            worst = Math.max(worst, Math.abs(found.timeUsOfBar(i - shift + 1, Rational.ONE) - truth[i]));
        }
        return String.format(Locale.ROOT, "%.1f", worst / 1e3);
    }

    private void aubio() {
        line("");
        line("| aubioonset | mean F | P | R |");
        line("| --- | --- | --- | --- |");
        for (List<String> setting : AUBIO_ONSET) {
            List<Double> f = new ArrayList<>();
            EventScores all = new EventScores(0, 0, 0);
            for (Known known : pieces) {
                List<String> command = new ArrayList<>(List.of("aubioonset", "-i", wav(known).toString()));
                command.addAll(setting);
                EventScores scores = EventScores.onsets(known.onsetsUs(), Tools.times(Tools.run(command)));
                all = all.plus(scores);
                f.add(scores.f());
            }
            line("| %s | %.4f | %.3f | %.3f |", setting.isEmpty() ? "(default)" : String.join(" ", setting), mean(f), all.precision(), all.recall());
        }
        Map<Boolean, List<Double>> beatF = new LinkedHashMap<>();
        for (Known known : pieces) {
            long[] found = Tools.times(Tools.run("aubiotrack", "-i", wav(known).toString()));
            beatF.computeIfAbsent(known.changing(), k -> new ArrayList<>()).add(EventScores.beats(known.beatsUs(), found).f());
        }
        line("");
        line("aubiotrack: mean beat F steady %.4f, changing tempo %.4f.", mean(beatF.get(false)), mean(beatF.get(true)));
    }

    /** The same scores by mir_eval itself, for a few pieces. */
    private void crossCheck() throws IOException {
        if (!Files.exists(Path.of("/usr/lib/python3/dist-packages/mir_eval"))) {
            line("mir_eval is not installed; scores not compared.");
            return;
        }
        double worst = 0;
        for (Known known : pieces.subList(0, Math.min(6, pieces.size()))) {
            TrackAnalysis track = TrackAnalyser.analyse(wav(known));
            long[] found = track.onsets().stream().mapToLong(Onset::timeUs).toArray();
            long[] beats = track.beats().stream().mapToLong(Beat::timeUs).toArray();
            String python = "import mir_eval,numpy as n\n"
                    + "print(mir_eval.onset.f_measure(n.array(" + seconds(known.onsetsUs()) + "),n.array(" + seconds(found) + "))[0],"
                    + "mir_eval.beat.f_measure(mir_eval.beat.trim_beats(n.array(" + seconds(known.beatsUs())
                    + ")),mir_eval.beat.trim_beats(n.array(" + seconds(beats) + "))))";
            Path script = Files.writeString(folder.resolve("score.py"), python);
            String[] scores = Tools.run("/usr/bin/python3", script.toString()).trim().split(" ");
            worst = Math.max(worst, Math.abs(Double.parseDouble(scores[0]) - EventScores.onsets(known.onsetsUs(), found).f()));
            worst = Math.max(worst, Math.abs(Double.parseDouble(scores[1]) - EventScores.beats(known.beatsUs(), beats).f()));
        }
        line("");
        line("Scores of six pieces by mir_eval itself: greatest difference %.1e.", worst);
    }

    private static String seconds(long[] us) {
        return Arrays.toString(Arrays.stream(us).mapToDouble(t -> t / 1e6).toArray());
    }
}
