package org.girandole.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShowRequestsTest {
    @TempDir
    Path folder;
    private SmallShow show;

    @BeforeEach
    void open() throws Exception {
        Files.write(folder.resolve("tune.wav"), wav());
        show = new SmallShow(folder, "");
    }

    @AfterEach
    void close() throws IOException {
        show.close();
    }

    @Test
    void planHasCuesWithTheDelayTakenOff() throws Exception {
        PlanView plan = Session.get(show.server().plan(new ScriptParams(show.uri())));
        assertThat(plan.nothing()).isNull();
        assertThat(plan.label()).isEqualTo("Small show");
        assertThat(plan.lanes()).extracting(LaneView::position).containsExactly("A", "B");
        CueView red = plan.cues().stream().filter(cue -> cue.what().equals("Red")).findFirst().orElseThrow();
        // By hand: 10.000 s - 2.400 s rise - 0.005 s latency = 7.595 s, half up to the step of 10 ms: 7.600 s.
        assertThat(red.fireUs()).isEqualTo(7_600_000);
        assertThat(red.burstUs()).isEqualTo(10_000_000);
        assertThat(red.seenUs()).isEqualTo(10_000_000);
        assertThat(red.kind()).isEqualTo("shell");
        assertThat(red.burst().z()).isCloseTo(105, within(0.001));
        assertThat(red.source().uri()).isEqualTo(show.uri());
        assertThat(SmallShow.TEXT.lines().toList().get(red.source().line() - 1)).contains("0:10.000  A  Red");
        // SMPTE ST 12-1 at 25 frames: 60 s of pre-roll and 7.6 s are 1690 frames, 00:01:07:15.
        assertThat(red.timecode()).isEqualTo("10:01:07:15");
        CueView blue = plan.cues().stream().filter(cue -> cue.what().equals("Blue")).findFirst().orElseThrow();
        assertThat(blue.seenUs()).isEqualTo(12_000_000);
        assertThat(blue.burst()).isNull();
    }

    @Test
    void planHasTheMusicAndTheHolds() throws Exception {
        TrackView track = Session.get(show.server().plan(new ScriptParams(show.uri()))).tracks().get(0);
        assertThat(track.bars().get(2).atUs()).isEqualTo(4_000_000);
        assertThat(track.bars().get(2).beatsUs()).containsExactly(4_000_000L, 4_500_000L, 5_000_000L, 5_500_000L);
        assertThat(track.marks()).containsExactly(new TrackView.Mark("Start", 4_000_000));
        assertThat(track.holds()).singleElement().satisfies(hold -> {
            assertThat(hold.label()).isEqualTo("boat");
            assertThat(hold.fromUs()).isEqualTo(15_000_000);
            assertThat(hold.toUs()).isEqualTo(17_000_000);
        });
        assertThat(track.audio()).isEqualTo(folder.resolve("tune.wav").toUri().toString());
        assertThat(track.silence()).isNull();
        assertThat(track.piece()).isNull();
    }

    /** Only of a recording that is not there: one that is there, though damaged, is somebody's. */
    @Test
    void aMissingRecordingCanBePlayedFromThePieceOfItsName() throws Exception {
        Files.writeString(folder.resolve("other.mid"), "of another name");
        Files.delete(folder.resolve("tune.wav"));
        show.change(2, SmallShow.TEXT.replace("0:20.000 ", "0:19.500 "));
        assertThat(track().silence()).contains("tune.wav");
        assertThat(track().piece()).isNull();
        Files.writeString(folder.resolve("tune.mid"), "of its name");
        assertThat(track().piece()).isEqualTo(folder.resolve("tune.mid").toUri().toString());
        Files.writeString(folder.resolve("tune.wav"), "damaged");
        show.change(3, SmallShow.TEXT);
        assertThat(track().audio()).isNull();
        assertThat(track().piece()).isNull();
    }

    private TrackView track() throws Exception {
        return Session.get(show.server().plan(new ScriptParams(show.uri()))).tracks().get(0);
    }

    @Test
    void findingsStandAtTheirCues() throws Exception {
        show.change(2, SmallShow.TEXT.replace("hold from 0:15 to 0:17", "hold from 0:07 to 0:08"));
        PlanView plan = Session.get(show.server().plan(new ScriptParams(show.uri())));
        FindingView held = plan.findings().stream().filter(finding -> finding.rule().equals("hold-violated")).findFirst().orElseThrow();
        assertThat(held.severity()).isEqualTo("error");
        assertThat(held.cues()).containsExactly(plan.cues().stream().filter(cue -> cue.what().equals("Red")).findFirst().orElseThrow().number());
        assertThat(plan.clean()).isFalse();
    }

    @Test
    void theTextOfTheEditorCountsNotThatOfTheDisk() throws Exception {
        assertThat(Session.get(show.server().plan(new ScriptParams(show.uri()))).cues()).hasSize(2);
        show.change(2, SmallShow.TEXT.replace("at bar 7     B  Blue", "at bar 7     A, B  Blue"));
        assertThat(Session.get(show.server().plan(new ScriptParams(show.uri()))).cues()).hasSize(3);
    }

    @Test
    void whoDrawsIsToldOfEachCheckEvenIfNothingNewWasFound() throws Exception {
        Session.get(show.server().plan(new ScriptParams(show.uri())));
        show.session().forgetChecked();
        show.change(2, SmallShow.TEXT.replace("0:10.000  A", "0:10.100  A"));
        assertThat(show.session().nextChecked()).isEqualTo(show.uri());
    }

    @Test
    void falloutDriftsWithTheWindThatIsTried() throws Exception {
        SiteView west = Session.get(show.server().site(new SiteParams(show.uri(), null)));
        SiteView east = Session.get(show.server().site(new SiteParams(show.uri(), new WindView(90, 5, null))));
        assertThat(west.wind().fromDeg()).isEqualTo(270);
        assertThat(east.wind().fromDeg()).isEqualTo(90);
        assertThat(east.scriptWind().fromDeg()).isEqualTo(270);
        // Wind from the west carries to the east, which is +x.
        assertThat(middle(west)).isGreaterThan(middle(east) + 10);
        assertThat(west.distances()).filteredOn(SiteView.Distance::audience).extracting(SiteView.Distance::foundM)
                .allSatisfy(found -> assertThat(found).isCloseTo(230, within(1.0)));
        assertThat(west.lookDeg()).isCloseTo(0, within(0.001));
    }

    private static double middle(SiteView site) {
        return site.fallout().stream().filter(each -> each.kind().equals("unburst")).flatMap(each -> each.outline().stream())
                .mapToDouble(CueView.Spot::x).average().orElseThrow();
    }

    @Test
    void waveformIsThatOfTheFile() throws Exception {
        WaveView wave = Session.get(show.server().waveform(new WaveParams(show.uri(), "Tune")));
        assertThat(wave.nothing()).isNull();
        assertThat(wave.columnUs()).isEqualTo(10_000);
        assertThat(wave.columns()).isEqualTo(200);
        byte[] high = Base64.getDecoder().decode(wave.high());
        assertThat(high[20]).isZero();
        // Half of full scale, 127.
        assertThat((int) high[150]).isBetween(63, 64);
    }

    @Test
    void aPageOfASheetIsAPicture() throws Exception {
        SheetList list = Session.get(show.server().sheets(new ScriptParams(show.uri())));
        assertThat(list.sheets()).extracting(SheetList.Entry::id).contains("1", "3", "4 A", "8");
        SheetPage page = Session.get(show.server().sheetPage(new SheetPageParams(show.uri(), "8", 1, 600)));
        assertThat(page.nothing()).isNull();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(page.png())));
        assertThat(image.getWidth()).isBetween(599, 601);
        // ISO 216: A4 is 210 mm by 297 mm.
        assertThat((double) image.getHeight() / image.getWidth()).isCloseTo(297.0 / 210, within(0.01));
        assertThat(dark(image, image.getHeight() / 25)).as("the mark in the upper margin").isGreaterThan(200);
    }

    private static int dark(BufferedImage image, int rows) {
        int count = 0;
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xFF) < 128 ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void aSheetFromAnEditorSaysThatItIsNoRelease() throws Exception {
        SheetFile file = Session.get(show.server().sheetFile(new SheetFileParams(show.uri(), "10", "pdf")));
        assertThat(file.fileName()).isEqualTo("10-checklists.pdf");
        try (PDDocument document = Loader.loadPDF(Base64.getDecoder().decode(file.content()))) {
            assertThat(document.getNumberOfPages()).isGreaterThan(1);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper text = new PDFTextStripper();
                text.setStartPage(page);
                text.setEndPage(page);
                assertThat(text.getText(document).replaceAll("\\s+", " ")).as("page " + page).contains("Editor preview, not released");
            }
        }
        SheetFile html = Session.get(show.server().sheetFile(new SheetFileParams(show.uri(), "3", "html")));
        assertThat(new String(Base64.getDecoder().decode(html.content()), StandardCharsets.UTF_8)).startsWith("<").contains("Red peony").contains("Editor preview, not released");
    }

    @Test
    void whatCannotBeAnsweredSaysWhy() throws Exception {
        assertThat(Session.get(show.server().sheetPage(new SheetPageParams(show.uri(), "99", 1, 600))).nothing()).contains("no sheet '99'");
        assertThat(Session.get(show.server().sheetFile(new SheetFileParams(show.uri(), "3", "doc"))).nothing()).contains("'doc'");
        assertThat(Session.get(show.server().waveform(new WaveParams(show.uri(), "Nobody"))).nothing()).contains("Nobody");
        String outside = folder.resolveSibling("elsewhere.show").toUri().toString();
        assertThat(Session.get(show.server().plan(new ScriptParams(outside))).nothing()).contains("knows no such script");
        show.change(2, "shell Red { calibre 75 mm }");
        assertThat(Session.get(show.server().plan(new ScriptParams(show.uri()))).nothing()).contains("No show uses this file");
        show.change(3, "show {{{ ");
        assertThat(Session.get(show.server().plan(new ScriptParams(show.uri()))).nothing()).isNotBlank();
        show.change(4, SmallShow.TEXT.replace("site Field\n", "\n").replaceAll("site Field \\{[^}]*\\}", ""));
        assertThat(Session.get(show.server().site(new SiteParams(show.uri(), null))).nothing()).contains("no site");
    }

    @Test
    void noWindIsStrongerThanWindsAre() throws Exception {
        SiteView site = Session.get(show.server().site(new SiteParams(show.uri(), new WindView(-90, 1e9, null))));
        assertThat(site.wind()).isEqualTo(new WindView(270, 60, null));
        assertThat(List.of(site.positions().size(), site.audience().size())).containsExactly(2, 1);
    }

    /** One second of silence and one at half of full scale: 16 bits, 8 kHz, one channel, in the form of RIFF/WAVE. */
    private static byte[] wav() {
        int frames = 16_000;
        ByteBuffer out = ByteBuffer.allocate(44 + 2 * frames).order(ByteOrder.LITTLE_ENDIAN);
        out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 2 * frames).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16).putShort((short) 1).putShort((short) 1).putInt(8_000).putInt(16_000).putShort((short) 2).putShort((short) 16)
                .put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * frames);
        for (int i = 0; i < frames; i++) {
            out.putShort((short) (i < frames / 2 ? 0 : i % 2 == 0 ? 16_384 : -16_384));
        }
        return out.array();
    }
}
