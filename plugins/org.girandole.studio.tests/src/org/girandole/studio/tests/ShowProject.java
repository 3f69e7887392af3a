package org.girandole.studio.tests;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILogListener;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.girandole.studio.client.Waiting;
import org.girandole.studio.project.NewProjectWizard;
import org.girandole.studio.project.ShowPerspective;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A project of its own for each test, with the show that the wizard makes. Afterwards nothing may have been logged as an error, and the
 * display's thread may never have waited for the server longer than it is allowed to.
 */
final class ShowProject implements BeforeEachCallback, AfterEachCallback {
    private final StringBuffer errors = new StringBuffer();
    private final ILogListener log = this::logged;
    private IProject project;
    private IFile show;

    @Override
    public void beforeEach(ExtensionContext context) throws CoreException {
        Platform.addLogListener(log);
        if (Ui.page().findView("org.eclipse.ui.internal.introview") != null) {
            Ui.page().hideView(Ui.page().findView("org.eclipse.ui.internal.introview"));
        }
        if (!ShowPerspective.ID.equals(Ui.page().getPerspective().getId())) {
            org.eclipse.ui.PlatformUI.getWorkbench().showPerspective(ShowPerspective.ID, Ui.window());
        }
        String name = (context.getRequiredTestClass().getSimpleName() + "-" + context.getRequiredTestMethod().getName()).toLowerCase(java.util.Locale.ROOT);
        project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
        show = NewProjectWizard.create(project, null);
    }

    @Override
    public void afterEach(ExtensionContext context) throws CoreException {
        Ui.page().closeAllEditors(false);
        Ui.settle();
        project.delete(true, true, null);
        Ui.settle();
        Platform.removeLogListener(log);
        if (errors.length() > 0) {
            throw new AssertionError("logged as an error: " + errors);
        }
        if (Waiting.tooLong() > 0) {
            throw new AssertionError("the display's thread was to wait for " + Waiting.longestAskedMs() + " ms");
        }
    }

    private void logged(IStatus status, String plugin) {
        if (status.getSeverity() == IStatus.ERROR) {
            errors.append(plugin).append(": ").append(status.getMessage());
            if (status.getException() != null) {
                java.io.StringWriter trace = new java.io.StringWriter();
                status.getException().printStackTrace(new java.io.PrintWriter(trace));
                errors.append('\n').append(trace);
            }
            errors.append('\n');
        }
    }

    IProject project() {
        return project;
    }

    /** The script of the show. */
    IFile show() {
        return show;
    }

    IFile catalogue() {
        return project.getFile("catalogue.show");
    }

    /** Changes the script on disk before it is opened; however many blanks stand between two words. */
    void edit(String old, String now) throws CoreException {
        String text = show.readString();
        Matcher found = Pattern.compile(Stream.of(old.split(" +")).map(Pattern::quote).collect(Collectors.joining(" +"))).matcher(text);
        if (!found.find()) {
            throw new AssertionError("not in the script: " + old);
        }
        show.write(found.replaceAll(Matcher.quoteReplacement(now)).getBytes(StandardCharsets.UTF_8), true, false, false, null);
    }
}
