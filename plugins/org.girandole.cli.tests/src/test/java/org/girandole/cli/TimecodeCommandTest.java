package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TimecodeCommandTest {
    private static final Path HARBOUR = Path.of("../../examples/harbour-night/harbour.show").toAbsolutePath().normalize();
    /** The plain header of a WAV file (Microsoft and IBM, Multimedia Programming Interface 1.0): RIFF, fmt, data. */
    private static final int HEADER_BYTES = 44;
    private static final int HZ = 48_000;
    private static final int BYTES_PER_FRAME = 2 * HZ / 25;

    @TempDir
    private Path temp;

    private Cli.Run cli(String... args) throws Exception {
        return Cli.in(temp).run(args);
    }

    @Test
    void aFileIsReadBackAsTheShowsOwn() throws Exception {
        String said = cli("timecode", "write", HARBOUR.toString(), "-o", "a.wav").exits(0).out();
        assertThat(said).contains("soundtrack Tides in slot 0", "the first of 2 soundtracks", "10:00:00:00 to 10:05:19:24, 8000 frames",
                "first note 10:01:00:00");
        String stamp = said.replaceAll("(?s).*stamp ([0-9A-F]{4}-[0-9A-F]{4}).*", "$1");
        assertThat(names()).containsExactly("a.wav");

        assertThat(cli("timecode", "read", "a.wav").exits(0).out()).contains("Fit as a signal", "The rate is 25 fps",
                "The first frame, 10:00:00:00, is read at 0:00.000", "The user bits say slot 0, stamp " + stamp, "Not one of 8000 frames is lost");
        // Not even the closing frame of a clean file may come near the limit of care, 28 dB.
        assertThat(cli("timecode", "read", "a.wav", "--script", HARBOUR.toString()).exits(0).out()).containsPattern(" [34]\\d\\.\\d dB in the worst second")
                .contains("Fit for the night",
                "The rate is the show's, 25 fps", "The labels begin with the show's first", "The user bits are this release's: slot 0, stamp " + stamp);
    }

    @Test
    void holesAndForeignShowsAreTold() throws Exception {
        cli("timecode", "write", HARBOUR.toString(), "-o", "a.wav", "--soundtrack", "Encore").exits(0);
        byte[] wav = Files.readAllBytes(temp.resolve("a.wav"));
        int[][] holes = {{500, 510}, {1000, 1001}, {2000, 2040}};
        for (int[] hole : holes) {
            Arrays.fill(wav, HEADER_BYTES + hole[0] * BYTES_PER_FRAME, HEADER_BYTES + hole[1] * BYTES_PER_FRAME, (byte) 0);
        }
        Files.write(temp.resolve("holes.wav"), wav);

        Cli.Run run = cli("timecode", "read", "holes.wav", "--script", HARBOUR.toString(), "--output", "json", "--plot", "line.svg").exits(1);
        assertThat(cli("timecode", "read", "holes.wav", "--output", "html").exits(1).out()).startsWith("<!DOCTYPE html>").contains("<svg", "</html>");
        JsonObject json = JsonParser.parseString(run.out()).getAsJsonObject();
        assertThat(json.get("verdict").getAsString()).isEqualTo("unfit");
        assertThat(Files.readString(temp.resolve("line.svg"))).startsWith("<svg").contains("holes.wav, channel 1");
        String text = cli("timecode", "read", "holes.wav", "--script", HARBOUR.toString()).exits(1).out();
        // Frame 500 of 25 a second begins at 20 s; within a frame, 40 ms.
        List<double[]> gaps = text.lines().filter(line -> line.startsWith("  gap")).map(TimecodeCommandTest::gap).toList();
        assertThat(gaps).hasSize(holes.length);
        for (int i = 0; i < holes.length; i++) {
            assertThat(gaps.get(i)[0]).isCloseTo(holes[i][0] / 25.0, Offset.offset(0.04));
            assertThat(gaps.get(i)[1]).isCloseTo(holes[i][1] / 25.0, Offset.offset(0.04));
        }

        Cli.in(temp).run("new", "other").exits(0);
        assertThat(cli("timecode", "read", "a.wav", "--script", "other/other.show").exits(1).out()).contains("NOT fit for the night");
    }

    private static double[] gap(String line) {
        String[] words = line.strip().split("[ ,]+");
        return new double[] {seconds(words[1]), seconds(words[3])};
    }

    private static double seconds(String clock) {
        String[] parts = clock.split(":");
        return 60 * Integer.parseInt(parts[0]) + Double.parseDouble(parts[1]);
    }

    @Test
    void musicAndTimecodeShareAFileInAnyOrder() throws Exception {
        cli("new", "my-show").exits(0);
        assertThat(cli("timecode", "write", "my-show/my-show.show", "-o", "left.wav", "--music", "left", "--rate", "44100", "--bits", "24",
                "--level", "-6").exits(0).out()).contains("44100 Hz, 24 bit, channels: 1 music, 2 timecode; timecode at -6.0 dBFS");
        String read = cli("timecode", "read", "left.wav", "--script", "my-show/my-show.show").exits(0).out();
        assertThat(read).contains("44100 Hz, 2 channels", "Channel 1: no timecode", "Channel 2: timecode", "The level is -6.0 dBFS", "is lost");
        assertThat(cli("timecode", "read", "left.wav", "--channel", "1").exits(1).out()).contains("there is sound, but it is not timecode");
        assertThat(cli("timecode", "read", "left.wav", "--channel", "3").exits(2).err()).contains("no channel 3");

        assertThat(cli("timecode", "write", "my-show/my-show.show", "-o", "four.wav", "--channels", "silent,timecode,1,mix").exits(0).out())
                .contains("1 silent, 2 timecode, 3 music channel 1, 4 music");
        assertThat(cli("timecode", "read", "four.wav").exits(0).out()).contains("4 channels", "Channel 1: no timecode; silent",
                "Channel 2: timecode");
    }

    @Test
    void whatCannotBeDoneIsToldAndLeavesNoFile() throws Exception {
        cli("new", "my-show").exits(0);
        String show = "my-show/my-show.show";
        assertThat(cli("timecode").exits(2).err()).contains("timecode write or timecode read");
        assertThat(cli("timecode", "write", show).exits(2).err()).contains("--into");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--rate", "22050").exits(2).err()).contains("44100, 48000 or 96000");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--bits", "8").exits(2).err()).contains("16 or 24");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--level", "3").exits(2).err()).contains("-60 to 0");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--level", "NaN").exits(2).err()).contains("-60 to 0");
        assertThat(cli("timecode", "write", show, "-o", "my-show/my-show.show").exits(2).err()).contains("must end in .wav");
        assertThat(cli("timecode", "write", show, "-o", "my-show/click.wav", "--music", "left").exits(2).err()).contains("the music itself");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--channels", "1,noise").exits(2).err()).contains("'noise'");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--channels", "1").exits(2).err()).contains("no channel with timecode");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--channels", "7,timecode").exits(2).err()).contains("music channel 7");
        assertThat(cli("timecode", "write", show, "-o", "a.wav", "--soundtrack", "Nobody").exits(2).err()).contains("'Nobody'", "It plays");
        assertThat(cli("timecode", "write", show, "-o", "none/a.wav").exits(3).err()).contains("there is no folder");
        assertThat(cli("timecode", "write", "none.show", "-o", "a.wav").exits(2).err()).contains("there is no file");
        assertThat(names()).containsExactly("my-show");

        assertThat(cli("timecode", "read", "none.wav").exits(2).err()).contains("there is no file 'none.wav'");
        assertThat(cli("timecode", "read", "my-show").exits(2).err()).contains("not a file");
        assertThat(cli("timecode", "read", show).exits(2).err()).contains("cannot be read");
        Files.write(temp.resolve("empty.wav"), new byte[0]);
        cli("timecode", "read", "empty.wav").exits(2);
        Files.write(temp.resolve("silence.wav"), silence());
        assertThat(cli("timecode", "read", "silence.wav", "--plot", "line.svg").exits(1).out()).contains("the recording is silent");
    }

    private static byte[] silence() {
        ByteBuffer wav = ByteBuffer.allocate(HEADER_BYTES + 2 * HZ).order(ByteOrder.LITTLE_ENDIAN);
        wav.put(new byte[] {'R', 'I', 'F', 'F'}).putInt(36 + 2 * HZ).put(new byte[] {'W', 'A', 'V', 'E', 'f', 'm', 't', ' '}).putInt(16)
                .putShort((short) 1).putShort((short) 1).putInt(HZ).putInt(2 * HZ).putShort((short) 2).putShort((short) 16)
                .put(new byte[] {'d', 'a', 't', 'a'}).putInt(2 * HZ);
        return wav.array();
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(temp)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
