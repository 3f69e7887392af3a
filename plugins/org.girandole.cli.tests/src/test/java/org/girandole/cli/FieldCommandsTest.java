package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands about the field: allocate and meter. */
class FieldCommandsTest {
    private static final String FIELD = """
            site Quay {
              position A at (-30 m, 0 m)
              position C at (0 m, 0 m)
              audience Promenade along (-150 m, -230 m) (150 m, -230 m)
              air 18 degC
            }
            igniter Standard { resistance 1.6 ohm +- 0.2 ohm  all-fire 0.5 A  no-fire 0.2 A }
            wire Pair { gauge 24 awg }
            module type Field8 { pins 8  drive 24 V  source 1.2 ohm  test 10 mA  at most 1 igniters per pin, 8 pins at once  pin gap 20 ms  lead at most 60 m }
            firing system Field { step 10 ms  latency 5 ms  clock within 25 ppm  lead Pair slack 2 m + 10 % }
            module MC "1" of Field8 at C, A
            rack RA at A { 5 tubes 75 mm long 450 mm  spaced 140 mm  tilt 0 deg }
            rack RC at C { 5 tubes 75 mm long 450 mm  spaced 140 mm  tilt 0 deg }
            shell Peony "Red peony" { calibre 75 mm  rise 2.4 s +- 50 ms  apex 105 m  spread 70 m  lasts 1.6 s  charge 62 g  hazard 1.3G UN0335  igniter Standard }
            show Evening { on 2027-06-19  site Quay  firing system Field  sync within 100 ms }
            soundtrack Tides { length 1:00.000  timecode 25 fps from 10:00:00:00  preroll 60 s }
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void writeShow() throws IOException {
        write("  at 0:10.000 A Peony", "  at 0:20.000 C Peony", "  at 0:30.000 C Peony");
    }

    @Test
    void aCueInsertedInTheMiddleIsOneAddedLine() throws Exception {
        assertThat(Cli.in(folder).run("allocate", "night.show").exits(0).out()).isEqualTo("Wrote night.lock: 3 lines.\n");
        List<String> before = Files.readAllLines(folder.resolve("night.lock"));
        assertThat(Cli.in(folder).run("allocate", "night.show").exits(0).out()).isEqualTo("night.lock is up to date: 3 lines.\n");
        write("  at 0:10.000 A Peony", "  at 0:20.000 C Peony", "  cue Extra at 0:25.000 C Peony", "  at 0:30.000 C Peony");

        assertThat(Cli.in(folder).run("check", "night.show").out()).contains("lock-stale: In the lock file of Evening, 1 cue has no line: Extra@C");
        assertThat(Cli.in(folder).run("allocate", "night.show", "--dry-run").exits(0).out())
                .isEqualTo("add  Extra@C: new -> RC:3 MC:4\nWould change night.lock: 1 added, 0 dropped, 0 moved; nothing has to be rewired.\n");
        assertThat(Files.readAllLines(folder.resolve("night.lock"))).isEqualTo(before);
        Cli.in(folder).run("allocate", "night.show").exits(0);

        List<String> after = new ArrayList<>(Files.readAllLines(folder.resolve("night.lock")));
        after.removeAll(before);
        assertThat(after).containsExactly("Extra@C RC:3 MC:4");
        assertThat(Cli.in(folder).run("check", "night.show").out()).doesNotContain("lock-");
    }

    @Test
    void whatHasNoPlaceIsNamedAndTheOldFileStays() throws Exception {
        Cli.in(folder).run("allocate", "night.show").exits(0);
        byte[] before = Files.readAllBytes(folder.resolve("night.lock"));
        write("  at 0:10.000 A 6 x Peony");

        Cli.Run run = Cli.in(folder).run("allocate", "night.show").exits(1);
        assertThat(run.out()).contains("no-tube").contains("Peony at A");
        assertThat(run.err()).contains("the lock file was not written");
        assertThat(Files.readAllBytes(folder.resolve("night.lock"))).isEqualTo(before);
    }

    @Test
    void aScriptWithErrorsLosesNoLines() throws Exception {
        Cli.in(folder).run("allocate", "night.show").exits(0);
        byte[] before = Files.readAllBytes(folder.resolve("night.lock"));
        write("  at 0:10.000 A Peony", "  at bar 3 C Peony");

        assertThat(Cli.in(folder).run("allocate", "night.show").exits(1).out()).contains("beat-without-tempo");
        assertThat(Files.readAllBytes(folder.resolve("night.lock"))).isEqualTo(before);
    }

    @Test
    void lockFilesThatMakeNoSenseAreLeftAlone() throws Exception {
        for (String nonsense : List.of("show Other\n", "show Evening\n<<<<<<< HEAD\n", "show Evening\nk R:x M:1\n", "\u0000\u0001")) {
            Files.writeString(folder.resolve("night.lock"), nonsense);

            assertThat(Cli.in(folder).run("allocate", "night.show", "--fresh").exits(1).out()).contains("lock-unusable");
            assertThat(folder.resolve("night.lock")).hasContent(nonsense);
        }
    }

    @Test
    void swappedReadingsAreNamed() throws Exception {
        Cli.in(folder).run("allocate", "night.show").exits(0);
        // 30 m and 2 m with a tenth more: 35 m of 24 AWG and 2 m, there and back, and 1.6 ohm: A on pin 1 shows 7.5, C 1.9 ohm
        Files.writeString(folder.resolve("right.csv"), "module,pin,ohm\nMC,1,7.5\nMC,2,1.9\nMC,3,1.9\n");
        Files.writeString(folder.resolve("swapped.csv"), "1;1;1,9\n1;2;7,5\n1;3;1,9\n");
        Files.writeString(folder.resolve("nonsense.csv"), "MC,1\n");

        assertThat(Cli.in(folder).run("meter", "night.show", "right.csv").exits(0).out()).isEqualTo("3 pins, 3 right, 0 to walk to.\n");
        assertThat(Cli.in(folder).run("meter", "night.show", "swapped.csv").exits(1).out()).contains("probably swapped with MC 2")
                .contains("probably swapped with MC 1").endsWith("3 pins, 1 right, 2 to walk to.\n");
        assertThat(Cli.in(folder).run("meter", "night.show", "nonsense.csv").exits(2).err()).contains("line 1").contains("three columns");
        assertThat(Cli.in(folder).run("meter", "night.show", "none.csv").exits(2).err()).contains("there is no file 'none.csv'");
    }

    private void write(String... cues) throws IOException {
        Files.writeString(folder.resolve("night.show"), FIELD + "score Tides in slot 0 {\n" + String.join("\n", cues) + "\n}\n");
    }
}
