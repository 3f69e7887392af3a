package org.girandole.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.stream.Stream;

/** The example of this repository, copied so that it can be edited. */
final class Example {
    private static final Path FOLDER = Path.of("../../examples/harbour-night").toAbsolutePath().normalize();

    private Example() {
    }

    /** Copies the scripts. */
    static void copyTo(Path to) throws IOException {
        try (Stream<Path> walk = Files.walk(FOLDER)) {
            for (Path path : walk.filter(p -> Files.isRegularFile(p) && p.toString().endsWith(".show")).toList()) {
                Path target = to.resolve(FOLDER.relativize(path).toString());
                Files.createDirectories(target.getParent());
                Files.copy(path, target, StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }
}
