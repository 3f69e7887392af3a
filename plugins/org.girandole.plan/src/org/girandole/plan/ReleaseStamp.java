package org.girandole.plan;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.girandole.plan.script.InputFile;

/**
 * What makes two sheets belong together: a hash of everything the show was read from.
 *
 * @param full SHA-256 in hex over the sorted list of input paths and hashes
 */
public record ReleaseStamp(String full) {
    /** The stamp of these inputs, independent of their order. */
    public static ReleaseStamp of(List<InputFile> inputs) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            inputs.stream()
                    .map(input -> input.path() + "\0" + input.sha256() + "\n")
                    .sorted()
                    .forEach(line -> digest.update(line.getBytes(StandardCharsets.UTF_8)));
            return new ReleaseStamp(HexFormat.of().formatHex(digest.digest()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** The form printed on every page: two groups of four that a person can read out and compare. */
    public String printed() {
        String upper = full.toUpperCase(Locale.ROOT);
        return upper.substring(0, 4) + "-" + upper.substring(4, 8);
    }
}
