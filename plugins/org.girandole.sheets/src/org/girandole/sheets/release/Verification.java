package org.girandole.sheets.release;

import java.util.List;

/**
 * What a look at a release folder found.
 *
 * @param label the show's own title
 * @param stamp in its printed form
 * @param version of the program that made the release
 * @param files how many the release has, {@code release.json} among them
 * @param indexSha256 hash of {@code release.json}, which names the hash of every other file: compare it with one that was written down
 *     elsewhere, and nothing in the folder can have been changed unseen
 * @param faults sentences without a stop, each with the name of a file; empty when the folder is whole and unaltered
 */
public record Verification(String label, String stamp, String version, int files, String indexSha256, List<String> faults) {
    public Verification {
        faults = List.copyOf(faults);
    }

    /** Whether nothing is wrong. */
    public boolean whole() {
        return faults.isEmpty();
    }
}
