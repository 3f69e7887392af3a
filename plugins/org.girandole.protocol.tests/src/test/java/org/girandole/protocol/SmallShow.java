package org.girandole.protocol;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A small show in a folder of its own, opened in a session. */
final class SmallShow implements AutoCloseable {
    /** Invented. Bars of 120 bpm in 4/4 are two seconds long. */
    static final String TEXT = """
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

    private final Session session;
    private final String uri;

    /** @param more what the script says besides */
    SmallShow(Path folder, String more) throws Exception {
        Path script = Files.writeString(folder.resolve("small.show"), TEXT + more);
        uri = script.toUri().toString();
        session = new Session(folder);
        session.open(uri, TEXT + more);
    }

    /** The script, as the server knows it. */
    String uri() {
        return uri;
    }

    Session session() {
        return session;
    }

    Session.Server server() {
        return session.server();
    }

    void change(int version, String text) {
        session.change(uri, version, text);
    }

    @Override
    public void close() throws IOException {
        session.close();
    }
}
