package org.girandole.sheets.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.girandole.sheets.SmallShow.column;
import static org.girandole.sheets.SmallShow.finding;
import static org.girandole.sheets.SmallShow.layout;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.girandole.plan.Severity;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.sheets.SmallShow;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.marks.LabelTrack;
import org.girandole.timecode.marks.Mark;
import org.girandole.timecode.marks.MidiFile;
import org.girandole.timecode.marks.WavMarks;
import org.girandole.timecode.reader.LineReader;
import org.girandole.timecode.reader.LineReport;
import org.girandole.timecode.reader.TimecodeReading;
import org.girandole.timecode.wav.WavReader;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReleaserTest {
    private final TimeZone zone = TimeZone.getDefault();
    private final Locale locale = Locale.getDefault();
    @TempDir
    private Path temp;

    @AfterEach
    void restore() {
        TimeZone.setDefault(zone);
        Locale.setDefault(locale);
    }

    @Test
    void releaseListsEveryFileWithItsHash() throws Exception {
        Release release = release(new SmallShow(), temp.resolve("out"));
        JsonObject json = JsonParser.parseString(Files.readString(temp.resolve("out/release.json"))).getAsJsonObject();

        assertThat(release.replaced()).isFalse();
        Map<String, String> listed = new TreeMap<>();
        json.getAsJsonArray("files").forEach(f -> listed.put(f.getAsJsonObject().get("path").getAsString(),
                f.getAsJsonObject().get("sha256").getAsString()));
        Map<String, String> there = hashes(temp.resolve("out"));
        there.remove("release.json");
        assertThat(listed).isEqualTo(there).containsKeys("plan.json", "standard.csv", "tables.xlsx");
        assertThat(json.get("stamp").getAsString()).isEqualTo(new SmallShow().plan().stamp().full());
        assertThat(json.getAsJsonObject("counts").get("pieces").getAsInt()).isEqualTo(4);
    }

    @Test
    void sameInputGivesTheSameBytesInAnyZoneAndLocale() throws Exception {
        release(new SmallShow(), temp.resolve("a"));
        TimeZone.setDefault(TimeZone.getTimeZone("America/St_Johns"));
        Locale.setDefault(Locale.forLanguageTag("ar-EG"));
        release(new SmallShow(), temp.resolve("b"));

        assertThat(hashes(temp.resolve("b"))).isEqualTo(hashes(temp.resolve("a")));
    }

    @Test
    void anUnwaivedErrorKeepsTheShowFromBeingReleased() throws Exception {
        assertThatThrownBy(() -> release(new SmallShow().findings(finding(Severity.ERROR, "x")), temp.resolve("out")))
                .isInstanceOfSatisfying(ReleaseException.class, e -> assertThat(e.reason()).isEqualTo(ReleaseException.Reason.NOT_CLEAN))
                .hasMessageContaining("1 error ");
        assertThat(temp).isEmptyDirectory();
        release(new SmallShow().findings(SmallShow.waived(finding(Severity.ERROR, "x")), finding(Severity.WARNING, "y")),
                temp.resolve("out"));
        assertThat(temp.resolve("out/release.json")).exists();
    }

    @Test
    void anOlderReleaseIsReplacedAsAWhole() throws Exception {
        Path out = temp.resolve("out");
        release(new SmallShow().tables(layout("Desk", "desk.csv", column("cue", "number", ""))), out);
        assertThat(out.resolve("desk.csv")).exists();

        assertThatThrownBy(() -> release(new SmallShow(), out)).isInstanceOf(ReleaseException.class)
                .hasMessageContaining("'desk.csv' is another");
        assertThat(out.resolve("desk.csv")).exists();
        Release second = Releaser.release(new ReleaseOrder(new SmallShow().checked(), "0.0.0", Optional.empty(), Optional.empty(), true), out);

        assertThat(second.replaced()).isTrue();
        assertThat(out.resolve("desk.csv")).doesNotExist();
        assertThat(names(temp)).containsExactly("out");
    }

    @Test
    void aFolderWithAnythingElseIsRefusedAndUntouched() throws Exception {
        Path out = Files.createDirectory(temp.resolve("out"));
        Files.writeString(out.resolve("thesis.txt"), "mine");

        refused(out, "holds no release.json");
        Files.delete(out.resolve("thesis.txt"));
        release(new SmallShow(), out);
        Files.writeString(out.resolve("thesis.txt"), "mine");
        refused(out, "'thesis.txt', which no release wrote");
        Files.delete(out.resolve("thesis.txt"));
        Files.writeString(out.resolve("standard.csv"), "edited");
        refused(out, "'standard.csv' was changed");
    }

    @Test
    void aForeignOrBrokenIndexIsRefused() throws Exception {
        Path out = Files.createDirectory(temp.resolve("out"));
        for (String content : List.of("", "{", "[]", "{}", "{\"generator\":1}", "{\"generator\":\"other\",\"files\":[]}",
                "{\"generator\":\"girandole\"}", "{\"generator\":\"girandole\",\"files\":[{}]}")) {
            Files.writeString(out.resolve("release.json"), content);
            refused(out, "not an older release that can be replaced");
        }
        Files.write(out.resolve("release.json"), new byte[] {(byte) 0xff, (byte) 0xfe});
        refused(out, "not an older release that can be replaced");
    }

    @Test
    void aFailureLeavesTheOlderReleaseIntact() throws Exception {
        Path out = temp.resolve("out");
        release(new SmallShow(), out);
        Map<String, String> before = hashes(out);

        assertThatThrownBy(() -> release(new SmallShow().tables(layout("Desk", "desk.csv", column("cue", "nonsense", ""))), out))
                .isInstanceOfSatisfying(ReleaseException.class, e -> assertThat(e.reason()).isEqualTo(ReleaseException.Reason.SCRIPT))
                .hasMessageContaining("'nonsense'");

        assertThat(hashes(out)).isEqualTo(before);
        assertThat(names(temp)).containsExactly("out");
    }

    @Test
    void aFileInTheWayIsAClearError() throws Exception {
        Path file = Files.writeString(temp.resolve("file"), "x");

        refused(file, "is a file");
        refused(file.resolve("below"), "Nothing was released");
        refused(Path.of(""), "cannot be replaced as a whole");
        refused(Path.of("/"), "cannot be replaced as a whole");
    }

    @Test
    void missingFoldersAboveAreMade() throws Exception {
        release(new SmallShow(), temp.resolve("a/b/c"));

        assertThat(temp.resolve("a/b/c/release.json")).exists();
    }

    @Test
    void timecodeIsThatOfTheShowAtEveryRateAskedFor() throws Exception {
        Release release = release(new SmallShow().release(asking(List.of(44_100, 96_000), List.of())), temp.resolve("out"));

        assertThat(release.leftOut()).isEmpty();
        assertThat(names(temp.resolve("out/timecode"))).containsExactly("Tides-44100.wav", "Tides-96000.wav");
        for (int hz : List.of(44_100, 96_000)) {
            LineReport report = LineReader.read(temp.resolve("out/timecode/Tides-" + hz + ".wav"), (done, of) -> {
            });
            TimecodeReading reading = report.timecodeChannel().orElseThrow().timecode().orElseThrow();
            assertThat(report.sampleRate()).isEqualTo(hz);
            // 60 s of pre-roll, 250 s of music and 10 s of run-out at 25 frames a second.
            assertThat(reading.goodFrames()).isEqualTo(320 * 25);
            assertThat(reading.lostFrames()).isZero();
            assertThat(reading.first().digits()).isEqualTo("10:00:00:00");
            assertThat(reading.userBits().mark()).contains(new ReleaseMark(0, new SmallShow().plan().stamp().full()));
        }
    }

    @Test
    void marksBeginWithTheFirstNoteInEveryForm() throws Exception {
        Release release = release(new SmallShow().release(asking(List.of(), List.of("midi", "labels", "cues"))), temp.resolve("out"));

        assertThat(release.leftOut()).isEmpty();
        Mark swell = new Mark(19_565_000, "Swell");
        assertThat(MidiFile.read(Files.readAllBytes(temp.resolve("out/marks/Tides.mid"))).marks()).containsExactly(swell);
        assertThat(LabelTrack.read(Files.readAllBytes(temp.resolve("out/marks/Tides.txt")))).containsExactly(swell);
        try (WavReader wav = WavReader.open(temp.resolve("out/marks/Tides-cues.wav"))) {
            assertThat(wav.warnings()).isEmpty();
            assertThat(wav.frames()).isGreaterThanOrEqualTo(250L * wav.sampleRate());
            assertThat(WavMarks.fromCues(wav.cues(), wav.sampleRate())).containsExactly(swell);
        }
    }

    @Test
    void soundAndMarksAreTheSameBytesTwice() throws Exception {
        release(new SmallShow().release(asking(List.of(48_000), List.of("midi", "labels", "cues"))), temp.resolve("a"));
        release(new SmallShow().release(asking(List.of(48_000), List.of("midi", "labels", "cues"))), temp.resolve("b"));

        assertThat(hashes(temp.resolve("b"))).isEqualTo(hashes(temp.resolve("a"))).containsKeys("timecode/Tides-48000.wav",
                "marks/Tides.mid", "marks/Tides.txt", "marks/Tides-cues.wav");
    }

    @Test
    void whatIsAskedForAndNotMadeIsSaid() throws Exception {
        Release release = release(new SmallShow().release(asking(List.of(), List.of("semaphore"))), temp.resolve("out"));

        assertThat(release.leftOut()).containsExactly("marks as semaphore");
        assertThat(Files.readString(temp.resolve("out/release.json"))).contains("\"marks as semaphore\"");
    }

    private static ReleaseSpec asking(List<Integer> timecodeWavHz, List<String> marks) {
        return new ReleaseSpec(List.of(), List.of(), "A4", Optional.empty(), timecodeWavHz, marks, SmallShow.HERE);
    }

    private void refused(Path folder, String why) throws IOException {
        Map<String, String> before = hashes(temp);
        assertThatThrownBy(() -> release(new SmallShow(), folder))
                .isInstanceOfSatisfying(ReleaseException.class, e -> assertThat(e.reason()).isEqualTo(ReleaseException.Reason.FOLDER))
                .hasMessageContaining(why);
        assertThat(hashes(temp)).isEqualTo(before);
    }

    private static Release release(SmallShow show, Path folder) throws ReleaseException {
        return Releaser.release(show.checked(), folder, "0.0.0");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private static Map<String, String> hashes(Path folder) throws IOException {
        Map<String, String> hashes = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path file : walk.filter(Files::isRegularFile).sorted(Comparator.naturalOrder()).toList()) {
                hashes.put(folder.relativize(file).toString(), hash(Files.readAllBytes(file)));
            }
        }
        return hashes;
    }

    private static String hash(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
