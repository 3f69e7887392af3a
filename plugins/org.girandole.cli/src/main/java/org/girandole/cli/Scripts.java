package org.girandole.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;

/** A script on the command line with its project. */
record Scripts(Path script, Path root) {
    /**
     * Finds the project of a script.
     *
     * @param root the folder the user names, or null: then the nearest folder upward with a {@code pom.xml}, or the script's own
     * @throws UserException when the script cannot be read or lies outside of the project
     */
    static Scripts of(Path script, Path root) {
        Path file = script.toAbsolutePath().normalize();
        if (!Files.exists(file)) {
            throw new UserException(ExitCode.USAGE, "there is no file '" + script + "'. Check the name and the folder.");
        }
        if (!Files.isRegularFile(file)) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' is not a file. Name a script, such as my-show.show.");
        }
        if (!Files.isReadable(file)) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' may not be read. Check its permissions.");
        }
        Path project = root == null ? project(file) : root.toAbsolutePath().normalize();
        if (!file.startsWith(project)) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' lies outside of the project folder '" + root + "'.");
        }
        return new Scripts(file, project);
    }

    private static Path project(Path file) {
        for (Path folder = file.getParent(); folder != null; folder = folder.getParent()) {
            if (Files.isRegularFile(folder.resolve("pom.xml"))) {
                return folder;
            }
        }
        return file.getParent();
    }

    /** Turns a path inside the project into one that can be opened from the current folder. */
    UnaryOperator<String> display() {
        Path here = Path.of("").toAbsolutePath();
        return path -> {
            Path file = root.resolve(path).normalize();
            Path shown = file.startsWith(here) ? here.relativize(file) : file;
            return shown.toString().replace(shown.getFileSystem().getSeparator(), "/");
        };
    }
}
