package org.girandole.studio.project;

import java.util.Map;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.dialogs.WizardNewProjectCreationPage;
import org.eclipse.ui.ide.IDE;

/** Begins a show in a project of its own: the same small show as the command line's. */
public final class NewProjectWizard extends Wizard implements INewWizard {
    public static final String ID = "org.girandole.studio.newProject";

    private IWorkbench workbench;
    private WizardNewProjectCreationPage page;

    @Override
    public void init(IWorkbench where, IStructuredSelection selection) {
        workbench = where;
        setWindowTitle("New Show Project");
    }

    @Override
    public void addPages() {
        page = new WizardNewProjectCreationPage("project") {
            @Override
            protected boolean validatePage() {
                boolean valid = super.validatePage();
                if (valid && StartFiles.fileName(getProjectName()).isEmpty()) {
                    setErrorMessage("The name of the project becomes the name of the show; it needs a letter from a to z.");
                    return false;
                }
                return valid;
            }
        };
        page.setTitle("Show project");
        page.setDescription("A small show that checks clean and can be released, to start from.");
        addPage(page);
    }

    @Override
    public boolean performFinish() {
        IProject project = page.getProjectHandle();
        try {
            IFile show = create(project, page.useDefaults() ? null : page.getLocationPath());
            IDE.openEditor(workbench.getActiveWorkbenchWindow().getActivePage(), show, true);
            return true;
        } catch (CoreException e) {
            page.setErrorMessage("The project could not be made: " + e.getMessage());
            return false;
        }
    }

    /**
     * Makes the project and its files. Files that are there already stay as they are.
     *
     * @param location null for the workspace's own folder
     * @return the script to open
     */
    public static IFile create(IProject project, IPath location) throws CoreException {
        IFile[] show = new IFile[1];
        ResourcesPlugin.getWorkspace().run(monitor -> {
            IProjectDescription description = ResourcesPlugin.getWorkspace().newProjectDescription(project.getName());
            description.setLocation(location);
            project.create(description, monitor);
            project.open(monitor);
            String name = StartFiles.fileName(project.getName());
            for (Map.Entry<String, String> entry : StartFiles.project(name).entrySet()) {
                IFile file = project.getFile(entry.getKey());
                if (!file.exists()) {
                    file.write(entry.getValue().getBytes(java.nio.charset.StandardCharsets.UTF_8), true, false, false, monitor);
                }
            }
            show[0] = project.getFile(name + ".show");
            describe(project);
        }, new NullProgressMonitor());
        return show[0];
    }

    /** Makes a project one of shows, in UTF-8. */
    public static void describe(IProject project) throws CoreException {
        IProjectDescription now = project.getDescription();
        now.setNatureIds(new String[] {ShowNature.ID});
        project.setDescription(now, null);
        project.setDefaultCharset("UTF-8", null);
    }
}
