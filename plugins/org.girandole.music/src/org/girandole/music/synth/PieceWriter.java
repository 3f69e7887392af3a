package org.girandole.music.synth;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.girandole.music.Meter;
import org.girandole.music.Rational;
import org.girandole.music.TempoMap;

/**
 * Writes a piece note by note. Places are bar and beat of the tempo map; ramps are written as tempo changes every quarter of
 * a beat, each one chosen so that the file's time meets the map's again at the next: no rounding accumulates.
 */
public final class PieceWriter {
    public static final int PERCUSSION = 9;

    private static final int TICKS_PER_QUARTER = 960;
    private static final int TRACK_NAME = 0x03;
    private static final int MARKER = 0x06;
    private static final int END_OF_TRACK = 0x2F;
    private static final int TEMPO = 0x51;
    private static final int TIME_SIGNATURE = 0x58;

    private final String name;
    private final TempoMap map;
    private final int bars;
    private final Sequence sequence;
    private final Track conductor;
    private final Track[] tracks = new Track[16];
    private final List<Piece.Note> notes = new ArrayList<>();
    private final List<Piece.Mark> marks = new ArrayList<>();
    private final List<Rational> quartersOfBar = new ArrayList<>();

    /**
     * @param map  its bar 1 lies between 0 and 16 s, the longest silence that one tempo event of a MIDI file can say
     * @param bars length of the piece
     * @throws IllegalArgumentException for a bar 1 elsewhere
     */
    public PieceWriter(String name, TempoMap map, int bars) {
        long startUs = map.timeUsOfBar(1, Rational.ONE);
        if (startUs < 0 || startUs > 16_000_000) {
            throw new IllegalArgumentException("bar 1 at " + startUs + " us; 0 to 16000000 us is possible");
        }
        this.name = name;
        this.map = map;
        this.bars = bars;
        try {
            sequence = new Sequence(Sequence.PPQ, TICKS_PER_QUARTER);
        } catch (InvalidMidiDataException e) {
            throw new IllegalStateException("pulses a quarter are a division every MIDI file knows", e);
        }
        conductor = sequence.createTrack();
        meta(TRACK_NAME, name.getBytes(StandardCharsets.UTF_8), 0);
        writeTempo();
    }

    /** Tempo map of the piece. */
    public TempoMap map() {
        return map;
    }

    /** Chooses the instrument (General MIDI program, 0 to 127) and level (0 to 127) of a channel. */
    public PieceWriter instrument(int channel, int program, int level) {
        add(channel, ShortMessage.PROGRAM_CHANGE, program, 0, 0);
        add(channel, ShortMessage.CONTROL_CHANGE, 7, level, 0);
        return this;
    }

    /** A note of some beats. */
    public PieceWriter note(int channel, int bar, Rational beat, Rational beats, int key, int velocity) {
        Rational from = map.beatsOf(bar, beat);
        long begins = tick(from);
        add(channel, ShortMessage.NOTE_ON, key, velocity, begins);
        add(channel, ShortMessage.NOTE_OFF, key, 0, Math.max(begins + 1, tick(from.plus(beats)) - 1));
        notes.add(new Piece.Note(map.timeUsAtBeats(from), channel, key, velocity));
        return this;
    }

    /** A stroke of percussion. */
    public PieceWriter hit(int bar, Rational beat, int key, int velocity) {
        return note(PERCUSSION, bar, beat, Rational.of(1, 4), key, velocity);
    }

    /** A name for the start of a bar. */
    public PieceWriter mark(String label, int bar) {
        return mark(label, bar, Rational.ONE);
    }

    /** A name for a beat of a bar. */
    public PieceWriter mark(String label, int bar, Rational beat) {
        meta(MARKER, label.getBytes(StandardCharsets.UTF_8), tick(map.beatsOf(bar, beat)));
        marks.add(new Piece.Mark(label, bar, map.timeUsOfBar(bar, beat)));
        return this;
    }

    /** Lets the file go on in silence up to this time after its last note. */
    public PieceWriter endAt(long timeUs) {
        meta(END_OF_TRACK, new byte[0], tick(map.beatsAt(timeUs)));
        return this;
    }

    /** The piece as written so far. */
    public Piece piece() {
        List<Piece.Note> inOrder = new ArrayList<>(notes);
        inOrder.sort(Comparator.comparingLong(Piece.Note::timeUs).thenComparingInt(Piece.Note::channel).thenComparingInt(Piece.Note::key));
        return new Piece(name, map, bars, inOrder, marks, sequence);
    }

    private void writeTempo() {
        // Time 0 to bar 1 is silence of one quarter's worth of ticks; a map starting at 0 has none.
        long startUs = map.timeUsOfBar(1, Rational.ONE);
        Rational quarters = startUs > 0 ? Rational.ONE : Rational.ZERO;
        Meter meter = null;
        long writtenUs = 0;
        long last = -1;
        if (startUs > 0) {
            tempo(startUs, 0);
            writtenUs = startUs;
            last = startUs;
        }
        for (int bar = 1; bar <= bars; bar++) {
            quartersOfBar.add(quarters);
            Meter here = map.meterOfBar(bar);
            if (!here.equals(meter)) {
                timeSignature(here, ticks(quarters));
                meter = here;
            }
            Rational step = Rational.of(1, here.beatUnit());
            for (int i = 0; i < 4 * here.beatsPerBar(); i++) {
                Rational to = map.beatsOf(bar, Rational.ONE).plus(Rational.of(i + 1, 4));
                long us = Rational.of(map.timeUsAtBeats(to) - writtenUs).dividedBy(step).roundHalfUp();
                // The same tempo goes on as long as it keeps within its own rounding.
                if (Math.abs(us - last) > 2) {
                    tempo(us, ticks(quarters));
                    last = us;
                }
                writtenUs += step.times(last).roundHalfUp();
                quarters = quarters.plus(step);
            }
        }
        quartersOfBar.add(quarters);
    }

    private long tick(Rational beats) {
        var place = map.barBeatOf(beats);
        int index = Math.min(place.bar(), bars + 1) - 1;
        Rational into = beats.minus(map.beatsOf(index + 1, Rational.ONE));
        int unit = map.meterOfBar(Math.min(place.bar(), bars)).beatUnit();
        return ticks(quartersOfBar.get(index).plus(into.times(4).dividedBy(Rational.of(unit))));
    }

    private static long ticks(Rational quarters) {
        return quarters.times(TICKS_PER_QUARTER).roundHalfUp();
    }

    private void tempo(long usPerQuarter, long tick) {
        meta(TEMPO, new byte[] { (byte) (usPerQuarter >> 16), (byte) (usPerQuarter >> 8), (byte) usPerQuarter }, tick);
    }

    private void timeSignature(Meter meter, long tick) {
        int power = Integer.numberOfTrailingZeros(meter.beatUnit());
        meta(TIME_SIGNATURE, new byte[] { (byte) meter.beatsPerBar(), (byte) power, 24, 8 }, tick);
    }

    private void meta(int type, byte[] data, long tick) {
        try {
            conductor.add(new MidiEvent(new MetaMessage(type, data, data.length), tick));
        } catch (InvalidMidiDataException e) {
            throw new IllegalArgumentException("not a MIDI event: type " + type, e);
        }
    }

    private void add(int channel, int command, int first, int second, long tick) {
        if (tracks[channel] == null) {
            tracks[channel] = sequence.createTrack();
        }
        try {
            tracks[channel].add(new MidiEvent(new ShortMessage(command, channel, first, second), tick));
        } catch (InvalidMidiDataException e) {
            throw new IllegalArgumentException("not a MIDI event: " + command + " " + first + " " + second, e);
        }
    }
}
