package org.girandole.plan.script;

import java.util.Optional;

/**
 * The soundtrack's audio as the language found it on disk.
 *
 * @param path as written, relative to the script that names it, resolved to the project root
 * @param found facts of the file, empty when it is not there or not readable
 * @param trouble why facts are missing, when they are
 * @param expectedSha256 the hash the script says the file must have
 */
public record AudioFile(String path, Optional<Facts> found, Optional<String> trouble, Optional<String> expectedSha256,
        SourceRef source) {
    /** What was read from the file. */
    public record Facts(String sha256, long lengthUs, int sampleRateHz, int channels) {
    }
}
