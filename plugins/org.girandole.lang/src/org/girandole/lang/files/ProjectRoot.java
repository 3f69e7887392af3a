package org.girandole.lang.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;
import org.eclipse.emf.ecore.util.EcoreUtil;

/** The folder that a show may read files from, remembered on its resource set. Without one it is the script's own folder. */
public final class ProjectRoot extends AdapterImpl {
    private final Path root;

    private ProjectRoot(Path root) {
        this.root = root;
    }

    /** Sets the root for all scripts of a resource set. */
    public static void set(ResourceSet resources, Path root) {
        resources.eAdapters().removeIf(ProjectRoot.class::isInstance);
        resources.eAdapters().add(new ProjectRoot(root.toAbsolutePath().normalize()));
    }

    /** The root that a script lives under. */
    public static Path of(Resource script) {
        ResourceSet resources = script.getResourceSet();
        ProjectRoot set = resources == null ? null
                : (ProjectRoot) EcoreUtil.getExistingAdapter(resources, ProjectRoot.class);
        return set != null ? set.root : path(script.getURI()).getParent();
    }

    @Override
    public boolean isAdapterForType(Object type) {
        return type == ProjectRoot.class;
    }

    /** The file of a URI. URIs of other schemes are treated as if their path were one of the file system. */
    public static Path path(URI uri) {
        String file = uri.isFile() ? uri.toFileString() : "/" + URI.decode(uri.path() == null ? uri.toString() : uri.path());
        return Path.of(file).toAbsolutePath().normalize();
    }

    /** A file as the user knows it: relative to the root, with forward slashes. */
    public static String relative(Path root, Path file) {
        Path absolute = file.toAbsolutePath().normalize();
        return (absolute.startsWith(root) ? root.relativize(absolute) : absolute).toString().replace('\\', '/');
    }

    /** Whether a file lies below the root, symbolic links followed as far as the file exists. */
    public static boolean contains(Path root, Path file) {
        if (!file.toAbsolutePath().normalize().startsWith(root)) {
            return false;
        }
        try {
            return !Files.exists(file) || file.toRealPath().startsWith(root.toRealPath());
        } catch (IOException e) {
            return false;
        }
    }
}
