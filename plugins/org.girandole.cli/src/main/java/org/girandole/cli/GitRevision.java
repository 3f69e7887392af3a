package org.girandole.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** A project as it was in a revision, unpacked beside the repository's own state, which is left alone. */
final class GitRevision implements AutoCloseable {
    private final Path folder;

    private GitRevision(Path folder) {
        this.folder = folder;
    }

    /**
     * Unpacks a project folder.
     *
     * @param root the project folder, inside a git work tree
     * @throws UserException when git is missing, the folder is no part of a repository, or there is no such revision
     */
    static GitRevision of(Path root, String revision) {
        if (revision.startsWith("-")) {
            throw new UserException(ExitCode.USAGE, "'" + revision + "' is no revision. Name a commit, branch or tag.");
        }
        try {
            GitRevision unpacked = new GitRevision(Files.createTempDirectory("girandole-revision"));
            unpacked.unpack(root, revision);
            return unpacked;
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "git could not be asked for revision '" + revision + "': " + e.getMessage()
                    + ". Is git installed?");
        }
    }

    /** Where the project folder of that revision lies. */
    Path folder() {
        return folder;
    }

    @Override
    public void close() {
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "the temporary folder '" + folder + "' could not be removed: " + e.getMessage());
        }
    }

    private void unpack(Path root, String revision) throws IOException {
        Path errors = Files.createTempFile("girandole-git", ".txt");
        Process git = new ProcessBuilder(List.of("git", "-C", root.toString(), "archive", "--format=zip", revision, "--", "."))
                .redirectError(errors.toFile()).start();
        git.getOutputStream().close();
        try (InputStream out = git.getInputStream(); ZipInputStream zip = new ZipInputStream(out, StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                Path file = folder.resolve(entry.getName()).normalize();
                if (!entry.isDirectory() && file.startsWith(folder)) {
                    Files.createDirectories(file.getParent());
                    Files.copy(zip, file);
                }
            }
            out.transferTo(OutputStream.nullOutputStream());
            int code = git.waitFor();
            if (code != 0) {
                close();
                throw new UserException(ExitCode.USAGE, "git has no revision '" + revision + "' of this project: "
                        + Files.readString(errors, StandardCharsets.UTF_8).strip());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } finally {
            Files.deleteIfExists(errors);
        }
    }
}
