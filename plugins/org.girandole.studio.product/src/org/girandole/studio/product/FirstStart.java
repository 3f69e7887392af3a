package org.girandole.studio.product;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.file.Path;
import java.util.Enumeration;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IWorkspace;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.girandole.studio.project.NewProjectWizard;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.workbench.RecordingJob;
import org.girandole.studio.views.workbench.ShowHub;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;
import org.osgi.service.prefs.BackingStoreException;

/** A new workspace gets the example as its first project, once: who deletes it does not get it again. */
public final class FirstStart implements IStartup {
    private static final String ID = "org.girandole.studio.product";
    private static final String DONE = "exampleGiven";
    private static final String FOLDER = "example/";
    private static final String SCRIPT = "harbour.show";
    private static final String MUSIC = "music";
    private static final String PIECE = "mid";

    @Override
    public void earlyStartup() {
        var preferences = InstanceScope.INSTANCE.getNode(ID);
        if (preferences.getBoolean(DONE, false)) {
            return;
        }
        IWorkspace workspace = ResourcesPlugin.getWorkspace();
        try {
            if (workspace.getRoot().getProjects().length == 0) {
                IProject project = workspace.getRoot().getProject("harbour-night");
                workspace.run(monitor -> make(project), new NullProgressMonitor());
                PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
                    open(project.getFile(SCRIPT));
                    playOnceSeen(project);
                });
            }
            preferences.putBoolean(DONE, true);
            preferences.flush();
        } catch (CoreException | BackingStoreException e) {
            ILog.of(FirstStart.class).error("The example could not be put into the workspace.", e);
        }
    }

    private static void make(IProject project) throws CoreException {
        IProjectDescription description = project.getWorkspace().newProjectDescription(project.getName());
        project.create(description, null);
        project.open(null);
        Bundle bundle = FrameworkUtil.getBundle(FirstStart.class);
        Enumeration<URL> entries = bundle.findEntries(FOLDER, "*", true);
        while (entries != null && entries.hasMoreElements()) {
            URL entry = entries.nextElement();
            String path = entry.getPath().substring(entry.getPath().indexOf(FOLDER) + FOLDER.length());
            if (!path.isEmpty() && !path.endsWith("/")) {
                copy(entry, project.getFile(path));
            }
        }
        NewProjectWizard.describe(project);
    }

    private static void copy(URL entry, IFile file) throws CoreException {
        if (file.getParent() instanceof IFolder folder && !folder.exists()) {
            folder.create(IResource.NONE, true, null);
        }
        try (InputStream in = entry.openStream()) {
            file.create(in, IResource.NONE, null);
        } catch (IOException e) {
            ILog.of(FirstStart.class).error(file.getName() + " of the example cannot be read.", e);
        }
    }

    /**
     * The recordings are too large to come with the program: they are played from the music that does. Not before the show is to be seen,
     * or the first check would have to listen to them too.
     */
    private static void playOnceSeen(IProject project) {
        Stage stage = ShowHub.get(PlatformUI.getWorkbench().getDisplay()).stage();
        stage.listen(new Stage.Listener() {
            @Override
            public void changed(Stage.Change change) {
                if (change == Stage.Change.SHOW && stage.plan().nothing() == null) {
                    stage.unlisten(this);
                    play(project);
                }
            }
        });
    }

    private static void play(IProject project) {
        try {
            for (IResource member : project.getFolder(MUSIC).members()) {
                if (PIECE.equals(member.getFileExtension())) {
                    RecordingJob.start(Path.of(member.getLocationURI()));
                }
            }
        } catch (CoreException e) {
            ILog.of(FirstStart.class).error("The music of the example cannot be played.", e);
        }
    }

    private static void open(IFile script) {
        IWorkbenchWindow[] windows = PlatformUI.getWorkbench().getWorkbenchWindows();
        if (windows.length > 0 && windows[0].getActivePage() != null && script.exists()) {
            // Script, time and site beside each other need all the room there is.
            windows[0].getShell().setMaximized(true);
            try {
                IDE.openEditor(windows[0].getActivePage(), script, true);
            } catch (PartInitException e) {
                ILog.of(FirstStart.class).error("The example cannot be opened.", e);
            }
        }
    }
}
