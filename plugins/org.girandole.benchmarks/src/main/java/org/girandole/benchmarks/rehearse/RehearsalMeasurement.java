package org.girandole.benchmarks.rehearse;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rehearse.ImpossibleNight;
import org.girandole.plan.rehearse.RecordedNight;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.rehearse.Sweep;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.ltc.TimecodeWavWriter;
import org.girandole.timecode.reader.LineReader;
import org.girandole.timecode.reader.LineReport;
import org.girandole.timecode.wav.SampleDepth;

/** Rehearses an hour of 10,000 invented cues from a recording, and sweeps a script. Arguments: a scratch folder and a script. */
public final class RehearsalMeasurement {
    private static final int CUES = 10_000;
    private static final int RUNS = 5;
    private static final int SAMPLE_RATE = 48_000;

    private RehearsalMeasurement() {
    }

    public static void main(String[] args) throws IOException, ImpossibleNight {
        Path folder = Files.createDirectories(Path.of(args[0]));
        Path hour = Files.writeString(folder.resolve("hour.show"), hour());
        Plan plan = plan(hour);
        PlannedSoundtrack track = plan.soundtracks().get(0);
        Path wav = folder.resolve("hour.wav");
        try (OutputStream out = Files.newOutputStream(wav)) {
            TimecodeWavWriter.write(out, TimecodeFile.timecodeAlone(track.line().orElseThrow(), track.lengthUs().orElseThrow(), 0, SAMPLE_RATE,
                    SampleDepth.PCM_16), Optional.empty());
        }
        long begin = System.nanoTime();
        LineReport report = LineReader.read(wav, (done, of) -> {
        });
        print("decode the hour, once", begin, "");
        for (int i = 0; i < RUNS; i++) {
            begin = System.nanoTime();
            RecordedNight recorded = RecordedNight.of(report, track, plan.stamp(), 0);
            Rehearsed night = Rehearsals.of(plan, track, "hour", recorded.signal());
            print("rehearse the hour after decoding", begin, night.worst().log().cues().size() + " cues, " + night.passes().size() + " clocks");
        }
        Plan example = plan(Path.of(args[1]));
        for (int i = 0; i < RUNS; i++) {
            begin = System.nanoTime();
            Sweep sweep = Sweep.of(example, example.soundtracks().get(0));
            print("sweep the example", begin, sweep.scenarios().size() + " scenarios, " + sweep.disagreements().size() + " disagreements");
        }
    }

    private static Plan plan(Path script) {
        Path file = script.toAbsolutePath().normalize();
        return new ShowPipeline().check(file, file.getParent()).plan().orElseThrow().plan();
    }

    private static void print(String what, long beginNanos, String more) {
        System.out.printf(Locale.ROOT, "| %s | %.3f s | %s |%n", what, (System.nanoTime() - beginNanos) / 1e9, more);
    }

    private static String hour() {
        StringBuilder out = new StringBuilder("show Hour { site Field  firing system Desk  sync within 100 ms }\n"
                + "site Field { position A at (0 m, 0 m) }\nfiring system Desk { step 10 ms  latency 5 ms  clock within 25 ppm }\n"
                + "soundtrack Long { length 60:00  timecode 25 fps from 10:00:00:00  preroll 60 s }\ncomet Star { calibre 45 mm }\n"
                + "score Long in slot 0 {\n");
        for (int i = 0; i < CUES; i++) {
            long ms = 2000 + i * 359L;
            out.append(String.format(Locale.ROOT, "  at %d:%02d.%03d A Star%n", ms / 60_000, ms / 1000 % 60, ms % 1000));
        }
        return out.append("}\n").toString();
    }
}
