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
    /** Invented. Bars of 120 bpm in 4/4 are two seconds long. */
    static final String SHOW = """
            show Small "Small show" {
              on 2027-06-19 at 22:30 zone "UTC"
              site Field
              firing system Desk
              sync within 150 ms
              separation by UsTable
            }
            soundtrack Tune {
              audio "tune.wav"
              length 0:20.000  timecode 25 fps from 10:00:00:00  preroll 60 s
              tempo { at 0:00.000 120 bpm 4/4 }
              mark Start at bar 3
            }
            igniter Standard { resistance 1.6 ohm +- 0.2 ohm  all-fire 0.5 A  no-fire 0.2 A }
            shell Red "Red peony" {
              calibre 75 mm  rise 2.4 s +- 80 ms  apex 105 m  spread 70 m  lasts 1.6 s  charge 62 g
              hazard 1.3G UN0335  colour red  igniter Standard
            }
            mine Blue "Blue mine" { calibre 50 mm  lasts 1.5 s  charge 40 g  hazard 1.4G UN0336  colour blue  igniter Standard }
            site Field {
              position A at (-20 m, 0 m)
              position B at (20 m, 0 m)
              audience Meadow along (-400 m, -230 m) (400 m, -230 m)
              boundary (-800 m, -310 m) (800 m, -310 m) (800 m, 800 m) (-800 m, 800 m)
              wind from 270 deg at 5 m/s gusting 7 m/s
              air 15 degC
            }
            module type Box { pins 8  drive 24 V  source 1.2 ohm  test 10 mA  at most 1 igniter per pin, 8 pins at once }
            firing system Desk { step 10 ms  latency 5 ms  clock within 25 ppm }
            module MA "1" of Box at A
            module MB "2" of Box at B
            rack RA at A { 4 tubes 75 mm long 500 mm  spaced 160 mm }
            score Tune in slot 0 {
              section Whole from Start to 0:19.000 {
                at 0:10.000  A  Red
                at bar 7     B  Blue
              }
              hold from 0:15 to 0:17 "boat"
            }
            release { sheets html }
            """;

    @TempDir
    Path folder;
    private Session session;
    private String uri;

    @BeforeEach
    void open() throws Exception {
        Path script = Files.writeString(folder.resolve("small.show"), SHOW);
        Files.write(folder.resolve("tune.wav"), wav());
        uri = script.toUri().toString();
        session = new Session(folder);
        session.open(uri, SHOW);
    }

    @AfterEach
    void close() throws IOException {
        session.close();
    }

    @Test
    void planHasCuesWithTheDelayTakenOff() throws Exception {
        PlanView plan = Session.get(session.server().plan(new ScriptParams(uri)));
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
        assertThat(red.source().uri()).isEqualTo(uri);
        assertThat(SHOW.lines().toList().get(red.source().line() - 1)).contains("0:10.000  A  Red");
        // SMPTE ST 12-1 at 25 frames: 60 s of pre-roll and 7.6 s are 1690 frames, 00:01:07:15.
        assertThat(red.timecode()).isEqualTo("10:01:07:15");
        CueView blue = plan.cues().stream().filter(cue -> cue.what().equals("Blue")).findFirst().orElseThrow();
        assertThat(blue.seenUs()).isEqualTo(12_000_000);
        assertThat(blue.burst()).isNull();
    }

    @Test
    void planHasTheMusicAndTheHolds() throws Exception {
        TrackView track = Session.get(session.server().plan(new ScriptParams(uri))).tracks().get(0);
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
        session.change(uri, 2, SHOW.replace("0:20.000 ", "0:19.500 "));
        assertThat(track().silence()).contains("tune.wav");
        assertThat(track().piece()).isNull();
        Files.writeString(folder.resolve("tune.mid"), "of its name");
        assertThat(track().piece()).isEqualTo(folder.resolve("tune.mid").toUri().toString());
        Files.writeString(folder.resolve("tune.wav"), "damaged");
        session.change(uri, 3, SHOW);
        assertThat(track().audio()).isNull();
        assertThat(track().piece()).isNull();
    }

    private TrackView track() throws Exception {
        return Session.get(session.server().plan(new ScriptParams(uri))).tracks().get(0);
    }

    @Test
    void findingsStandAtTheirCues() throws Exception {
        session.change(uri, 2, SHOW.replace("hold from 0:15 to 0:17", "hold from 0:07 to 0:08"));
        PlanView plan = Session.get(session.server().plan(new ScriptParams(uri)));
        FindingView held = plan.findings().stream().filter(finding -> finding.rule().equals("hold-violated")).findFirst().orElseThrow();
        assertThat(held.severity()).isEqualTo("error");
        assertThat(held.cues()).containsExactly(plan.cues().stream().filter(cue -> cue.what().equals("Red")).findFirst().orElseThrow().number());
        assertThat(plan.clean()).isFalse();
    }

    @Test
    void theTextOfTheEditorCountsNotThatOfTheDisk() throws Exception {
        assertThat(Session.get(session.server().plan(new ScriptParams(uri))).cues()).hasSize(2);
        session.change(uri, 2, SHOW.replace("at bar 7     B  Blue", "at bar 7     A, B  Blue"));
        assertThat(Session.get(session.server().plan(new ScriptParams(uri))).cues()).hasSize(3);
    }

    @Test
    void whoDrawsIsToldOfEachCheckEvenIfNothingNewWasFound() throws Exception {
        Session.get(session.server().plan(new ScriptParams(uri)));
        session.forgetChecked();
        session.change(uri, 2, SHOW.replace("0:10.000  A", "0:10.100  A"));
        assertThat(session.nextChecked()).isEqualTo(uri);
    }

    @Test
    void falloutDriftsWithTheWindThatIsTried() throws Exception {
        SiteView west = Session.get(session.server().site(new SiteParams(uri, null)));
        SiteView east = Session.get(session.server().site(new SiteParams(uri, new WindView(90, 5, null))));
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
        WaveView wave = Session.get(session.server().waveform(new WaveParams(uri, "Tune")));
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
        SheetList list = Session.get(session.server().sheets(new ScriptParams(uri)));
        assertThat(list.sheets()).extracting(SheetList.Entry::id).contains("1", "3", "4 A", "8");
        SheetPage page = Session.get(session.server().sheetPage(new SheetPageParams(uri, "8", 1, 600)));
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
        SheetFile file = Session.get(session.server().sheetFile(new SheetFileParams(uri, "10", "pdf")));
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
        SheetFile html = Session.get(session.server().sheetFile(new SheetFileParams(uri, "3", "html")));
        assertThat(new String(Base64.getDecoder().decode(html.content()), StandardCharsets.UTF_8)).startsWith("<").contains("Red peony").contains("Editor preview, not released");
    }

    @Test
    void whatCannotBeAnsweredSaysWhy() throws Exception {
        assertThat(Session.get(session.server().sheetPage(new SheetPageParams(uri, "99", 1, 600))).nothing()).contains("no sheet '99'");
        assertThat(Session.get(session.server().sheetFile(new SheetFileParams(uri, "3", "doc"))).nothing()).contains("'doc'");
        assertThat(Session.get(session.server().waveform(new WaveParams(uri, "Nobody"))).nothing()).contains("Nobody");
        String outside = folder.resolveSibling("elsewhere.show").toUri().toString();
        assertThat(Session.get(session.server().plan(new ScriptParams(outside))).nothing()).contains("knows no such script");
        session.change(uri, 2, "shell Red { calibre 75 mm }");
        assertThat(Session.get(session.server().plan(new ScriptParams(uri))).nothing()).contains("No show uses this file");
        session.change(uri, 3, "show {{{ ");
        assertThat(Session.get(session.server().plan(new ScriptParams(uri))).nothing()).isNotBlank();
        session.change(uri, 4, SHOW.replace("site Field\n", "\n").replaceAll("site Field \\{[^}]*\\}", ""));
        assertThat(Session.get(session.server().site(new SiteParams(uri, null))).nothing()).contains("no site");
    }

    @Test
    void noWindIsStrongerThanWindsAre() throws Exception {
        SiteView site = Session.get(session.server().site(new SiteParams(uri, new WindView(-90, 1e9, null))));
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
