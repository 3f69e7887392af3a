package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;
import org.girandole.music.analysis.Onset;
import org.girandole.music.analysis.Silence;

/**
 * The soundtrack's audio as the language found it on disk.
 *
 * @param path as written, relative to the script that names it, resolved to the project root
 * @param found facts of the file, empty when it is not there or not readable
 * @param trouble why facts are missing, when they are
 * @param expectedSha256 the hash the script says the file must have
 * @param heard what was heard in it; empty when nobody listened
 */
public record AudioFile(String path, Optional<Facts> found, Optional<String> trouble, Optional<String> expectedSha256,
        SourceRef source, Optional<Heard> heard) {
    /** One that nobody listened to. */
    public AudioFile(String path, Optional<Facts> found, Optional<String> trouble, Optional<String> expectedSha256, SourceRef source) {
        this(path, found, trouble, expectedSha256, source, Optional.empty());
    }

    /**
     * What was read from the file.
     *
     * @param remarks sentences on what was wrong with it but could be lived with
     */
    public record Facts(String sha256, long lengthUs, int sampleRateHz, int channels, List<String> remarks) {
        public Facts {
            remarks = List.copyOf(remarks);
        }

        /** Of a sound file with nothing wrong. */
        public Facts(String sha256, long lengthUs, int sampleRateHz, int channels) {
            this(sha256, lengthUs, sampleRateHz, channels, List.of());
        }
    }

    /** What was heard, in order of time. */
    public record Heard(List<Onset> onsets, List<Silence> silences) {
        public Heard {
            onsets = List.copyOf(onsets);
            silences = List.copyOf(silences);
        }
    }
}
