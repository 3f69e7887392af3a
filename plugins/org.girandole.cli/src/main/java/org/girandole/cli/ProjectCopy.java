package org.girandole.cli;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;

/** A copy of a project in which a file can be another than in the project itself, which is left alone. */
final class ProjectCopy implements AutoCloseable {
    /** Folders that no show reads from and that may be large. */
    private static final Set<String> LEFT_OUT = Set.of(".git", "target");

    private final Path folder;

    private ProjectCopy(Path folder) {
        this.folder = folder;
    }

    /** Copies a project. */
    static ProjectCopy of(Path root) throws IOException {
        ProjectCopy copy = new ProjectCopy(Files.createTempDirectory("girandole-project").toRealPath());
        try {
            copy.fill(root);
            return copy;
        } catch (IOException e) {
            copy.close();
            throw e;
        }
    }

    /** Where the copy lies. */
    Path folder() {
        return folder;
    }

    /**
     * The plan of a show with another content in place of one file.
     *
     * @param path of the file, in the project
     * @return empty when the script cannot be read whole
     */
    Optional<CheckedPlan> plan(Scripts place, String path, Path content) throws IOException {
        replace(path, content.toAbsolutePath());
        Path script = folder.resolve(place.root().relativize(place.script()).toString());
        return new ShowPipeline().check(script, folder).wholePlan();
    }

    /** Whether a file of the project, named with forward slashes, was read for a plan. */
    static boolean uses(CheckedPlan plan, String path) {
        return plan.plan().script().inputs().stream().anyMatch(input -> input.path().equals(path));
    }

    /** Puts another content in place of a file; an empty one takes the file out. */
    private void replace(String path, Path content) throws IOException {
        Path file = folder.resolve(path).normalize();
        if (!file.startsWith(folder)) {
            throw new IOException("'" + path + "' lies outside of the project");
        }
        // Deleted first: what lies here may be the project's own file under a second name.
        Files.deleteIfExists(file);
        if (Files.isRegularFile(content)) {
            Files.createDirectories(file.getParent());
            Files.copy(content, file);
        }
    }

    @Override
    public void close() throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        }
    }

    private void fill(Path root) throws IOException {
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path each, BasicFileAttributes attributes) throws IOException {
                if (!each.equals(root) && LEFT_OUT.contains(each.getFileName().toString())) {
                    return FileVisitResult.SKIP_SUBTREE;
                }
                Files.createDirectories(folder.resolve(root.relativize(each).toString()));
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path each, BasicFileAttributes attributes) throws IOException {
                if (attributes.isRegularFile()) {
                    link(each, folder.resolve(root.relativize(each).toString()));
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /** A second name where the file system has it, for music is large; else a copy. */
    private static void link(Path file, Path target) throws IOException {
        try {
            Files.createLink(target, file);
        } catch (UnsupportedOperationException | IOException e) {
            Files.copy(file, target);
        }
    }
}
