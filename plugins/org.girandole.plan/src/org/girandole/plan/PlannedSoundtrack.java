package org.girandole.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.music.TempoMap;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.timecode.TimecodeLine;

/**
 * One soundtrack in its slot, resolved.
 *
 * @param line the timecode that runs with it; empty when rate, start or pre-roll is missing or impossible
 * @param lengthUs empty when neither the script nor the audio says it
 * @param marksUs name to microseconds from the first note, in the order of the script
 */
public record PlannedSoundtrack(Soundtrack script, int slot, Optional<TempoMap> tempo, Optional<TimecodeLine> line,
        Optional<Long> lengthUs, Map<String, Long> marksUs, List<Section> sections, List<Hold> holds) {
    public PlannedSoundtrack {
        marksUs = Collections.unmodifiableMap(new LinkedHashMap<>(marksUs));
        sections = List.copyOf(sections);
        holds = List.copyOf(holds);
    }

    public String name() {
        return script.name();
    }

    /** A section with its limits in microseconds. */
    public record Section(String name, String label, long fromUs, long toUs, SourceRef source) {
    }

    /** A window in which nothing may fire, microseconds. */
    public record Hold(long fromUs, long toUs, String reason, SourceRef source) {
    }
}
