package org.girandole.plan;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;

/**
 * A show, computed.
 *
 * @param soundtracks in slot order
 * @param cues in firing order: by slot, then firing time, then key
 * @param troubles what kept parts of the script from being planned; they count as findings
 */
public record Plan(ShowScript script, ReleaseStamp stamp, List<PlannedSoundtrack> soundtracks, List<PlannedCue> cues,
        List<Finding> troubles) {
    public Plan {
        soundtracks = List.copyOf(soundtracks);
        cues = List.copyOf(cues);
        troubles = List.copyOf(troubles);
    }

    public Optional<PlannedSoundtrack> soundtrack(String name) {
        return soundtracks.stream().filter(s -> s.name().equals(name)).findFirst();
    }

    /**
     * The same plan in another wind. Firing times do not hang on the wind; distances and fallout, which the rules compute, do.
     *
     * @param wind empty for wind that nobody knows, which the rules take as calm
     */
    public Plan inWind(Optional<Site.Wind> wind) {
        return new Plan(script.withWind(wind), stamp, soundtracks, cues, troubles);
    }
}
