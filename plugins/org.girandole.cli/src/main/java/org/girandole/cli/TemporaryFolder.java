package org.girandole.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** A folder that is gone afterwards. */
record TemporaryFolder(Path path) implements AutoCloseable {
    static TemporaryFolder create() {
        try {
            return new TemporaryFolder(Files.createTempDirectory("girandole-project").toRealPath());
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "no temporary folder could be made: " + e.getMessage());
        }
    }

    @Override
    public void close() {
        try (Stream<Path> walk = Files.walk(path)) {
            for (Path each : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "the temporary folder '" + path + "' could not be removed: " + e.getMessage());
        }
    }
}
