package org.girandole.studio.client;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.IResourceChangeListener;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.FileChangeType;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceFoldersChangeEvent;
import org.girandole.studio.project.ShowNature;

/** The open show projects are the server's folders. */
final class ShowFolders implements IResourceChangeListener {
    private final ServerLink link;
    private final Map<String, WorkspaceFolder> known = new LinkedHashMap<>();

    ShowFolders(ServerLink link) {
        this.link = link;
    }

    void listen() {
        ResourcesPlugin.getWorkspace().addResourceChangeListener(this, IResourceChangeEvent.POST_CHANGE);
    }

    void ignore() {
        ResourcesPlugin.getWorkspace().removeResourceChangeListener(this);
    }

    /** The folders as they are, which are then known. */
    synchronized List<WorkspaceFolder> now() {
        known.clear();
        known.putAll(open());
        return List.copyOf(known.values());
    }

    private static Map<String, WorkspaceFolder> open() {
        Map<String, WorkspaceFolder> folders = new LinkedHashMap<>();
        for (IProject project : ResourcesPlugin.getWorkspace().getRoot().getProjects()) {
            Optional<String> uri = project.isOpen() ? OpenTexts.uri(project.getLocationURI()) : Optional.empty();
            try {
                if (uri.isPresent() && project.hasNature(ShowNature.ID)) {
                    folders.put(uri.get(), new WorkspaceFolder(uri.get(), project.getName()));
                }
            } catch (CoreException e) {
                // Closed or deleted just now; the next event says so.
            }
        }
        return folders;
    }

    @Override
    public void resourceChanged(IResourceChangeEvent event) {
        update();
    }

    private synchronized void update() {
        Map<String, WorkspaceFolder> now = open();
        List<WorkspaceFolder> added = new ArrayList<>(now.values());
        added.removeAll(known.values());
        List<WorkspaceFolder> removed = new ArrayList<>(known.values());
        removed.removeAll(now.values());
        if (added.isEmpty() && removed.isEmpty()) {
            return;
        }
        known.clear();
        known.putAll(now);
        link.send(server -> server.getWorkspaceService()
                .didChangeWorkspaceFolders(new DidChangeWorkspaceFoldersParams(new WorkspaceFoldersChangeEvent(added, removed))));
    }

    void filesChanged(List<String> changed, List<String> deleted) {
        List<FileEvent> events = new ArrayList<>();
        changed.forEach(uri -> events.add(new FileEvent(uri, FileChangeType.Changed)));
        deleted.forEach(uri -> events.add(new FileEvent(uri, FileChangeType.Deleted)));
        if (!events.isEmpty()) {
            link.send(server -> server.getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(events)));
        }
    }
}
