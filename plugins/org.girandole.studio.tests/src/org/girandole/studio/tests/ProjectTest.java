package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.editor.Completions;
import org.girandole.studio.editor.ShowTemplates;
import org.girandole.studio.project.SeverityPage;
import org.girandole.studio.project.ShowNature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A show project as a whole: made by the wizard, checked whether its files are open or not. */
class ProjectTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @Test
    void wizardMakesAShowWithoutErrors() throws Exception {
        assertThat(shows.project().hasNature(ShowNature.ID)).isTrue();
        Ui.open(shows.show());
        // The wizard's show has no click track and says so; errors it has none. A deliberate mistake shows that the check has run.
        shows.edit("mark Turn  at bar 13", "mark Turn  at bar 13\n  mark Turn  at bar 14");
        Ui.until("the check has run", () -> !Ui.markers(shows.show()).isEmpty());
        shows.edit("\n  mark Turn  at bar 14", "");
        Ui.until("no errors are left", () -> Ui.markers(shows.project()).stream()
                .noneMatch(marker -> marker.getAttribute(IMarker.SEVERITY, -1) == IMarker.SEVERITY_ERROR));
    }

    @Test
    void filesThatAreNotOpenAreCheckedToo() throws Exception {
        IFile catalogue = shows.catalogue();
        String text = catalogue.readString();
        catalogue.write(text.replace("RedPeony75", "ScarletPeony75").getBytes(StandardCharsets.UTF_8), true, false, false, null);
        IMarker marker = Ui.marker(shows.show(), "unresolved-name");
        assertThat(marker.getAttribute(IMarker.MESSAGE, "")).contains("RedPeony75");
        catalogue.write(text.getBytes(StandardCharsets.UTF_8), true, false, false, null);
        Ui.until("the finding goes", () -> !Ui.hasMarker(shows.show(), "unresolved-name"));
    }

    @Test
    void thePreferencePageKnowsTheRules() {
        assertThat(SeverityPage.rules()).contains("off-mark", "separation", "pin-taken").doesNotContain("README");
    }

    @Test
    void templatesAreThere() {
        assertThat(ShowTemplates.store().getTemplates(ShowTemplates.CONTEXT)).extracting(template -> template.getName())
                .contains("cue", "section", "repeat", "shell", "hold", "waive");
    }

    /** The platform asks for proposals on a thread of its own. */
    @Test
    void templatesAreProposedOffTheDisplaysThread() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        ITextViewer viewer = Ui.viewer(editor);
        Ui.document(editor).replace(0, 0, "sec");
        List<String> proposed = Ui.get(CompletableFuture.supplyAsync(() -> Stream.of(new ShowTemplates().computeCompletionProposals(viewer, 3))
                .map(ICompletionProposal::getDisplayString).toList()));
        assertThat(proposed).anyMatch(name -> name.startsWith("section"));
    }

    /** Whoever asks after "at " wants a mark, not a template of several lines. */
    @Test
    void templatesAreProposedLastAndAtTheBeginningOfALineOnly() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        int line = Ui.caretAfter(editor, "section Opening from Start to Turn {\n");
        Ui.document(editor).replace(line, 0, "    at \n");
        assertThat(proposed(editor, line + "    at ".length(), "Turn")).noneMatch(ProjectTest::template);
        List<String> atFirst = proposed(editor, line + "    ".length(), "repeat");
        assertThat(atFirst).anyMatch(ProjectTest::template);
        assertThat(atFirst.stream().dropWhile(name -> !template(name))).allMatch(ProjectTest::template);
    }

    private static boolean template(String proposal) {
        return proposal.matches("(cue|section|repeat|shell|hold|waive) - .*");
    }

    private static List<String> proposed(ITextEditor editor, int offset, String one) {
        List<String> names = new ArrayList<>();
        Ui.until("a proposal " + one, () -> {
            names.clear();
            names.addAll(Ui.get(CompletableFuture.supplyAsync(() -> Stream.of(new Completions().computeCompletionProposals(Ui.viewer(editor), offset))
                    .map(ICompletionProposal::getDisplayString).toList())));
            return names.stream().anyMatch(name -> name.startsWith(one) && !template(name));
        });
        return names;
    }

    @Test
    void perspectiveHasTheProjectTheOutlineAndTheProblems() {
        assertThat(Ui.page().findViewReference("org.eclipse.ui.navigator.ProjectExplorer")).isNotNull();
        assertThat(Ui.page().findViewReference(IPageLayout.ID_OUTLINE)).isNotNull();
        assertThat(Ui.page().findViewReference(IPageLayout.ID_PROBLEM_VIEW)).isNotNull();
    }
}
