package org.girandole.music.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.synth.PieceRenderer;
import org.girandole.music.synth.PieceWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnalysisCacheTest {
    @TempDir
    private Path folder;

    private Path piece(int bpm) throws Exception {
        PieceWriter writer = new PieceWriter("Piece", TempoMap.startingAt(500_000, Rational.of(bpm), Meter.COMMON).tempo(5, Rational.of(150))
                .ramp(6, Rational.of(120), 8).build(), 10).instrument(0, 0, 110);
        for (int bar = 1; bar <= 10; bar++) {
            for (int beat = 1; beat <= 4; beat++) {
                writer.hit(bar, Rational.of(beat), beat == 1 ? 36 : 38, beat == 1 ? 120 : 90);
                writer.note(0, bar, Rational.of(beat), Rational.ONE, 60 + bar % 3, 80);
            }
        }
        Path wav = folder.resolve("piece.wav");
        PieceRenderer.writeWav(writer.piece(), wav);
        return wav;
    }

    @Test
    void whatIsKeptIsWhatListeningGives() throws Exception {
        Path wav = piece(110);
        AnalysisCache cache = new AnalysisCache(folder.resolve("cache"));
        assertThat(cache.kept(wav)).isEmpty();
        TrackAnalysis heard = cache.analysis(wav);
        assertSame(cache.kept(wav).orElseThrow(), heard);
        assertSame(heard, TrackAnalyser.analyse(wav));
        assertThat(heard.tempo()).isPresent();
    }

    private static void assertSame(TrackAnalysis a, TrackAnalysis b) {
        assertThat(a).usingRecursiveComparison().ignoringFields("peaks", "tempo").isEqualTo(b);
        assertThat(a.tempo()).isEqualTo(b.tempo());
        assertThat(a.peaks().columns(0, 5_000_000, 300)).usingRecursiveComparison().isEqualTo(b.peaks().columns(0, 5_000_000, 300));
    }

    /** Neither the time of a file nor its name says what is in it. */
    @Test
    void anotherRecordingUnderTheSameNameIsHeardAnew() throws Exception {
        AnalysisCache cache = new AnalysisCache(folder.resolve("cache"));
        Path wav = piece(110);
        FileTime then = Files.getLastModifiedTime(wav);
        TrackAnalysis first = cache.analysis(wav);
        Files.setLastModifiedTime(piece(100), then);
        assertThat(cache.analysis(wav).onsets()).isNotEqualTo(first.onsets());
    }

    @Test
    void aDamagedEntryIsHeardAnew() throws Exception {
        AnalysisCache cache = new AnalysisCache(folder.resolve("cache"));
        Path wav = piece(110);
        TrackAnalysis first = cache.analysis(wav);
        Path entry = folder.resolve("cache").resolve(first.facts().sha256() + ".heard");
        byte[] bytes = Files.readAllBytes(entry);
        for (int at : new int[] { 0, 5, 12, 200, bytes.length / 2, bytes.length - 1 }) {
            byte[] damaged = bytes.clone();
            damaged[at] ^= 0x10;
            Files.write(entry, damaged);
            assertThat(cache.kept(wav)).as("byte %s", at).isEmpty();
        }
        Files.write(entry, List.of());
        assertThat(cache.kept(wav)).isEmpty();
        assertSame(cache.analysis(wav), first);
        assertThat(Files.readAllBytes(entry)).isEqualTo(bytes);
        try (var all = Files.list(entry.getParent())) {
            assertThat(all).containsExactly(entry);
        }
    }

    @Test
    void aCacheThatCannotBeWrittenIsDoneWithout() throws Exception {
        Path wav = piece(110);
        Files.writeString(folder.resolve("cache"), "in the way");
        assertThat(new AnalysisCache(folder.resolve("cache")).analysis(wav).onsets()).isNotEmpty();
    }

    @Test
    void aTrackWithoutBeatsIsKeptToo() throws Exception {
        Path wav = folder.resolve("silence.wav");
        PieceWriter writer = new PieceWriter("Silence", TempoMap.constant(0, Rational.of(100), Meter.COMMON), 2);
        writer.note(0, 1, Rational.ONE, Rational.ONE, 60, 1);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        writer.piece().writeMidi(bytes);
        try (var out = Files.newOutputStream(wav)) {
            PieceRenderer.writeWav(bytes.toByteArray(), out);
        }
        AnalysisCache cache = new AnalysisCache(folder.resolve("cache"));
        assertSame(cache.analysis(wav), cache.kept(wav).orElseThrow());
    }
}
