package org.girandole.benchmarks.music;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;
import org.girandole.benchmarks.music.GeneratedPieces.Known;
import org.girandole.music.analysis.EditAligner;
import org.girandole.music.analysis.EditMap;

/** Edits of generated pieces made with known scissors; where their marks go, and where the cuts are seen. */
final class AlignmentEvaluation {
    private static final int RATE = PlatformSynthesizer.SAMPLE_RATE;
    private static final int FRAME = 4;

    private final Path folder;
    private final PrintStream out;
    private final Random random = new Random(5);
    private final List<Long> markErrors = new ArrayList<>();
    private final List<Long> edgeErrors = new ArrayList<>();
    private int lost;
    private int keptThoughCut;
    private int extra;

    AlignmentEvaluation(Path folder, PrintStream out) throws IOException {
        this.folder = Files.createDirectories(folder.resolve("edits"));
        this.out = out;
    }

    void evaluate(long seed, int count) throws IOException {
        List<Known> pieces = GeneratedPieces.set(seed, count);
        out.println("| edit | marks | within 20 ms | worst ms | lost | kept though cut | edges | within 50 ms | false changes |");
        out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        report("8 bars cut", pieces, this::cut);
        report("material inserted", pieces, this::insert);
        report("0.5 % faster (sox speed)", pieces, (k, s) -> speed(k, s, 1.005));
        report("0.5 % slower (sox speed)", pieces, (k, s) -> speed(k, s, 0.995));
        report("8 bars cut, Ogg Vorbis at quality 2", pieces, this::cutAndCompress);
    }

    private interface Edit {
        void measure(Known known, byte[] samples) throws IOException;
    }

    private void report(String name, List<Known> pieces, Edit edit) throws IOException {
        markErrors.clear();
        edgeErrors.clear();
        lost = 0;
        keptThoughCut = 0;
        extra = 0;
        for (Known known : pieces) {
            edit.measure(known, PlatformSynthesizer.render(known.piece()));
        }
        long good = markErrors.stream().filter(e -> e <= 20_000).count();
        int marks = markErrors.size() + lost;
        out.println(String.format(Locale.ROOT, "| %s | %d | %.2f %% | %.1f | %d | %d | %d | %d | %d |", name, marks,
                100.0 * good / marks, markErrors.stream().mapToLong(Long::longValue).max().orElse(0) / 1e3, lost, keptThoughCut,
                edgeErrors.size(), edgeErrors.stream().filter(e -> e <= 50_000).count(), extra));
    }

    private void cut(Known known, byte[] samples) throws IOException {
        cut(known, samples, folder.resolve("new.wav"));
    }

    private void cutAndCompress(Known known, byte[] samples) throws IOException {
        cut(known, samples, folder.resolve("new.ogg"));
    }

    private void cut(Known known, byte[] samples, Path edited) throws IOException {
        long[] bars = known.downbeatsUs();
        int at = 3 + random.nextInt(bars.length - 14);
        long from = bars[at];
        long to = bars[at + 8];
        byte[] cut = join(Arrays.copyOf(samples, bytes(from)), Arrays.copyOfRange(samples, bytes(to), samples.length));
        Path wav = folder.resolve("new.wav");
        Tools.writeWav(wav, cut, RATE);
        if (!edited.equals(wav)) {
            Tools.run("ffmpeg", "-v", "error", "-y", "-i", wav.toString(), "-c:a", "libvorbis", "-q:a", "2", edited.toString());
        }
        EditMap map = align(samples, edited);
        List<EditMap.Change> cuts = map.changes().stream().filter(c -> c.kind() == EditMap.Kind.CUT).toList();
        extra += map.changes().size() - Math.min(1, cuts.size());
        cuts.stream().min((a, b) -> Long.compare(Math.abs(a.oldStartUs() - from), Math.abs(b.oldStartUs() - from))).ifPresent(c -> {
            edgeErrors.add(Math.abs(c.oldStartUs() - from));
            edgeErrors.add(Math.abs(c.oldEndUs() - to));
        });
        for (long mark : marks(known)) {
            // At the joint itself both answers are right.
            boolean joint = Math.abs(mark - from) < 60_000 || Math.abs(mark - to) < 60_000;
            if (mark < from || mark >= to) {
                check(map, mark, mark < from ? mark : mark - (to - from), joint);
            } else if (!joint && map.newTime(mark).isPresent()) {
                keptThoughCut++;
            }
        }
    }

    private void insert(Known known, byte[] samples) throws IOException {
        long[] bars = known.downbeatsUs();
        long at = bars[4 + random.nextInt(bars.length - 8)];
        // Foreign material: another part of the same sound, backwards.
        byte[] foreign = backwards(Arrays.copyOfRange(samples, samples.length / 2, samples.length / 2 + bytes(2_000_000 + random.nextInt(9_000_000))));
        byte[] edited = join(Arrays.copyOf(samples, bytes(at)), foreign, Arrays.copyOfRange(samples, bytes(at), samples.length));
        Tools.writeWav(folder.resolve("new.wav"), edited, RATE);
        EditMap map = align(samples, folder.resolve("new.wav"));
        long length = foreign.length / FRAME * 1_000_000L / RATE;
        List<EditMap.Change> inserts = map.changes().stream().filter(c -> c.kind() != EditMap.Kind.CUT).toList();
        extra += map.changes().size() - Math.min(1, inserts.size());
        inserts.stream().min((a, b) -> Long.compare(Math.abs(a.newStartUs() - at), Math.abs(b.newStartUs() - at))).ifPresent(c -> {
            edgeErrors.add(Math.abs(c.newStartUs() - at));
            edgeErrors.add(Math.abs(c.newEndUs() - at - length));
        });
        for (long mark : marks(known)) {
            check(map, mark, mark < at ? mark : mark + length, Math.abs(mark - at) < 60_000);
        }
    }

    private void speed(Known known, byte[] samples, double factor) throws IOException {
        Path old = folder.resolve("plain.wav");
        Tools.writeWav(old, samples, RATE);
        Tools.run("sox", "-V1", old.toString(), folder.resolve("new.wav").toString(), "speed", String.valueOf(factor));
        EditMap map = align(samples, folder.resolve("new.wav"));
        extra += map.changes().size();
        for (long mark : marks(known)) {
            check(map, mark, Math.round(mark / factor), false);
        }
    }

    private EditMap align(byte[] samples, Path edited) throws IOException {
        Path old = folder.resolve("old.wav");
        Tools.writeWav(old, samples, RATE);
        return EditAligner.align(old, edited);
    }

    /** Every beat is a mark. */
    private static long[] marks(Known known) {
        return known.beatsUs();
    }

    private void check(EditMap map, long oldUs, long newUs, boolean mayBeLost) {
        OptionalLong found = map.newTime(oldUs);
        if (found.isPresent()) {
            long error = Math.abs(found.getAsLong() - newUs);
            if (!mayBeLost || error <= 20_000) {
                markErrors.add(error);
            }
        } else if (!mayBeLost) {
            lost++;
        }
    }

    private static int bytes(long us) {
        return (int) (us * RATE / 1_000_000) * FRAME;
    }

    private static byte[] backwards(byte[] samples) {
        byte[] out = new byte[samples.length];
        for (int i = 0; i < samples.length; i += FRAME) {
            System.arraycopy(samples, i, out, samples.length - FRAME - i, FRAME);
        }
        return out;
    }

    private static byte[] join(byte[]... parts) {
        byte[] all = new byte[Arrays.stream(parts).mapToInt(p -> p.length).sum()];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }
}
