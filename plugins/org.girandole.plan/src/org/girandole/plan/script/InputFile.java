package org.girandole.plan.script;

/** A file that the show was read from, for the stamp. Path relative to the project root, with forward slashes. */
public record InputFile(String path, String sha256) {
}
