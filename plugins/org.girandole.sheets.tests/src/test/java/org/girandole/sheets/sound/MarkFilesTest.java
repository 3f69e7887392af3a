package org.girandole.sheets.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.sheets.SmallShow;
import org.girandole.timecode.marks.Mark;
import org.girandole.timecode.marks.MeterChange;
import org.girandole.timecode.marks.MidiFile;
import org.girandole.timecode.marks.MidiMap;
import org.girandole.timecode.marks.TempoChange;
import org.junit.jupiter.api.Test;

class MarkFilesTest {
    private static PlannedSoundtrack soundtrack(TempoMap tempo, Map<String, Long> marksUs) {
        PlannedSoundtrack small = new SmallShow().plan().soundtracks().get(0);
        return new PlannedSoundtrack(small.script(), 0, Optional.of(tempo), small.line(), small.lengthUs(), marksUs, List.of(), List.of());
    }

    // Standard MIDI Files 1.0: a tempo is microseconds a quarter note, whatever note the meter counts.
    @Test
    void beatsOfAnyNoteBecomeQuarterNotes() throws Exception {
        // Two bars of 4/4 at 120 quarters a minute, then 6/8 at 180 eighths a minute: a quarter lasts 0.5 s, then 2/3 s.
        TempoMap tempo = TempoMap.startingAt(2_000_000, Rational.of(120), Meter.COMMON).tempo(3, Rational.of(180), new Meter(6, 8)).build();

        MidiMap map = MidiFile.read(MarkFiles.of(soundtrack(tempo, Map.of())).midi());

        int beat = map.ticksPerQuarter();
        long first = map.tickAt(2_000_000);
        assertThat(map.meters()).containsExactly(new MeterChange(first, 4, 4), new MeterChange(first + 8L * beat, 6, 8));
        assertThat(map.tempos()).contains(new TempoChange(first, 500_000), new TempoChange(first + 8L * beat, 666_667));
        assertThat(map.timeOf(first)).isEqualTo(2_000_000);
        assertThat(map.timeOf(first + 8L * beat)).isEqualTo(tempo.timeUsOfBar(3, Rational.ONE)).isEqualTo(6_000_000);
    }

    @Test
    void bothEndsOfARampLieWhereTheMusicHasThem() throws Exception {
        TempoMap tempo = TempoMap.startingAt(0, Rational.of(96), Meter.COMMON).ramp(5, Rational.of(120), 9).build();

        MidiMap map = MidiFile.read(MarkFiles.of(soundtrack(tempo, Map.of())).midi());

        for (int bar = 1; bar <= 12; bar++) {
            long tick = (bar - 1) * 4L * map.ticksPerQuarter();
            // A beat of the ramp is rounded to whole microseconds: half a microsecond for each of 16.
            assertThat(Math.abs(map.timeOf(tick) - tempo.timeUsOfBar(bar, Rational.ONE))).as("bar " + bar).isLessThanOrEqualTo(8);
        }
    }

    @Test
    void marksAndBarsBeforeTheFirstNoteAreNamed() throws Exception {
        Map<String, Long> marks = new LinkedHashMap<>();
        marks.put("Late", 9_000_000L);
        marks.put("Upbeat", -500_000L);
        marks.put("Start", 0L);
        MarkFiles files = MarkFiles.of(soundtrack(TempoMap.constant(-1_000_000, Rational.of(60), Meter.COMMON), marks));

        assertThat(files.beforeFirstNote()).containsExactly("Upbeat");
        assertThat(files.hasMidiTempo()).isFalse();
        MidiMap map = MidiFile.read(files.midi());
        assertThat(map.marks()).containsExactly(new Mark(0, "Start"), new Mark(9_000_000, "Late"));
        assertThat(map.tempos()).isEmpty();
    }
}
