package org.girandole.lang.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.girandole.music.analysis.AnalysisCache;
import org.girandole.music.analysis.TrackAnalysis;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;

/**
 * A recording and what is heard in it. It is listened to once; later the cache knows by the hash of the file what was heard.
 *
 * @param heard empty for a recording too long to be listened to in passing
 */
public record Listening(AudioFacts facts, Optional<TrackAnalysis> heard) {
    /** A recording longer than this is not listened to while a script is checked: that would take half a minute and more. */
    public static final long LONGEST_US = 20L * 60 * 1_000_000;

    /**
     * Listens to a recording, or remembers it.
     *
     * @throws IOException when it cannot be read; the message is for the user
     */
    public static Listening to(Path audio) throws IOException {
        AnalysisCache cache = AnalysisCache.usual();
        Optional<TrackAnalysis> kept = cache.kept(audio);
        if (kept.isPresent()) {
            return new Listening(kept.get().facts(), kept);
        }
        AudioFacts facts = AudioFiles.facts(audio);
        if (facts.lengthUs() > LONGEST_US) {
            return new Listening(facts, Optional.empty());
        }
        TrackAnalysis heard = cache.analysis(audio);
        return new Listening(heard.facts(), Optional.of(heard));
    }
}
