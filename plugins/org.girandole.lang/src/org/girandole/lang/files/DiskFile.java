package org.girandole.lang.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/** Files that scripts name. */
public final class DiskFile {
    private static final int BLOCK = 1 << 16;

    private DiskFile() {
    }

    /** A path in a script, relative to the script; empty when no file can have such a name. */
    public static Optional<Path> beside(Path script, String written) {
        try {
            return Optional.of(script.resolveSibling(written).normalize());
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** Whether there is a plain file that may be read. */
    public static boolean readable(Path file) {
        return Files.isRegularFile(file) && Files.isReadable(file);
    }

    /** SHA-256 of a file, lower-case hexadecimal. */
    public static String sha256(Path file) throws IOException {
        MessageDigest digest = digest();
        try (InputStream in = Files.newInputStream(file)) {
            byte[] block = new byte[BLOCK];
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                digest.update(block, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** SHA-256 of text in UTF-8, lower-case hexadecimal. */
    public static String sha256(String text) {
        return HexFormat.of().formatHex(digest().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
