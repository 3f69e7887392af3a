package org.girandole.sheets.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.girandole.sheets.release.ReleaseIndex.IndexException;

/**
 * Keeps one stamp from standing on two different things. Looks at the release that would be replaced and at those beside it; what lies
 * elsewhere it does not know.
 */
final class StampUse {
    private StampUse() {
    }

    /**
     * Compares a finished release with those that carry its stamp.
     *
     * @param staging the new release, not yet in its place
     * @throws ReleaseException when one of them holds other files
     */
    static void check(Path staging, Path target) throws ReleaseException, IOException {
        ReleaseIndex now = index(staging).orElseThrow(() -> new IOException("the new release cannot be read back"));
        for (Path folder : folders(target)) {
            Optional<ReleaseIndex> other = index(folder);
            if (other.isPresent() && other.get().stamp().equals(now.stamp())) {
                Optional<String> differs = firstDifference(now, other.get());
                if (differs.isPresent()) {
                    throw new ReleaseException(ReleaseException.Reason.FOLDER, "Nothing was released: the stamp " + now.stampPrinted()
                            + " stands already on the release in '" + folder + "' (version " + other.get().version() + "), and its '"
                            + differs.get() + "' is another than this one would have (version " + now.version()
                            + "). Sheets with one stamp must be alike. Change something in the script, such as a comment that says why, or"
                            + " remove the other release when none of its sheets is in anybody's hands.");
                }
            }
        }
    }

    private static List<Path> folders(Path target) throws IOException {
        try (Stream<Path> beside = Files.list(target.getParent())) {
            return beside.filter(path -> !path.getFileName().toString().startsWith(".") && Files.isRegularFile(path.resolve(ReleaseJson.NAME)))
                    .sorted().toList();
        }
    }

    private static Optional<ReleaseIndex> index(Path folder) throws IOException {
        try {
            return Optional.of(ReleaseIndex.read(folder));
        } catch (IndexException e) {
            return Optional.empty();
        }
    }

    private static Optional<String> firstDifference(ReleaseIndex now, ReleaseIndex other) {
        Set<String> paths = new TreeSet<>(now.files().keySet());
        paths.addAll(other.files().keySet());
        return paths.stream().filter(path -> !Optional.ofNullable(now.files().get(path)).equals(Optional.ofNullable(other.files().get(path))))
                .findFirst();
    }
}
