package org.girandole.music.synth;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import org.girandole.music.TempoMap;

/**
 * A finished piece.
 *
 * @param name     of the piece
 * @param map      its tempo map; time 0 is the first sample of the rendering
 * @param bars     number of bars; the piece ends at the start of bar {@code bars + 1}
 * @param notes    every note in the order of time
 * @param marks    names of places, such as the starts of its sections
 * @param sequence the same as MIDI
 */
public record Piece(String name, TempoMap map, int bars, List<Note> notes, List<Mark> marks, Sequence sequence) {

    /** A note: when it begins, and what the synthesizer is told. Channel 9 is percussion. */
    public record Note(long timeUs, int channel, int key, int velocity) {
    }

    /** A named place. */
    public record Mark(String name, int bar, long timeUs) {
    }

    public Piece {
        notes = List.copyOf(notes);
        marks = List.copyOf(marks);
    }

    /** Writes the piece as a Standard MIDI File of type 1. */
    public void writeMidi(OutputStream out) throws IOException {
        MidiSystem.write(sequence, 1, out);
    }
}
