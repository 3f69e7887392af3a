package org.girandole.protocol;

import java.util.List;

/**
 * A soundtrack in its slot.
 *
 * @param lengthUs null when neither the script nor the audio says it
 * @param rate frame rate such as {@code 25}; null when there is no timecode
 * @param start timecode at the beginning of the pre-roll; null when there is none
 * @param audio URI of the sound file; null when the script names none or it cannot be read
 * @param silence why there is no sound, null when there is
 * @param piece URI of a Standard MIDI File from which the missing recording can be played: of its name, beside its place; else null
 * @param bars with their beats, over the length of the soundtrack
 */
public record TrackView(String name, String label, int slot, Long lengthUs, Long prerollUs, String rate, String start, String audio,
        String silence, String piece, List<Bar> bars, List<Mark> marks, List<Span> sections, List<Span> holds, SourcePlace source) {
    /**
     * A bar.
     *
     * @param number from 1
     * @param beatsUs moments of its beats, the first is the bar's own
     */
    public record Bar(int number, List<Long> beatsUs) {
        public long atUs() {
            return beatsUs.get(0);
        }
    }

    /** A named moment. */
    public record Mark(String name, long atUs) {
    }

    /**
     * A stretch of time.
     *
     * @param label name of a section, reason of a hold
     */
    public record Span(String label, long fromUs, long toUs, SourcePlace source) {
    }
}
