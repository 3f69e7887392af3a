package org.girandole.sheets.release;

import java.io.BufferedWriter;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The folder in which a release is put together; knows the size and hash of every file that was written. */
final class ReleaseFolder {
    private final Path root;
    private final SortedMap<String, ReleasedFile> files = new TreeMap<>();

    ReleaseFolder(Path root) {
        this.root = root;
    }

    /** Writes a binary file. */
    void write(String path, Bytes content) throws IOException {
        Path file = root.resolve(path);
        Files.createDirectories(file.getParent());
        MessageDigest digest = Hashes.sha256();
        long[] size = {0};
        try (OutputStream out = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW);
                OutputStream counted = new Counted(out, digest, size)) {
            content.writeTo(counted);
        }
        files.put(path, new ReleasedFile(path, size[0], HexFormat.of().formatHex(digest.digest())));
    }

    /** Writes a text file in UTF-8. */
    void writeText(String path, Text content) throws IOException {
        write(path, out -> {
            Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            content.writeTo(writer);
            writer.flush();
        });
    }

    /** What was written so far, by path. */
    List<ReleasedFile> files() {
        return List.copyOf(files.values());
    }

    /** Content of a binary file. */
    interface Bytes {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Content of a text file. */
    interface Text {
        void writeTo(Writer out) throws IOException;
    }

    private static final class Counted extends FilterOutputStream {
        private final MessageDigest digest;
        private final long[] size;

        Counted(OutputStream out, MessageDigest digest, long[] size) {
            super(out);
            this.digest = digest;
            this.size = size;
        }

        @Override
        public void write(int b) throws IOException {
            out.write(b);
            digest.update((byte) b);
            size[0]++;
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            out.write(bytes, offset, length);
            digest.update(bytes, offset, length);
            size[0] += length;
        }
    }
}
