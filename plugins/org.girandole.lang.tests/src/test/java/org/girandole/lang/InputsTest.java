package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.girandole.plan.Finding;
import org.girandole.plan.script.AudioFile;
import org.girandole.plan.script.Mark;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TimeExpr;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that a script names: marks and sound. */
class InputsTest {
    private final ShowLoader loader = new ShowLoader();

    @TempDir
    private Path project;

    private LoadedShow load(String soundtrack, String score) throws IOException {
        return loader.load(Files.writeString(project.resolve("show.show"), "show S { }\nsite Pier { position A at (0 m, 0 m) }\n"
                + "comet Star { calibre 45 mm }\nsoundtrack Waltz { " + soundtrack + " }\nscore Waltz in slot 0 {\n" + score + "}\n"));
    }

    private static Soundtrack soundtrack(LoadedShow loaded) {
        return loaded.script().orElseThrow().soundtracks().get(0);
    }

    @Test
    void labelsAreMarks() throws IOException {
        Files.writeString(project.resolve("labels.txt"), "12.480000\t12.480000\tSwell\n\\\t100.0\t200.0\n58.5\t60\tVerse 1 (quiet)\n99,25\t99,25\t2nd\n");
        LoadedShow loaded = load("length 2:00  marks from \"labels.txt\"", "  at Swell + 1 s  A  Star\n  at Verse_1_quiet_  A  Star\n");
        assertThat(loaded.problems()).isEmpty();
        assertThat(soundtrack(loaded).marks()).extracting(Mark::name).containsExactly("Swell", "Verse_1_quiet_", "_2nd");
        assertThat(soundtrack(loaded).marks()).extracting(mark -> mark.at().anchor()).containsExactly(new TimeExpr.AtClock(12_480_000),
                new TimeExpr.AtClock(58_500_000), new TimeExpr.AtClock(99_250_000));
        assertThat(loaded.inputs()).extracting(input -> input.path()).containsExactly("show.show", "labels.txt");
    }

    // Bytes after Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0: chunks 'cue ' and 'adtl' with 'labl'.
    @Test
    void cuePointsOfAWavFileAreMarks() throws IOException {
        ByteBuffer wav = ByteBuffer.allocate(44 + 4 + 8 + 4 + 24 + 8 + 4 + 8 + 4 + 6).order(ByteOrder.LITTLE_ENDIAN);
        wav.put(ascii("RIFF")).putInt(wav.capacity() - 8).put(ascii("WAVEfmt ")).putInt(16).putShort((short) 1).putShort((short) 1)
                .putInt(8_000).putInt(16_000).putShort((short) 2).putShort((short) 16).put(ascii("data")).putInt(4).putInt(0);
        wav.put(ascii("cue ")).putInt(28).putInt(1).putInt(7).putInt(99_840).put(ascii("data")).putInt(0).putInt(0).putInt(99_840);
        wav.put(ascii("LIST")).putInt(22).put(ascii("adtllabl")).putInt(10).putInt(7).put(ascii("Swell\0"));
        Files.write(project.resolve("cues.wav"), wav.array());
        LoadedShow loaded = load("length 2:00  marks from \"cues.wav\"", "  at Swell + 1 s  A  Star\n");
        assertThat(loaded.problems()).isEmpty();
        // Sample 99 840 of 8000 a second.
        assertThat(soundtrack(loaded).marks()).extracting(mark -> mark.at().anchor()).containsExactly(new TimeExpr.AtClock(12_480_000));
        assertThat(loaded.inputs()).extracting(input -> input.path()).containsExactly("show.show", "cues.wav");
    }

    // Written by the Java platform's own writer of Standard MIDI Files.
    @Test
    void markersOfAMidiFileAreMarks() throws Exception {
        Sequence sequence = new Sequence(Sequence.PPQ, 480);
        Track track = sequence.createTrack();
        track.add(new MidiEvent(new MetaMessage(0x51, new byte[] {0x06, 0x1A, (byte) 0x80}, 3), 0));
        track.add(new MidiEvent(new MetaMessage(0x06, ascii("Verse 1"), 7), 4_800));
        MidiSystem.write(sequence, 1, new File(project.toFile(), "marks.mid"));
        LoadedShow loaded = load("length 2:00  marks from \"marks.mid\"", "  at Verse_1  A  Star\n");
        assertThat(loaded.problems()).isEmpty();
        // Ten quarter notes of 400 000 us.
        assertThat(soundtrack(loaded).marks()).extracting(mark -> mark.at().anchor()).containsExactly(new TimeExpr.AtClock(4_000_000));
    }

    @Test
    void damagedFilesOfMarksAreUnreadable() throws IOException {
        for (String head : List.of("RIFF", "MThd", "\u00ff\u0000\u0001")) {
            Files.write(project.resolve("marks.bin"), (head + "xxxxxxxxxxxxxxxxxxxx").getBytes(StandardCharsets.ISO_8859_1));
            LoadedShow loaded = load("length 2:00  marks from \"marks.bin\"", "");
            assertThat(loaded.problems()).as(head).extracting(Finding::rule).containsExactly("unreadable");
            assertThat(loaded.problems().get(0).message()).startsWith("The marks of 'marks.bin' cannot be read: ").doesNotContain("null", "Exception");
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Test
    void aLabelWithTheNameOfAMarkIsToldOnce() throws IOException {
        Files.writeString(project.resolve("labels.txt"), "1\t1\tSwell\n");
        LoadedShow loaded = load("mark Swell at 0:10  marks from \"labels.txt\"", "");
        assertThat(loaded.problems()).extracting(Finding::rule).containsExactly("duplicate-name");
    }

    @Test
    void aMisspeltLabelIsNear() throws IOException {
        Files.writeString(project.resolve("labels.txt"), "1\t1\tSwell\n");
        LoadedShow loaded = load("marks from \"labels.txt\"", "  at Swel A Star\n");
        assertThat(loaded.problems()).extracting(Finding::message).containsExactly("There is no mark 'Swel'; did you mean Swell?");
    }

    @Test
    void soundIsMeasured() throws IOException {
        AudioFormat format = new AudioFormat(48_000, 16, 2, true, false);
        try (AudioInputStream silence = new AudioInputStream(new ByteArrayInputStream(new byte[4 * 72_000]), format, 72_000)) {
            AudioSystem.write(silence, AudioFileFormat.Type.WAVE, new File(project.toFile(), "waltz.wav"));
        }
        LoadedShow loaded = load("audio \"waltz.wav\"", "");
        assertThat(loaded.problems()).isEmpty();
        AudioFile.Facts facts = soundtrack(loaded).audio().orElseThrow().found().orElseThrow();
        // 72 000 samples at 48 kHz are a second and a half.
        assertThat(facts.lengthUs()).isEqualTo(1_500_000);
        assertThat(facts.sampleRateHz()).isEqualTo(48_000);
        assertThat(facts.channels()).isEqualTo(2);
        assertThat(soundtrack(loaded).lengthUs()).contains(1_500_000L);
        assertThat(loaded.inputs()).extracting(input -> input.path()).containsExactly("show.show", "waltz.wav");
        assertThat(loaded.inputs().get(1).sha256()).isEqualTo(facts.sha256());
    }

    @Test
    void soundThatIsNotThereIsNoProblemOfTheLanguage() throws IOException {
        LoadedShow loaded = load("length 2:00  audio \"waltz.wav\"", "");
        assertThat(loaded.problems()).isEmpty();
        assertThat(soundtrack(loaded).audio().orElseThrow().trouble()).contains("there is no such file");
    }
}
