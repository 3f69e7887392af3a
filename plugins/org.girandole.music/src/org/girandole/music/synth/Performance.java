package org.girandole.music.synth;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.girandole.music.audio.AudioException;

/**
 * What a Standard MIDI File says is played, in seconds instead of ticks.
 *
 * @param notes in the order in which they begin
 * @param endUs where the file ends, by its last event
 * @param rings whether a note sounds up to less than a quarter before that end
 */
record Performance(List<Note> notes, long endUs, boolean rings) {
    private static final int TEMPO = 0x51;
    private static final int VOLUME = 7;
    private static final int USUAL_TEMPO_US = 500_000;
    private static final int USUAL_VOLUME = 100;
    private static final int CHANNELS = 16;
    private static final int KEYS = 128;

    Performance {
        notes = List.copyOf(notes);
    }

    /**
     * A note.
     *
     * @param program General MIDI program, 0 to 127; without meaning on the channel of percussion
     * @param volume  of its channel where it begins, 0 to 127
     */
    record Note(double fromUs, double toUs, int channel, int program, int key, int velocity, int volume) {
    }

    /** @throws AudioException if it is no MIDI file, counts its time in frames, or has no note */
    static Performance read(byte[] midi) throws AudioException {
        Sequence sequence;
        try {
            sequence = MidiSystem.getSequence(new ByteArrayInputStream(midi));
        } catch (InvalidMidiDataException | IOException | RuntimeException e) {
            // The platform's reader lets a damaged file end in whatever happens first.
            throw new AudioException(AudioException.Kind.NOT_AUDIO, "It is no Standard MIDI File, or a damaged one", e);
        }
        if (sequence.getDivisionType() != Sequence.PPQ) {
            throw new AudioException(AudioException.Kind.UNSUPPORTED, "It counts its time in frames; only files that count in beats are played");
        }
        Performance read = new Reading(sequence).read();
        if (read.notes.isEmpty()) {
            throw new AudioException(AudioException.Kind.EMPTY, "It has no note");
        }
        return read;
    }

    /** One pass over the events of all tracks in the order of time. */
    private static final class Reading {
        private final Sequence sequence;
        private final List<Note> notes = new ArrayList<>();
        private final int[] programs = new int[CHANNELS];
        private final int[] volumes = new int[CHANNELS];
        private final Sounding[][] sounding = new Sounding[CHANNELS][KEYS];
        private double usPerTick;
        private double nowUs;
        private long nowTick;
        private long lastNoteTick;

        private record Sounding(double fromUs, int program, int velocity, int volume) {
        }

        Reading(Sequence sequence) {
            this.sequence = sequence;
            usPerTick = (double) USUAL_TEMPO_US / sequence.getResolution();
            Arrays.fill(volumes, USUAL_VOLUME);
        }

        Performance read() {
            List<MidiEvent> events = new ArrayList<>();
            for (Track track : sequence.getTracks()) {
                for (int i = 0; i < track.size(); i++) {
                    events.add(track.get(i));
                }
            }
            events.sort(Comparator.comparingLong(MidiEvent::getTick));
            for (MidiEvent event : events) {
                nowUs += (event.getTick() - nowTick) * usPerTick;
                nowTick = event.getTick();
                if (event.getMessage() instanceof MetaMessage meta && meta.getType() == TEMPO && meta.getData().length == 3) {
                    byte[] us = meta.getData();
                    usPerTick = (double) ((us[0] & 0xFF) << 16 | (us[1] & 0xFF) << 8 | us[2] & 0xFF) / sequence.getResolution();
                } else if (event.getMessage() instanceof ShortMessage message) {
                    take(message);
                }
            }
            for (int channel = 0; channel < CHANNELS; channel++) {
                for (int key = 0; key < KEYS; key++) {
                    end(channel, key);
                }
            }
            notes.sort(Comparator.comparingDouble(Note::fromUs).thenComparingInt(Note::channel).thenComparingInt(Note::key));
            return new Performance(notes, Math.round(nowUs), nowTick - lastNoteTick < sequence.getResolution());
        }

        private void take(ShortMessage message) {
            int channel = message.getChannel();
            switch (message.getCommand()) {
                case ShortMessage.NOTE_ON -> {
                    end(channel, message.getData1());
                    if (message.getData2() > 0) {
                        sounding[channel][message.getData1()] = new Sounding(nowUs, programs[channel], message.getData2(), volumes[channel]);
                    }
                    lastNoteTick = nowTick;
                }
                case ShortMessage.NOTE_OFF -> {
                    end(channel, message.getData1());
                    lastNoteTick = nowTick;
                }
                case ShortMessage.PROGRAM_CHANGE -> programs[channel] = message.getData1();
                case ShortMessage.CONTROL_CHANGE -> {
                    if (message.getData1() == VOLUME) {
                        volumes[channel] = message.getData2();
                    }
                }
                default -> {
                    // Bends, pedals and the like colour a note; they do not move it.
                }
            }
        }

        private void end(int channel, int key) {
            Sounding note = sounding[channel][key];
            if (note != null) {
                notes.add(new Note(note.fromUs, nowUs, channel, note.program, key, note.velocity, note.volume));
                sounding[channel][key] = null;
            }
        }
    }
}
