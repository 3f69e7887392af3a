package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.music.synth.HarbourEncore;
import org.girandole.music.synth.HarbourTides;
import org.girandole.music.synth.Piece;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is heard is held against the moments at which the music was played: they are known, because the tests play it. */
class MarksCommandTest {
    private static final Piece TIDES = HarbourTides.compose();
    private static final Piece ENCORE = HarbourEncore.compose();
    @TempDir
    private static Path music;
    @TempDir
    private Path temp;

    @BeforeAll
    static void play() throws Exception {
        Recording.of(TIDES).write(music.resolve("tides.wav"));
        Recording.of(ENCORE).write(music.resolve("encore.wav"));
    }

    private static String track(String name) {
        return music.resolve(name).toString();
    }

    private Path script(String soundtrack) throws Exception {
        return Files.writeString(temp.resolve("a.show"), "show A \"A\" { }\nsoundtrack T {\n" + soundtrack + "}\n");
    }

    private static TempoMap tempo(Path script) {
        return ScriptMusic.of(Scripts.of(script, null), null, null).planned().orElseThrow().tempo().orElseThrow();
    }

    private static Map<String, Long> marks(Path script) {
        return ScriptMusic.of(Scripts.of(script, null), null, null).marksUs();
    }

    @Test
    void theTempoOfTheExampleIsFoundWithEveryBarInItsPlace() throws Exception {
        Path script = script("");
        Cli.Run run = Cli.in(temp).run("marks", "find", track("tides.wav"), "--into", "a.show", "--click", "click.wav").exits(0);
        assertThat(run.out()).contains("bars       of 4 beats, confidence 0.").contains("tempo      added");
        TempoMap found = tempo(script);
        for (int bar = 1; bar <= TIDES.bars(); bar++) {
            assertThat(found.timeUsOfBar(bar, Rational.ONE)).as("bar %s", bar).isCloseTo(TIDES.map().timeUsOfBar(bar, Rational.ONE), within(20_000L));
        }
        assertThat(Files.readString(script)).contains("// Heard in tides.wav").containsPattern("mark Last at bar 93 +// 4:01\\.\\d+, confidence [01]\\.\\d\\d: ");
        clicksLieOnTheBeats(temp.resolve("click.wav"));
    }

    /** What is in the click track beside the lowered music are clicks; each begins within 20 ms of a beat that was played. */
    private static void clicksLieOnTheBeats(Path click) throws Exception {
        double[] with = Recording.read(click).mono();
        double[] music = Recording.read(Path.of(track("tides.wav"))).mono();
        List<Long> begins = new ArrayList<>();
        int quiet = Recording.RATE;
        for (int i = 0; i < with.length; i++) {
            // Two sixteen-bit roundings.
            boolean clicking = Math.abs(with[i] - music[i] / 2) > 3;
            if (clicking && quiet > Recording.RATE / 20) {
                begins.add(Math.round(i * 1e6 / Recording.RATE));
            }
            quiet = clicking ? 0 : quiet + 1;
        }
        List<Long> beats = new ArrayList<>();
        for (int bar = 1; bar <= TIDES.bars(); bar++) {
            for (int beat = 1; beat <= 4 && (bar < TIDES.bars() || beat == 1); beat++) {
                beats.add(TIDES.map().timeUsOfBar(bar, Rational.of(beat)));
            }
        }
        assertThat(begins).hasSameSizeAs(beats);
        for (int i = 0; i < beats.size(); i++) {
            assertThat(begins.get(i)).as("beat %s", i).isCloseTo(beats.get(i), within(20_000L));
        }
    }

    @Test
    void whatAPersonWroteStaysUnlessAskedFor() throws Exception {
        String written = "  tempo { at 0:01.000 90 bpm 3/4 /* mine */ }\n  mark Near at 0:25.030   // a word\n  mark  Bar at bar 5\n  mark Far at 0:00.400\n";
        Path script = script(written);
        Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show").exits(0);
        String once = Files.readString(script);
        assertThat(once).startsWith("show A \"A\" { }\nsoundtrack T {\n" + written).endsWith("}\n").contains("mark Last at ");
        assertThat(Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show").exits(0).out()).contains("Nothing was changed.");
        assertThat(Files.readString(script)).isEqualTo(once);

        Cli.Run snapped = Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show", "--snap", "50", "--no-new").exits(0);
        assertThat(snapped.out()).contains("Far kept at 0:00.400: no onset within 50 ms").contains("Near from 0:25.030 to 0:25.0");
        assertThat(marks(script).get("Near")).isCloseTo(25_000_000L, within(10_000L));
        assertThat(Files.readString(script).replaceAll("Near at 0:25.0\\d*", "Near at 0:25.030")).isEqualTo(once);

        Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show", "--replace-tempo").exits(0);
        assertThat(tempo(script).timeUsOfBar(24, Rational.ONE)).isCloseTo(ENCORE.map().timeUsOfBar(24, Rational.ONE), within(20_000L));
        assertThat(Files.readString(script)).contains("// a word").doesNotContain("mine");
    }

    @Test
    void eightBarsThatWereCutAreFoundAndEverythingMovesAlong() throws Exception {
        long from = TIDES.map().timeUsOfBar(33, Rational.ONE);
        long to = TIDES.map().timeUsOfBar(41, Rational.ONE);
        Recording.of(TIDES).without(from, to).write(temp.resolve("cut.wav"));
        Path script = script("  tempo {\n    at 0:02.000 72 bpm 4/4\n    bar 33 96 bpm 4/4\n    bar 57 96 bpm 4/4\n    bar 61 ramp to 120 bpm\n  }\n"
                + "  mark Early at bar 9 beat 2.5\n  mark Gone at bar 35\n  mark Half at bar 49 beat 3\n  mark Peak at bar 61\n  mark Clock at 3:57.592409\n");
        Files.writeString(script, Files.readString(script) + "score T in slot 0 {\n  section S from bar 1 to bar 40 {\n  }\n}\n");

        Cli.Run run = Cli.in(temp).run("marks", "align", track("tides.wav"), "cut.wav", "--into", "a.show", "--plot", "edit.svg").exits(1);

        Matcher cut = Pattern.compile("cut +(\\d+):(\\d+\\.\\d+) to (\\d+):(\\d+\\.\\d+), ").matcher(run.out());
        assertThat(cut.find()).as(run.out()).isTrue();
        assertThat(us(cut.group(1), cut.group(2))).isCloseTo(from, within(50_000L));
        assertThat(us(cut.group(3), cut.group(4))).isCloseTo(to, within(50_000L));
        String text = Files.readString(script);
        assertThat(text).contains("mark Early at bar 9 beat 2.5").contains("/* cut with its music: mark Gone at bar 35 */").contains("mark Half at bar 41 beat 3")
                .contains("mark Peak at bar 53").contains("section S from bar 1 to bar 33");
        assertThat(run.out()).contains("'bar 40' lay in music that was cut; now 'bar 33'").contains("'mark Gone at bar 35' lay at 1:53.667");
        Map<String, Long> moved = marks(script);
        assertThat(moved.get("Peak")).isCloseTo(TIDES.map().timeUsOfBar(61, Rational.ONE) - (to - from), within(20_000L));
        assertThat(moved.get("Clock")).isCloseTo(237_592_409L - (to - from), within(20_000L));
        assertThat(Files.readString(temp.resolve("edit.svg"))).startsWith("<svg").contains("old edit");
    }

    /** In the example a repetition runs from bar 34 to bar 47: when its middle is cut out it goes on counting, over what comes after. */
    @Test
    void cuesThatDoNotFollowAnEditAreTold() throws Exception {
        Example.copyTo(temp);
        Path old = Files.createDirectories(temp.resolve("music")).resolve("tides.wav");
        Files.copy(music.resolve("tides.wav"), old);
        Recording.of(TIDES).without(TIDES.map().timeUsOfBar(41, Rational.ONE), TIDES.map().timeUsOfBar(49, Rational.ONE)).write(temp.resolve("new.wav"));

        Cli.Run run = Cli.in(temp).run("marks", "align", "music/tides.wav", "new.wav", "--into", "harbour.show").exits(1);

        assertThat(run.out()).contains("cut        harbour.show:90 'at bar 48 A .. G GreenPeony75 outward every 1/2 beat' lay at 2:26.167")
                .containsPattern("attention  harbour.show:85 RedPeony75: \\d+ of its moments, from 2:\\d\\d\\.\\d+ on, lie to other music than before");
        assertThat(Files.readString(temp.resolve("harbour.show"))).containsPattern("/\\* cut with its music: at bar 48 .*every 1/2 beat \\*/");
    }

    private static long us(String minutes, String seconds) {
        return Math.round((Integer.parseInt(minutes) * 60 + Double.parseDouble(seconds)) * 1e6);
    }

    @Test
    void otherMusicIsNoNewEdit() throws Exception {
        Path script = script("  mark Gone at 0:35.000\n");
        String before = Files.readString(script);
        assertThat(Cli.in(temp).run("marks", "align", track("tides.wav"), track("encore.wav"), "--into", "a.show").exits(1).out())
                .contains("These are probably not two edits of one piece. The script was left as it is.");
        assertThat(Files.readString(script)).isEqualTo(before);
    }

    @Test
    void theSameRecordingMovesNothing() throws Exception {
        Path script = script("  tempo { at 0:01.000 90 bpm 3/4   bar 13 108 bpm 3/4 }\n  mark A at bar 5\n  mark B at 0:25.000\n");
        String before = Files.readString(script);
        assertThat(Cli.in(temp).run("marks", "align", track("encore.wav"), track("encore.wav"), "--into", "a.show").exits(0).out())
                .contains("nothing was cut or inserted").contains("Nothing was changed.");
        assertThat(Files.readString(script)).isEqualTo(before);
    }

    @Test
    void marksComeBackFromEveryForm() throws Exception {
        Path script = script("  tempo { at 0:01.000 90 bpm 3/4   bar 13 108 bpm 3/4 }\n  mark A at bar 5\n  mark B at 0:25.123456\n  mark C at bar 17 beat 5/3\n");
        Map<String, Long> marks = marks(script);
        for (String file : List.of("m.txt", "m.mid", "m.wav")) {
            Cli.in(temp).run("marks", "export", "a.show", "-o", file).exits(0);
            Path other = Files.writeString(temp.resolve("b.show"), "show B \"B\" { }\nsoundtrack T {\n}\n");
            Cli.in(temp).run("marks", "import", file, "--into", "b.show").exits(0);
            assertThat(marks(other)).as(file).containsExactlyInAnyOrderEntriesOf(marks);
        }
        Path midi = Files.writeString(temp.resolve("b.show"), "show B \"B\" { }\nsoundtrack T {\n}\n");
        Cli.in(temp).run("marks", "import", "m.mid", "--into", "b.show").exits(0);
        assertThat(tempo(midi)).isEqualTo(tempo(script));
    }

    @Test
    void anImportedMarkTakesTheTimeOfAWrittenOneOnlyWhenAsked() throws Exception {
        Path script = script("  mark A at 0:05.000 // mine\n");
        Files.writeString(temp.resolve("labels.txt"), "6.0\t6.0\tA\n7.0\t7.0\tB one\n8.0\t8.0\t\n");
        assertThat(Cli.in(temp).run("marks", "import", "labels.txt", "--into", "a.show").exits(0).out())
                .contains("mark       A kept at 0:05.000; in the file it lies at 0:06.000").contains("1 added").contains("1 marks without a name left out");
        assertThat(marks(script)).isEqualTo(Map.of("A", 5_000_000L, "B_one", 7_000_000L));
        Cli.in(temp).run("marks", "import", "labels.txt", "--into", "a.show", "--replace").exits(0);
        assertThat(marks(script)).isEqualTo(Map.of("A", 6_000_000L, "B_one", 7_000_000L));
        assertThat(Files.readString(script)).contains("mark A at 0:06.000 // mine");
    }

    @Test
    void oddRecordingsAreSpokenOfPlainly() throws Exception {
        Recording.silence(20).write(temp.resolve("silence.wav"));
        assertThat(Cli.in(temp).run("marks", "find", "silence.wav").exits(0).out()).contains("loudness   silent").contains("beats      none")
                .contains("No bars were heard");
        Recording.silence(1).write(temp.resolve("second.wav"));
        Cli.in(temp).run("marks", "find", "second.wav").exits(0);
        byte[] noise = new byte[2 * Recording.RATE * 20];
        new java.util.Random(7).nextBytes(noise);
        new Recording(noise, 1).write(temp.resolve("noise.wav"));
        assertThat(Cli.in(temp).run("marks", "find", "noise.wav").exits(0).out()).contains("No bars were heard").doesNotContain("\ntempo {")
                .doesNotContainPattern("confidence (1|0\\.[4-9])\\d*: (among|the last|section)");
        byte[] whole = Files.readAllBytes(music.resolve("encore.wav"));
        Files.write(temp.resolve("torn.wav"), Arrays.copyOf(whole, whole.length / 2 + 1));
        assertThat(Cli.in(temp).run("marks", "find", "torn.wav").exits(0).out()).contains("attention  ");
        assertThat(Cli.in(temp).run("marks", "find", "silence.wav", "--click", "click.wav").exits(1).err()).contains("no beats were found");
        assertThat(temp.resolve("click.wav")).doesNotExist();
    }

    @Test
    void whatIsNoRecordingIsRefused() throws Exception {
        Files.writeString(temp.resolve("text.wav"), "This is a letter.");
        Files.writeString(temp.resolve("empty.wav"), "");
        Files.write(temp.resolve("head.wav"), Arrays.copyOf(Files.readAllBytes(music.resolve("encore.wav")), 44));
        assertThat(Cli.in(temp).run("marks", "find", "text.wav").exits(2).err()).contains("not sound in a form read here");
        assertThat(Cli.in(temp).run("marks", "find", "empty.wav").exits(2).err()).contains("The file is empty");
        assertThat(Cli.in(temp).run("marks", "find", "head.wav").exits(2).err()).contains("no sound");
        assertThat(Cli.in(temp).run("marks", "find", "none.wav").exits(2).err()).contains("there is no file 'none.wav'");
        assertThat(Cli.in(temp).run("marks", "align", track("encore.wav"), "text.wav").exits(2).err()).contains("cannot be compared");
        assertThat(Cli.in(temp).run("marks", "import", "text.wav").exits(2).err()).contains("cannot be read");
        assertThat(Cli.in(temp).run("marks", "find", track("encore.wav"), "--snap", "80").exits(2).err()).contains("--into");
        Path script = script("");
        Files.writeString(script, Files.readString(script) + "soundtrack U { }\n");
        assertThat(Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show").exits(2).err()).contains("--soundtrack: T, U");
        Files.writeString(script, "soundtrack T { mark at at at");
        assertThat(Cli.in(temp).run("marks", "find", track("encore.wav"), "--into", "a.show").exits(2).err()).contains("syntax error");
        assertThat(Cli.in(temp).run("render", "text.wav", "-o", "x.wav").exits(2).err()).contains("no Standard MIDI File");
        assertThat(temp.resolve("x.wav")).doesNotExist();
    }

    @Test
    void renderingPlaysTheExample() throws Exception {
        Path midi = Path.of("../../examples/harbour-night/music/encore.mid").toAbsolutePath();
        assertThat(Cli.in(temp).run("render", midi.toString(), "-o", "encore.wav").exits(0).out()).startsWith("Written: encore.wav, 1:00.000, ");
        assertThat(Recording.read(temp.resolve("encore.wav")).samples()).hasSize(4 * Recording.RATE * 60);
    }
}
