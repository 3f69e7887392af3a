package org.girandole.sheets.sound;

import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.timecode.marks.MidiMap;

/**
 * A tempo map as a Standard MIDI File counts it: quarter notes of whole microseconds. A tempo that is not whole is rounded, so that bar lines
 * drift by at most half a microsecond a quarter note; a ramp becomes a tempo a beat.
 */
final class MidiTempo {
    private final TempoMap tempo;
    private final MidiMap.Builder to;
    private Meter meter;
    private int bar = 1;
    private Rational quarters = Rational.ZERO;

    private MidiTempo(TempoMap tempo, MidiMap.Builder to) {
        this.tempo = tempo;
        this.to = to;
    }

    /** When the first bar begins, microseconds from the first note; negative for an upbeat before it. */
    static long firstBarUs(TempoMap tempo) {
        return tempo.timeUsOfBar(1, Rational.ONE);
    }

    /** A map with the tempo and meters; its time begins with the first note. The first bar must not lie before that. */
    static MidiMap.Builder of(TempoMap tempo) {
        MidiMap.Builder to = MidiMap.beginningAfter(firstBarUs(tempo));
        MidiTempo writing = new MidiTempo(tempo, to);
        tempo.events().forEach(writing::event);
        return to;
    }

    private void event(TempoEvent event) {
        if (event instanceof TempoEvent.Start start) {
            meter = start.meter();
            meter();
            tempo(quarters, start.bpm());
        } else if (event instanceof TempoEvent.Step step) {
            goTo(step.bar());
            if (step.meter() != null) {
                meter = step.meter();
                meter();
            }
            if (step.bpm() != null) {
                tempo(quarters, step.bpm());
            }
        } else if (event instanceof TempoEvent.Ramp ramp) {
            goTo(ramp.fromBar());
            ramp(ramp);
        }
    }

    private void goTo(int next) {
        quarters = quarters.plus(quartersOf((long) (next - bar) * meter.beatsPerBar()));
        bar = next;
    }

    private void ramp(TempoEvent.Ramp ramp) {
        long beats = (long) (ramp.toBar() - ramp.fromBar()) * meter.beatsPerBar();
        Rational first = tempo.beatsOf(ramp.fromBar(), Rational.ONE);
        for (long beat = 0; beat < beats; beat++) {
            Rational from = first.plus(Rational.of(beat));
            Rational beatUs = tempo.exactUsAtBeats(from.plus(Rational.ONE)).minus(tempo.exactUsAtBeats(from));
            quarter(quarters.plus(quartersOf(beat)), beatUs);
        }
        goTo(ramp.toBar());
        tempo(quarters, ramp.toBpm());
    }

    private Rational quartersOf(long beats) {
        return Rational.of(4 * beats, meter.beatUnit());
    }

    private void meter() {
        to.meter(quarters.num(), quarters.den(), meter.beatsPerBar(), meter.beatUnit());
    }

    private void tempo(Rational at, Rational bpm) {
        quarter(at, Rational.of(60_000_000).dividedBy(bpm));
    }

    private void quarter(Rational at, Rational beatUs) {
        to.tempo(at.num(), at.den(), beatUs.times(Rational.of(meter.beatUnit(), 4)).roundHalfUp());
    }
}
