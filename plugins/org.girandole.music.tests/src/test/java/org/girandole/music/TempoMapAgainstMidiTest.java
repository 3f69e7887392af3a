package org.girandole.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Sequencer;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

/** The JDK's own MIDI code as judge: it reads the same tempo changes from a Standard MIDI File and turns ticks to time. */
class TempoMapAgainstMidiTest {
    private static final int TICKS_PER_QUARTER = 480;

    /** Tempi whose microseconds a quarter are whole, so that the file says exactly what the map says. */
    private static final TempoMap MAP = TempoMap.startingAt(0, Rational.of(96), new Meter(4, 4))
            .tempo(5, Rational.of(125), new Meter(3, 4))
            .tempo(12, Rational.of(128), new Meter(4, 4))
            .tempo(20, Rational.of(60), new Meter(5, 4))
            .build();

    @Test
    void aSequenceLastsAsLongAsTheMapSays() throws Exception {
        for (int bar = 2; bar <= 30; bar++) {
            Sequence read = MidiSystem.getSequence(new ByteArrayInputStream(file(bar)));
            assertThat(read.getMicrosecondLength()).as("bar %s", bar)
                    .isCloseTo(MAP.timeUsOfBar(bar, Rational.ONE), within(1L));
        }
    }

    @Test
    void theSequencerFindsTheSameTimeAndTickForEveryBeat() throws Exception {
        try (Sequencer sequencer = MidiSystem.getSequencer(false)) {
            sequencer.open();
            sequencer.setSequence(new ByteArrayInputStream(file(31)));
            for (int beat = 1; beat < 100; beat++) {
                sequencer.setTickPosition((long) beat * TICKS_PER_QUARTER);
                assertThat(sequencer.getMicrosecondPosition()).as("beat %s", beat)
                        .isCloseTo(MAP.timeUsAtBeats(Rational.of(beat)), within(1L));
                sequencer.setMicrosecondPosition(MAP.timeUsAtBeats(Rational.of(beat)) + 1000);
                double tick = MAP.beatsAt(MAP.timeUsAtBeats(Rational.of(beat)) + 1000).toDouble() * TICKS_PER_QUARTER;
                assertThat((double) sequencer.getTickPosition()).isCloseTo(tick, within(1.0));
            }
        }
    }

    private static byte[] file(int endBar) throws Exception {
        Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_QUARTER);
        Track track = sequence.createTrack();
        tempo(track, 1, 96, endBar);
        tempo(track, 5, 125, endBar);
        tempo(track, 12, 128, endBar);
        tempo(track, 20, 60, endBar);
        long end = tick(endBar);
        track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 0, 60, 64), Math.max(0, end - 1)));
        track.add(new MidiEvent(new MetaMessage(0x2F, new byte[0], 0), end));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MidiSystem.write(sequence, 0, out);
        return out.toByteArray();
    }

    private static void tempo(Track track, int bar, int bpm, int endBar) throws Exception {
        if (bar >= endBar) {
            return;
        }
        int us = 60_000_000 / bpm;
        track.add(new MidiEvent(new MetaMessage(0x51, new byte[] { (byte) (us >> 16), (byte) (us >> 8), (byte) us }, 3), tick(bar)));
    }

    /** Ticks of the bar lines, counted by hand from the meters above. */
    private static long tick(int bar) {
        int beats = 0;
        for (int b = 1; b < bar; b++) {
            beats += b < 5 ? 4 : b < 12 ? 3 : b < 20 ? 4 : 5;
        }
        return (long) beats * TICKS_PER_QUARTER;
    }
}
