package org.girandole.lang.ide.server;

import java.util.List;

/** A small invented show, whole but for the boundary of its site, for tests to break. */
final class Quay {
    /** Rules that find errors in it. */
    static final List<String> ERRORS = List.of("fallout-unchecked");
    static final String SHOW = """
            show Quay "Quay night" {
              on 2027-06-19 at 22:30 zone "UTC"
              site Pier
              firing system Desk
              sync within 250 ms
              separation by UsTable
            }
            site Pier {
              position A at (-20 m, 0 m)
              position B at (20 m, 0 m)
              group Both = A, B
              audience Front along (-150 m, -230 m) (150 m, -230 m)
              wind from 180 deg at 2 m/s gusting 4 m/s
              air 15 degC
            }
            igniter Standard { resistance 1.6 ohm +- 0.2 ohm  all-fire 0.5 A  no-fire 0.2 A }
            wire Pair { gauge 20 awg }
            module type Box { pins 6  drive 24 V  source 1.2 ohm  test 10 mA  at most 1 igniter per pin, 4 pins at once  pin gap 20 ms }
            firing system Desk { step 10 ms  latency 5 ms  clock within 25 ppm  lead Pair slack 2 m }
            module M1 "1" of Box at A
            module M2 "2" of Box at B
            rack R1 at A { 6 tubes 75 mm long 500 mm  spaced 160 mm }
            rack R2 at B { 3 tubes 75 mm long 500 mm  spaced 160 mm }
            shell Peony "Red peony" {
              calibre 75 mm  rise 2.3 s +- 80 ms  apex 105 m  spread 70 m  lasts 1.6 s  charge 62 g
              hazard 1.3G UN0335  colour red  igniter Standard
            }
            shell Willow "Willow" like Peony { calibre 100 mm }
            lot L1 of Peony { count 24 }
            soundtrack Tides {
              length 1:00.000
              timecode 25 fps from 10:00:00:00
              preroll 60 s
              tempo { at 0:00.000 120 bpm 4/4 }
              mark Swell at bar 9
              mark Last at bar 25
            }
            figure Pair2(shot, step) {
              at 0  A  shot
              at 0 + step  B  shot
            }
            score Tides in slot 0 {
              section Opening from Swell to Last {
                at Swell  A, B  Peony
                cue Hero at bar 12  A  Peony  note "the one"
                play Pair2(Peony, 1 beat) at bar 14
              }
            }
            """;

    private Quay() {
    }

    /** The show with one line of the score in place of the second cue. */
    static String with(String line) {
        return SHOW.replace("    cue Hero at bar 12  A  Peony  note \"the one\"\n", line + "\n");
    }
}
