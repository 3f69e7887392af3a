package org.girandole.lang.check;

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
public final class GitRevision implements AutoCloseable {
    private final Path folder;

    private GitRevision(Path folder) {
        this.folder = folder;
    }

    /**
     * Unpacks a project folder.
     *
     * @param root the project folder, inside a git work tree
     * @throws RevisionException when git is missing, the folder is no part of a repository, or there is no such revision
     */
    public static GitRevision of(Path root, String revision) throws RevisionException {
        if (revision.startsWith("-")) {
            throw new RevisionException("'" + revision + "' is no revision. Name a commit, branch or tag.");
        }
        try {
            GitRevision unpacked = new GitRevision(Files.createTempDirectory("girandole-revision"));
            unpacked.unpack(root, revision);
            return unpacked;
        } catch (IOException e) {
            throw new RevisionException("git could not be asked for revision '" + revision + "': " + e.getMessage()
                    + ". Is git installed?");
        }
    }

    /** Where the project folder of that revision lies. */
    public Path folder() {
        return folder;
    }

    @Override
    public void close() throws RevisionException {
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            throw new RevisionException("the temporary folder '" + folder + "' could not be removed: " + e.getMessage());
        }
    }

    private void unpack(Path root, String revision) throws IOException, RevisionException {
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
                throw new RevisionException("git has no revision '" + revision + "' of this project: "
                        + Files.readString(errors, StandardCharsets.UTF_8).strip());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } finally {
            Files.deleteIfExists(errors);
        }
    }

    /** The revision could not be had; the message is a sentence for the user. */
    public static final class RevisionException extends Exception {
        private static final long serialVersionUID = 1;

        RevisionException(String message) {
            super(message);
        }
    }
}
