package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
