package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.CompareEditorInput;
import org.eclipse.compare.CompareUI;
import org.eclipse.compare.CompareViewerPane;
import org.eclipse.compare.structuremergeviewer.DiffNode;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Two versions of a script in the platform's compare editor. */
class CompareTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private static CompareEditorInput input(String left, String right) {
        CompareEditorInput input = new CompareEditorInput(new CompareConfiguration()) {
            @Override
            protected Object prepareInput(IProgressMonitor monitor) {
                return new DiffNode(new Version("now.show", left), new Version("before.show", right));
            }
        };
        input.setTitle("Two versions");
        return input;
    }

    /** Opens the compare editor; its tree of sections and cues when it is filled. */
    private static Tree compare(String left, String right) {
        CompareUI.openCompareEditor(input(left, right));
        Tree[] found = new Tree[1];
        Ui.until("sections and cues", () -> {
            found[0] = trees().filter(tree -> Widgets.texts(tree).contains("section")).findFirst().orElse(null);
            return found[0] != null;
        });
        return found[0];
    }

    private static Stream<Tree> trees() {
        return Widgets.all(Ui.window().getShell(), CompareViewerPane.class).stream().flatMap(pane -> Widgets.all(pane, Tree.class).stream())
                .filter(Tree::isVisible);
    }

    @Test
    void aReviewerSeesHowFarACueHasMoved() throws Exception {
        String before = shows.show().readString();
        String now = before.replace("at Start + 1 bar ", "at Start + 1 bar + 0.2 s ");
        String expected = """
                score Song
                  section Opening
                    A, C RedPeony75   moved 0.2 s   (at Start + 1 bar + 0.2 s | at Start + 1 bar)
                """;
        compare(now, before);
        Ui.until("how far the cue has moved, and nothing else", () -> {
            assertThat(trees().map(Widgets::texts)).contains(expected);
            return true;
        });
    }

    @Test
    void aCueLeadsToItsLines() throws Exception {
        String before = shows.show().readString();
        String now = before.replace("cue Last at End - 1 bar", "cue Last at End - 2 bars");
        Tree tree = compare(now, before);
        TreeItem leaf = tree.getItems()[0];
        while (leaf.getItemCount() > 0) {
            leaf = leaf.getItem(0);
        }
        tree.setSelection(leaf);
        Event open = new Event();
        open.item = leaf;
        tree.notifyListeners(SWT.Selection, open);
        tree.notifyListeners(SWT.DefaultSelection, open);
        Ui.until("both texts", () -> {
            List<String> texts = Widgets.all(Ui.window().getShell(), StyledText.class).stream().filter(StyledText::isVisible)
                    .map(StyledText::getText).toList();
            return texts.stream().anyMatch(text -> text.contains("End - 2 bars")) && texts.stream().anyMatch(text -> text.contains("End - 1 bar "));
        });
    }
}
