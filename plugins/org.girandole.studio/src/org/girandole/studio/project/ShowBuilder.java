package org.girandole.studio.project;

import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceDelta;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.girandole.studio.client.Findings;
import org.girandole.studio.client.ShowClient;

/** Tells the server of every file that changed without being open: scripts, sound, marks, lock files. Findings come by themselves. */
public final class ShowBuilder extends IncrementalProjectBuilder {
    public static final String ID = "org.girandole.studio.builder";

    @Override
    protected IProject[] build(int kind, Map<String, String> args, IProgressMonitor monitor) throws CoreException {
        List<String> changed = new ArrayList<>();
        List<String> deleted = new ArrayList<>();
        IResourceDelta delta = kind == FULL_BUILD ? null : getDelta(getProject());
        if (delta == null) {
            getProject().accept(proxy -> {
                if (proxy.getType() == IResource.FILE) {
                    add(proxy.requestResource(), changed);
                }
                return !proxy.isDerived();
            }, IResource.NONE);
        } else {
            delta.accept(change -> {
                boolean content = change.getKind() != IResourceDelta.CHANGED || (change.getFlags() & IResourceDelta.CONTENT) != 0;
                if (change.getResource().getType() == IResource.FILE && content) {
                    add(change.getResource(), change.getKind() == IResourceDelta.REMOVED ? deleted : changed);
                }
                return true;
            });
        }
        if (!changed.isEmpty() || !deleted.isEmpty()) {
            ShowClient.get().filesChanged(changed, deleted);
        }
        if (delta == null) {
            ShowClient.get().showFindingsAgain();
        }
        return new IProject[0];
    }

    private static void add(IResource file, List<String> to) {
        URI location = file.getLocationURI();
        if (location != null && "file".equals(location.getScheme())) {
            to.add(Path.of(location).toUri().toString());
        }
    }

    @Override
    protected void clean(IProgressMonitor monitor) throws CoreException {
        getProject().deleteMarkers(Findings.MARKER, true, IResource.DEPTH_INFINITE);
    }
}
