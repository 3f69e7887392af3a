package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;

/**
 * A {@code soundtrack} block.
 *
 * @param lengthUs the written length, else that of the audio, else empty
 * @param start label at the beginning of the pre-roll
 * @param prerollUs timecode before the first note, in microseconds
 * @param marks written marks and marks imported from files, in the order of the script
 */
public record Soundtrack(String name, String label, Optional<AudioFile> audio, Optional<Long> lengthUs, Optional<FrameRate> rate,
        Optional<Timecode> start, Optional<Long> prerollUs, List<TempoEntry> tempo, List<Mark> marks, SourceRef source) {
    public Soundtrack {
        tempo = List.copyOf(tempo);
        marks = List.copyOf(marks);
    }
}
