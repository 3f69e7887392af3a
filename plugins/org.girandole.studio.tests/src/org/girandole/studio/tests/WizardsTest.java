package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.IWizardPage;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.PlatformUI;
import org.girandole.studio.project.NewProjectWizard;
import org.girandole.studio.project.NewShowWizard;
import org.girandole.studio.project.ShowNature;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The wizards as somebody fills them in: what they refuse and why, and what they leave behind. */
class WizardsTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private WizardDialog dialog;

    private IWizardPage open(String id) throws Exception {
        INewWizard wizard = (INewWizard) PlatformUI.getWorkbench().getNewWizardRegistry().findWizard(id).createWizard();
        wizard.init(PlatformUI.getWorkbench(), new StructuredSelection(shows.project()));
        dialog = new WizardDialog(Ui.window().getShell(), wizard);
        dialog.setBlockOnOpen(false);
        dialog.open();
        Ui.settle();
        return dialog.getCurrentPage();
    }

    @AfterEach
    void close() throws Exception {
        dialog.close();
        Ui.page().closeAllEditors(false);
        IProject made = ResourcesPlugin.getWorkspace().getRoot().getProject("River Fair 2");
        if (made.exists()) {
            made.delete(true, true, null);
        }
    }

    private Button finish() {
        return Widgets.button(dialog.getShell(), "Finish").orElseThrow();
    }

    /** Fills in the field that stands alone in its line: the name. */
    private void name(String current, String name) {
        Text field = Widgets.all(dialog.getShell(), Text.class).stream()
                .filter(text -> text.getEditable() && text.isEnabled() && text.getText().equals(current)).findFirst().orElseThrow();
        field.setText(name);
        Ui.settle();
    }

    @Test
    void aNewProjectNeedsANameWithALetter() throws Exception {
        IWizardPage page = open(NewProjectWizard.ID);
        assertThat(finish().isEnabled()).as("without a name").isFalse();
        name("", "2027");
        assertThat(finish().isEnabled()).isFalse();
        assertThat(page.getErrorMessage()).isEqualTo("The name of the project becomes the name of the show; it needs a letter from a to z.");
        name("2027", shows.project().getName());
        assertThat(finish().isEnabled()).as("a project of this name is there").isFalse();
        assertThat(page.getErrorMessage()).isNotBlank();
        name(shows.project().getName(), "River Fair 2");
        assertThat(page.getErrorMessage()).isNull();
        assertThat(finish().isEnabled()).isTrue();
    }

    @Test
    void aNewProjectIsMadeOpenedAndChecksWithoutErrors() throws Exception {
        open(NewProjectWizard.ID);
        name("", "River Fair 2");
        Widgets.press(finish());
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject("River Fair 2");
        IFile show = project.getFile("river-fair-2.show");
        Ui.until("the script is opened", () -> Ui.page().getActiveEditor() != null
                && Ui.page().getActiveEditor().getEditorInput().getName().equals("river-fair-2.show"));
        assertThat(dialog.getShell()).as("the wizard is done").isNull();
        assertThat(project.hasNature(ShowNature.ID)).isTrue();
        assertThat(project.getDefaultCharset()).isEqualTo("UTF-8");
        for (String file : new String[] {"catalogue.show", "pom.xml", "README.md", ".gitignore"}) {
            assertThat(project.getFile(file).exists()).as(file).isTrue();
        }
        assertThat(show.readString()).contains("show RiverFair2 \"River fair 2\"").doesNotContain("@");
        assertThat(project.getFile("README.md").readString()).doesNotContain("@FILE@").doesNotContain("@NAME@");
        // A mistake shows that the check has run; without it there are no errors.
        show.write(show.readString().replace("RedPeony75", "RedPeony57").getBytes(java.nio.charset.StandardCharsets.UTF_8), true, false, false, null);
        Ui.marker(show, "unresolved-name");
        show.write(show.readString().replace("RedPeony57", "RedPeony75").getBytes(java.nio.charset.StandardCharsets.UTF_8), true, false, false, null);
        Ui.until("no errors", () -> Ui.markers(project).stream()
                .noneMatch(marker -> marker.getAttribute(IMarker.SEVERITY, -1) == IMarker.SEVERITY_ERROR));
    }

    @Test
    void aNewShowGoesIntoTheFolderAndOpens() throws Exception {
        IWizardPage page = open(NewShowWizard.ID);
        assertThat(finish().isEnabled()).as("without a name").isFalse();
        name("", "99");
        assertThat(finish().isEnabled()).isFalse();
        assertThat(page.getErrorMessage()).isEqualTo("The name of the file becomes the name of the show; it needs a letter from a to z.");
        name("99", shows.show().getName());
        assertThat(finish().isEnabled()).as("a file of this name is there").isFalse();
        name(shows.show().getName(), "encore");
        assertThat(page.getErrorMessage()).isNull();
        assertThat(finish().isEnabled()).isTrue();
        Widgets.press(finish());
        Ui.until("the script is opened", () -> Ui.page().getActiveEditor() != null
                && Ui.page().getActiveEditor().getEditorInput().getName().equals("encore.show"));
        IFile made = shows.project().getFile("encore.show");
        assertThat(made.readString()).contains("show Encore \"Encore\"").contains("use \"catalogue.show\"").doesNotContain("audio");
    }
}
