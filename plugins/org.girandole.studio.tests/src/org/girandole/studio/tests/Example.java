package org.girandole.studio.tests;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.girandole.studio.project.NewProjectWizard;

/** The invented show of the examples as a project of the workspace, with every file but what a build has made. */
final class Example {
    private static final Path FOLDER = Path.of(System.getProperty("girandole.examples"), "harbour-night").normalize();

    private Example() {
    }

    /** Makes the project; its script. The caller deletes it. */
    static IFile create() throws CoreException {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject("harbour-night");
        ResourcesPlugin.getWorkspace().run(monitor -> {
            project.create(monitor);
            project.open(monitor);
            try {
                Files.walkFileTree(FOLDER, new SimpleFileVisitor<>() {
                    @Override
                    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                        return folder.endsWith("target") ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                    }

                    @Override
                    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                        copy(project.getFile(IPath.fromPortableString(FOLDER.relativize(file).toString())), Files.readAllBytes(file));
                        return FileVisitResult.CONTINUE;
                    }
                });
            } catch (IOException e) {
                throw new AssertionError("the example cannot be read", e);
            }
            NewProjectWizard.describe(project);
        }, null);
        return project.getFile("harbour.show");
    }

    private static void copy(IFile file, byte[] content) {
        try {
            if (file.getParent() instanceof IFolder folder && !folder.exists()) {
                folder.create(true, true, null);
            }
            file.write(content, true, false, false, null);
        } catch (CoreException e) {
            throw new AssertionError(e);
        }
    }
}
