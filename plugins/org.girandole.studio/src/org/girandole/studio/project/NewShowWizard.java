package org.girandole.studio.project;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.dialogs.WizardNewFileCreationPage;
import org.eclipse.ui.ide.IDE;

/** A new script in a project that is there. */
public final class NewShowWizard extends Wizard implements INewWizard {
    public static final String ID = "org.girandole.studio.newShow";

    private IWorkbench workbench;
    private IStructuredSelection selection;
    private WizardNewFileCreationPage page;

    @Override
    public void init(IWorkbench where, IStructuredSelection selected) {
        workbench = where;
        selection = selected;
        setWindowTitle("New Show");
    }

    @Override
    public void addPages() {
        page = new WizardNewFileCreationPage("show", selection) {
            @Override
            protected InputStream getInitialContents() {
                return new ByteArrayInputStream(StartFiles.show(name(getFileName())).getBytes(StandardCharsets.UTF_8));
            }

            @Override
            protected boolean validatePage() {
                boolean valid = super.validatePage();
                if (valid && name(getFileName()).isEmpty()) {
                    setErrorMessage("The name of the file becomes the name of the show; it needs a letter from a to z.");
                    return false;
                }
                return valid;
            }
        };
        page.setFileExtension("show");
        page.setTitle("Show");
        page.setDescription("A small show to start from. It uses the file catalogue.show of its folder.");
        addPage(page);
    }

    private static String name(String file) {
        return StartFiles.fileName(file.replaceFirst("\\.show$", ""));
    }

    @Override
    public boolean performFinish() {
        IFile file = page.createNewFile();
        if (file == null) {
            return false;
        }
        try {
            IDE.openEditor(workbench.getActiveWorkbenchWindow().getActivePage(), file, true);
        } catch (PartInitException e) {
            page.setErrorMessage("The file was made, but cannot be opened: " + e.getMessage());
            return false;
        }
        return true;
    }
}
