package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.core.commands.operations.IOperationHistory;
import org.eclipse.core.commands.operations.IUndoableOperation;
import org.eclipse.core.commands.operations.ObjectUndoContext;
import org.eclipse.core.commands.operations.OperationHistoryFactory;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.commands.operations.IUndoContext;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.IAdaptable;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.eclipse.ui.views.contentoutline.ContentOutlinePage;
import org.eclipse.ui.views.contentoutline.IContentOutlinePage;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.editor.Completions;
import org.girandole.studio.editor.Hovers;
import org.girandole.studio.editor.RenameHandler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What the server offers, as the editor shows it; every change is one step of undo. */
class ServiceTest {
    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @Test
    void completesAMarkAndUndoesItInOneStep() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        int offset = Ui.caretAfter(editor, "section Opening from Start to Turn {");
        document.replace(offset, 0, "\n    at ");
        offset += "\n    at ".length();
        editor.selectAndReveal(offset, 0);
        String before = document.get();
        ICompletionProposal mark = proposal(editor, offset, "Turn");
        ((ICompletionProposalExtension2) mark).apply(Ui.viewer(editor), '\0', 0, offset);
        assertThat(document.get()).isEqualTo(before.substring(0, offset) + "Turn" + before.substring(offset));
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
    }

    /** Content assist asks on a thread of its own; so does this test. */
    private static ICompletionProposal proposal(ITextEditor editor, int offset, String label) {
        List<ICompletionProposal> found = new ArrayList<>();
        Ui.until("a proposal " + label, () -> {
            found.clear();
            found.addAll(Arrays.asList(Ui.get(CompletableFuture.supplyAsync(
                    () -> new Completions().computeCompletionProposals(Ui.viewer(editor), offset)))));
            return found.stream().anyMatch(one -> one.getDisplayString().equals(label));
        });
        return found.stream().filter(one -> one.getDisplayString().equals(label)).findFirst().orElseThrow();
    }

    @Test
    void takesAQuickFixAndUndoesItInOneStep() throws Exception {
        shows.edit("cue First at Start     B      RedPeony75", "cue First at Start     B      RedPeony57");
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String before = document.get();
        IMarker marker = Ui.marker(shows.show(), "unresolved-name");
        IMarkerResolution fix = fix(marker, "RedPeony75");
        fix.run(marker);
        Ui.settle();
        assertThat(document.get()).contains("cue First at Start     B      RedPeony75");
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
    }

    private static IMarkerResolution fix(IMarker marker, String word) {
        IMarkerResolution[] found = new IMarkerResolution[1];
        Ui.until("a fix with " + word, () -> {
            for (IMarkerResolution one : IDE.getMarkerHelpRegistry().getResolutions(marker)) {
                if (one.getLabel().contains(word)) {
                    found[0] = one;
                }
            }
            return found[0] != null;
        });
        return found[0];
    }

    @Test
    void renamesInTwoFilesAndUndoesItInOneStep() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String script = document.get();
        String catalogue = shows.catalogue().readString();
        int offset = Ui.caretAfter(editor, "RedPeony75") - 3;
        OpenText text = ShowClient.get().text(document).orElseThrow();
        Ui.until("both files are renamed", () -> {
            if (!document.get().contains("CrimsonPeony75")) {
                RenameHandler.rename(text, offset, "RedPeony75", "CrimsonPeony75");
                Ui.settle();
            }
            return document.get().contains("CrimsonPeony75") && shows.catalogue().readString().contains("CrimsonPeony75");
        });
        assertThat(document.get()).isEqualTo(script.replace("RedPeony75", "CrimsonPeony75"));
        assertThat(shows.catalogue().readString()).isEqualTo(catalogue.replace("RedPeony75", "CrimsonPeony75"));
        undoEverywhere();
        assertThat(document.get()).isEqualTo(script);
        assertThat(shows.catalogue().readString()).isEqualTo(catalogue);
    }

    @Test
    void formatsAndUndoesItInOneStep() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        Ui.caretAfter(editor, "section Opening");
        formatted(document);
        String canonical = document.get();
        document.set(canonical.replace("    cue First", "          cue     First"));
        String before = document.get();
        assertThat(before).isNotEqualTo(canonical);
        Ui.until("it is formatted", () -> {
            if (!document.get().equals(canonical)) {
                formatted(document);
            }
            return document.get().equals(canonical);
        });
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
    }

    /** Runs the command; when the answer has come, the text is as it will be. */
    private static void formatted(IDocument document) throws Exception {
        Ui.run("org.girandole.studio.format");
        OpenText text = ShowClient.get().text(document).orElseThrow();
        Ui.get(ShowClient.get().ask(server -> server.getTextDocumentService()
                .documentSymbol(new org.eclipse.lsp4j.DocumentSymbolParams(text.id()))));
        Ui.settle();
    }

    @Test
    void hoverTellsOfTheEffect() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        int offset = Ui.caretAfter(editor, "RedPeony75") - 3;
        Ui.until("a hover", () -> {
            String html = Ui.get(CompletableFuture.supplyAsync(() -> new Hovers().getHoverInfo(Ui.viewer(editor), new Region(offset, 0))));
            return html != null && html.contains("75");
        });
    }

    @Test
    void outlineHasSectionsAndCues() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        Ui.page().showView("org.eclipse.ui.views.ContentOutline");
        ContentOutlinePage page = (ContentOutlinePage) Adapters.adapt(editor, IContentOutlinePage.class);
        org.eclipse.swt.widgets.Shell shell = new org.eclipse.swt.widgets.Shell(Ui.window().getShell());
        try {
            page.createControl(shell);
            Control control = page.getControl();
            Ui.until("the outline is filled", () -> texts((Tree) control).contains("section") || texts((Tree) control).contains("Opening"));
            assertThat(texts((Tree) control)).contains("score Song").contains("RedPeony75").contains("Opening");
        } finally {
            page.dispose();
            shell.dispose();
        }
    }

    private static String texts(Tree tree) {
        StringBuilder texts = new StringBuilder();
        for (var item : tree.getItems()) {
            add(item, texts, "");
        }
        return texts.toString();
    }

    private static void add(org.eclipse.swt.widgets.TreeItem item, StringBuilder texts, String indent) {
        texts.append(indent).append(item.getText()).append('\n');
        org.eclipse.swt.widgets.Event expand = new org.eclipse.swt.widgets.Event();
        expand.item = item;
        item.getParent().notifyListeners(org.eclipse.swt.SWT.Expand, expand);
        for (var child : item.getItems()) {
            add(child, texts, indent + "  ");
        }
    }

    @Test
    void wordsHaveTheColoursOfWhatTheyAre() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        int keyword = Ui.document(editor).get().indexOf("soundtrack Song");
        int effect = Ui.document(editor).get().indexOf("RedPeony75");
        Ui.until("an effect and a keyword differ from each other and from plain text", () -> {
            RGB a = colour(editor, keyword);
            RGB b = colour(editor, effect);
            return a != null && b != null && !a.equals(b);
        });
        assertThat(style(editor, keyword).fontStyle).as("keywords are bold: colour is not the only sign")
                .isEqualTo(org.eclipse.swt.SWT.BOLD);
    }

    private static RGB colour(ITextEditor editor, int offset) {
        StyleRange style = style(editor, offset);
        return style == null || style.foreground == null ? null : style.foreground.getRGB();
    }

    private static StyleRange style(ITextEditor editor, int offset) {
        return Ui.viewer(editor).getTextWidget().getStyleRangeAtOffset(offset);
    }

    @Test
    void blocksFold() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        Ui.until("folds", () -> {
            ProjectionAnnotationModel model = ((ProjectionViewer) Ui.viewer(editor)).getProjectionAnnotationModel();
            return model != null && model.getAnnotationIterator().hasNext();
        });
    }

    @Test
    void usesOfANameAreMarked() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        Ui.caretAfter(editor, "mark Star");
        Ui.until("more than one place", () -> {
            int[] count = new int[1];
            ((ISourceViewer) Ui.viewer(editor)).getAnnotationModel().getAnnotationIterator().forEachRemaining(annotation -> {
                if ("org.eclipse.ui.genericeditor.text".equals(annotation.getType())) {
                    count[0]++;
                }
            });
            return count[0] > 1;
        });
    }

    @Test
    void referencesAreListed() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        Ui.caretAfter(editor, "mark Star");
        Ui.until("the view", () -> {
            Ui.page().activate(editor);
            Ui.run("org.eclipse.ui.genericeditor.findReferences");
            return Ui.page().findView("org.girandole.studio.references") != null;
        });
    }

    private static void undo(ITextEditor editor) {
        editor.getAction(ITextEditorActionConstants.UNDO).run();
        Ui.settle();
    }

    /** As the menu's Undo does after a question that a test cannot answer: the change is undone in all files. */
    private static void undoEverywhere() throws Exception {
        IOperationHistory history = OperationHistoryFactory.getOperationHistory();
        IUndoContext elsewhere = new ObjectUndoContext(new Object());
        IAdaptable asked = new IAdaptable() {
            @Override
            public <T> T getAdapter(Class<T> type) {
                return type == IUndoContext.class ? type.cast(elsewhere) : null;
            }
        };
        IUndoableOperation last = history.getUndoOperation(IOperationHistory.GLOBAL_UNDO_CONTEXT);
        assertThat(last.getLabel()).startsWith("Rename");
        assertThat(history.undoOperation(last, new NullProgressMonitor(), asked).isOK()).isTrue();
        Ui.settle();
    }
}
