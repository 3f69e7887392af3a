package org.girandole.lang.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.marks.LabelTrack;
import org.girandole.timecode.marks.Mark;
import org.girandole.timecode.marks.MarksException;
import org.girandole.timecode.marks.MidiFile;
import org.girandole.timecode.marks.WavMarks;
import org.girandole.timecode.wav.WavReader;

/**
 * Marks of a file in any form that is read: cue points of a WAV file, markers of a Standard MIDI File, or a label track. What it is, its first
 * bytes tell, not its name.
 */
public final class MarksFile {
    private static final long MOST_BYTES = 64L << 20;
    private static final int MOST_MARKS = 100_000;
    private static final int HEAD = 4;

    private MarksFile() {
    }

    /**
     * All marks, in the order of the file.
     *
     * @throws MarksException if it is none of these forms or damaged; the message is for the user
     * @throws IOException if it cannot be read
     */
    public static List<Mark> read(Path file) throws IOException {
        List<Mark> marks;
        try {
            marks = marks(file);
        } catch (TimecodeException | ArithmeticException e) {
            throw new MarksException("A mark in it has an impossible place: " + e.getMessage(), e);
        }
        if (marks.size() > MOST_MARKS) {
            throw new MarksException("The file has " + marks.size() + " marks; at most " + MOST_MARKS + " are read");
        }
        return marks;
    }

    /** A label as a name of the language: what no name can have in it becomes an underscore; empty for an empty label. */
    public static String nameOf(String label) {
        String name = label.strip().replaceAll("[^\\p{L}\\p{N}_]+", "_");
        return name.isEmpty() || !Character.isDigit(name.charAt(0)) ? name : "_" + name;
    }

    private static List<Mark> marks(Path file) throws IOException {
        String head;
        try (var in = Files.newInputStream(file)) {
            head = new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1);
        }
        if (List.of("RIFF", "RF64", "BW64").contains(head)) {
            try (WavReader wav = WavReader.open(file)) {
                return WavMarks.fromCues(wav.cues(), wav.sampleRate());
            }
        }
        if (Files.size(file) > MOST_BYTES) {
            throw new MarksException("The file has " + Files.size(file) + " bytes; at most " + MOST_BYTES + " are read");
        }
        byte[] bytes = Files.readAllBytes(file);
        return head.equals("MThd") ? MidiFile.read(bytes).marks() : LabelTrack.read(bytes);
    }
}
