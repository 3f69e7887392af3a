package org.girandole.studio.project;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.girandole.studio.editor.ReferencesView;

/** Script in the middle, project and outline left, site right, time and problems below. */
public final class ShowPerspective implements IPerspectiveFactory {
    public static final String ID = "org.girandole.studio.perspective";
    private static final String VIEWS = "org.girandole.studio.views.";
    private static final String PROJECTS = "org.eclipse.ui.navigator.ProjectExplorer";

    @Override
    public void createInitialLayout(IPageLayout layout) {
        String editors = layout.getEditorArea();
        layout.addView(PROJECTS, IPageLayout.LEFT, 0.16f, editors);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.46f, editors);
        below.addView(VIEWS + "timeline");
        // What is wrong is never behind what is beautiful.
        IFolderLayout problems = layout.createFolder("problems", IPageLayout.BOTTOM, 0.72f, "below");
        problems.addView(IPageLayout.ID_PROBLEM_VIEW);
        problems.addPlaceholder(ReferencesView.ID);
        problems.addPlaceholder(IPageLayout.ID_PROGRESS_VIEW);
        IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.68f, editors);
        right.addView(VIEWS + "site");
        right.addView(VIEWS + "sky");
        right.addView(VIEWS + "sheets");
        layout.addView(IPageLayout.ID_OUTLINE, IPageLayout.BOTTOM, 0.55f, PROJECTS);
        layout.addShowViewShortcut(PROJECTS);
        layout.addShowViewShortcut(IPageLayout.ID_OUTLINE);
        layout.addShowViewShortcut(IPageLayout.ID_PROBLEM_VIEW);
        for (String view : new String[] {"timeline", "site", "sky", "sheets"}) {
            layout.addShowViewShortcut(VIEWS + view);
        }
        layout.addNewWizardShortcut(NewProjectWizard.ID);
        layout.addNewWizardShortcut(NewShowWizard.ID);
    }
}
