package org.girandole.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.Beat;
import org.girandole.music.analysis.TempoFit;
import org.girandole.music.analysis.TidyTempo;
import org.girandole.timecode.marks.MeterChange;
import org.girandole.timecode.marks.MidiFile;
import org.girandole.timecode.marks.MidiMap;

/**
 * The tempo of a Standard MIDI File as a tempo map whose changes lie on bar lines.
 *
 * @param map     as few and as round lines as lie close to the file
 * @param worstUs how far the bar line lies off that lies worst
 */
record MidiTempoRead(TempoMap map, long worstUs) {
    private static final long[] TIDY_US = {10_000, 3_000, 1_000};
    private static final int BARS_BEYOND = 4;
    private static final int MOST_BEATS = 100_000;

    /** Empty for other files, for MIDI files without meter, which do not say where their bars begin, and for those that change the note of the beat. */
    static Optional<MidiTempoRead> of(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        if (bytes.length < 4 || !new String(bytes, 0, 4, StandardCharsets.ISO_8859_1).equals("MThd")) {
            return Optional.empty();
        }
        MidiMap midi = MidiFile.read(bytes);
        boolean oneUnit = midi.meters().stream().map(MeterChange::unit).distinct().count() == 1;
        return oneUnit && !midi.tempos().isEmpty() ? tempo(midi) : Optional.empty();
    }

    private static Optional<MidiTempoRead> tempo(MidiMap midi) {
        List<MeterChange> meters = midi.meters();
        int unit = meters.get(0).unit();
        List<Beat> beats = beats(midi);
        List<Long> barsUs = beats.stream().filter(Beat::isDownbeat).map(Beat::timeUs).toList();
        int longest = meters.stream().mapToInt(MeterChange::beats).max().orElse(0);
        Optional<TempoMap> fitted = TempoFit.fit(beats, longest).map(map -> counted(map, unit));
        MidiTempoRead best = null;
        for (long within : TIDY_US) {
            if (fitted.isPresent()) {
                TempoMap tidy = TidyTempo.of(fitted.get(), barsUs.size(), within);
                long worst = worst(tidy, barsUs);
                best = best == null || worst < best.worstUs ? new MidiTempoRead(tidy, worst) : best;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Beats from the first meter to some bars beyond the last thing that the file says. */
    private static List<Beat> beats(MidiMap midi) {
        List<MeterChange> meters = midi.meters();
        long lastTick = Math.max(midi.tempos().get(midi.tempos().size() - 1).tick(), meters.get(meters.size() - 1).tick());
        long lastMark = midi.marks().stream().mapToLong(mark -> midi.tickAt(mark.timeUs())).max().orElse(0);
        long endTick = Math.max(lastTick, lastMark);
        List<Beat> beats = new ArrayList<>();
        long tick = meters.get(0).tick();
        int meter = 0;
        int inBar = 1;
        int beyond = 0;
        while (beyond <= BARS_BEYOND && beats.size() < MOST_BEATS) {
            while (meter + 1 < meters.size() && meters.get(meter + 1).tick() <= tick) {
                meter++;
                inBar = 1;
            }
            beats.add(new Beat(midi.timeOf(tick), inBar, 1));
            beyond += inBar == 1 && tick > endTick ? 1 : 0;
            tick += Math.max(1, 4L * midi.ticksPerQuarter() / meters.get(meter).unit());
            inBar = inBar % meters.get(meter).beats() + 1;
        }
        return beats;
    }

    /** The map with the note of the file as its beat. */
    private static TempoMap counted(TempoMap map, int unit) {
        List<TempoEvent> events = new ArrayList<>();
        for (TempoEvent event : map.events()) {
            if (event instanceof TempoEvent.Start start) {
                events.add(new TempoEvent.Start(start.timeUs(), start.bpm(), new Meter(start.meter().beatsPerBar(), unit)));
            } else if (event instanceof TempoEvent.Step step) {
                Meter meter = step.meter() == null ? null : new Meter(step.meter().beatsPerBar(), unit);
                events.add(new TempoEvent.Step(step.bar(), step.bpm(), meter));
            } else {
                events.add(event);
            }
        }
        return TempoMap.of(events);
    }

    private static long worst(TempoMap map, List<Long> barsUs) {
        long worst = 0;
        for (int bar = 1; bar <= barsUs.size(); bar++) {
            worst = Math.max(worst, Math.abs(map.timeUsOfBar(bar, Rational.ONE) - barsUs.get(bar - 1)));
        }
        return worst;
    }
}
