package org.girandole.sheets.release;

/**
 * A file of a release.
 *
 * @param path inside the folder, with forward slashes
 */
public record ReleasedFile(String path, long bytes, String sha256) {
}
