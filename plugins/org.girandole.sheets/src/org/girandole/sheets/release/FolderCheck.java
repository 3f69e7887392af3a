package org.girandole.sheets.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Holds the files of a folder against those that its index names. */
final class FolderCheck {
    private FolderCheck() {
    }

    /** Every difference, by path; empty when the folder holds the release and nothing else. */
    static SortedMap<String, Difference> differences(Path folder, ReleaseIndex index) throws IOException {
        SortedMap<String, Difference> differences = new TreeMap<>();
        index.files().keySet().forEach(path -> differences.put(path, Difference.MISSING));
        List<Path> there;
        try (Stream<Path> walk = Files.walk(folder)) {
            there = walk.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)).toList();
        }
        for (Path file : there) {
            String path = folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
            if (path.equals(ReleaseJson.NAME)) {
                continue;
            }
            ReleasedFile released = index.files().get(path);
            if (released == null || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                differences.put(path, Difference.FOREIGN);
            } else if (!released.sha256().equals(Hashes.of(file))) {
                differences.put(path, Difference.CHANGED);
            } else {
                differences.remove(path);
            }
        }
        return differences;
    }

    /** How a file differs. */
    enum Difference {
        /** The index names it and it is not there. */
        MISSING,
        /** It is there, and the index does not name it. */
        FOREIGN,
        /** Its bytes are others. */
        CHANGED
    }
}
