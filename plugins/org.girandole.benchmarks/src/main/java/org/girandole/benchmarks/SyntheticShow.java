package org.girandole.benchmarks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;

/**
 * Writes an invented show of any size: one line a cue, one igniter a line, with hardware enough for all of them, spread over forty
 * positions and over soundtracks of a thousand cues in four minutes. The same size gives the same text.
 */
final class SyntheticShow {
    private static final int POSITIONS = 40;
    private static final int CUES_PER_SOUNDTRACK = 1_000;
    private static final int PINS = 32;
    private static final int TUBES = 10;
    private static final int EFFECTS = 60;
    private static final String[] COLOURS = {"red", "green", "blue", "gold", "silver", "violet"};

    private final int cues;
    private final StringBuilder out = new StringBuilder();
    private final SplittableRandom random = new SplittableRandom(20270619);

    private SyntheticShow(int cues) {
        this.cues = cues;
    }

    /** The text of a show with this many cues. */
    static String of(int cues) {
        return new SyntheticShow(cues).write();
    }

    /** Writes the show into a file. */
    static Path write(int cues, Path file) throws IOException {
        return Files.writeString(file, of(cues), StandardCharsets.UTF_8);
    }

    private String write() {
        line("// Invented: a show of " + cues + " cues for measuring.");
        line("show Big \"Big show\" {");
        line("  on 2027-06-19 at 22:30 zone \"UTC\"");
        line("  site Field");
        line("  firing system Desk");
        line("  sync within 150 ms");
        line("  separation by UsTable");
        line("}");
        site();
        catalogue();
        hardware();
        int soundtracks = (cues + CUES_PER_SOUNDTRACK - 1) / CUES_PER_SOUNDTRACK;
        for (int i = 0; i < soundtracks; i++) {
            soundtrack(i);
            score(i, Math.min(CUES_PER_SOUNDTRACK, cues - i * CUES_PER_SOUNDTRACK));
        }
        line("release { sheets html  table standard }");
        return out.toString();
    }

    private void site() {
        line("site Field {");
        for (int p = 0; p < POSITIONS; p++) {
            line("  position P" + p + " at (" + (p * 20 - POSITIONS * 10) + " m, " + p % 5 * 10 + " m)");
        }
        line("  audience Meadow along (-400 m, -300 m) (400 m, -300 m)");
        line("  boundary (-800 m, -310 m) (800 m, -310 m) (800 m, 800 m) (-800 m, 800 m)");
        line("  wind from 180 deg at 2 m/s gusting 4 m/s");
        line("  air 15 degC");
        line("}");
    }

    private void catalogue() {
        line("igniter Standard { resistance 1.6 ohm +- 0.2 ohm  all-fire 0.5 A  no-fire 0.2 A }");
        for (int e = 0; e < EFFECTS; e++) {
            line("shell Peony" + e + " \"" + COLOURS[e % COLOURS.length] + " peony " + e + "\" {");
            line("  calibre 75 mm  rise " + (2300 + e) + " ms +- 80 ms  apex 105 m  spread 70 m  lasts 1.6 s  charge 62 g");
            line("  hazard 1.3G UN0335  colour " + COLOURS[e % COLOURS.length] + "  igniter Standard");
            line("}");
        }
        for (int e = 0; e < EFFECTS; e++) {
            line("lot L" + e + " of Peony" + e + " { count " + (cues / EFFECTS * 2 + 100) + " }");
        }
    }

    private void hardware() {
        line("wire Pair { gauge 20 awg }");
        line("module type Box { pins " + PINS + "  drive 24 V  source 1.2 ohm  test 10 mA  at most 1 igniter per pin, 8 pins at once }");
        line("firing system Desk { step 10 ms  latency 5 ms  clock within 25 ppm  lead Pair slack 2 m }");
        int perPosition = cues / POSITIONS + 1;
        // A quarter more than is needed: chance does not spread the cues quite evenly.
        int modules = perPosition * 5 / 4 / PINS + 2;
        int racks = perPosition * 5 / 4 / TUBES + 3;
        for (int p = 0; p < POSITIONS; p++) {
            for (int m = 0; m < modules; m++) {
                line("module M" + p + "_" + m + " \"" + (p * modules + m) + "\" of Box at P" + p);
            }
            for (int r = 0; r < racks; r++) {
                line("rack R" + p + "_" + r + " at P" + p + " { " + TUBES + " tubes 75 mm long 500 mm  spaced 160 mm }");
            }
        }
    }

    private void soundtrack(int i) {
        line("soundtrack S" + i + " {");
        line("  length 4:10.000  timecode 25 fps from " + hours(i) + ":00:00:00  preroll 60 s");
        line("  tempo { at 0:00.000 125 bpm 4/4 }");
        line("  mark Start at bar 3");
        line("}");
    }

    private void score(int i, int count) {
        line("score S" + i + " in slot " + i + " {");
        line("  section Whole from Start to 4:09.000 {");
        for (int c = 0; c < count; c++) {
            int beat = c / 2;
            String at = switch (c % 3) {
                case 0 -> "Start + " + beat + " beats";
                case 1 -> "bar " + (3 + beat / 4) + " beat " + (beat % 4 + 1);
                default -> clock(4_000 + beat * 480L);
            };
            line("    at " + at + "  P" + random.nextInt(POSITIONS) + "  Peony" + random.nextInt(EFFECTS));
        }
        line("  }");
        line("}");
    }

    private static String clock(long ms) {
        String rest = String.valueOf(100_000 + ms % 60_000);
        return ms / 60_000 + ":" + rest.substring(1, 3) + "." + rest.substring(3);
    }

    private static String hours(int i) {
        return i % 24 < 10 ? "0" + i % 24 : String.valueOf(i % 24);
    }

    private void line(String text) {
        out.append(text).append('\n');
    }
}
