package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.bindings.Binding;
import org.eclipse.jface.bindings.keys.KeySequence;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IInformationControl;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.eclipse.ui.views.contentoutline.ContentOutlinePage;
import org.eclipse.ui.views.contentoutline.IContentOutlinePage;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.editor.Completions;
import org.girandole.studio.editor.Hovers;
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
    void formatsAndUndoesItInOneStep() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String canonical = misformatted(editor);
        String before = document.get();
        assertThat(before).isNotEqualTo(canonical);
        formatted(document);
        Ui.until("it is formatted", () -> document.get().equals(canonical));
        undo(editor);
        assertThat(document.get()).isEqualTo(before);
    }

    @Test
    void formattingIsNotLostWhenTheTextChangesMeanwhile() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String canonical = misformatted(editor);
        Ui.window().getService(IHandlerService.class).executeCommand("org.girandole.studio.format", null);
        document.replace(0, 0, "// Above it.\n");
        Ui.until("it is formatted", () -> document.get().equals("// Above it.\n" + canonical));
    }

    /** Leaves a text with a line out of form; the text as it should be. */
    private static String misformatted(ITextEditor editor) throws Exception {
        IDocument document = Ui.document(editor);
        Ui.caretAfter(editor, "section Opening");
        formatted(document);
        String canonical = document.get();
        document.set(canonical.replace("    cue First", "          cue     First"));
        return canonical;
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

    /** By its key the platform opens the tooltip in whatever the hover says it needs; without that, with all tags. */
    @Test
    void theTooltipShowsNoTags() throws Exception {
        Ui.open(shows.show());
        IInformationControl control = new Hovers().getHoverControlCreator().createInformationControl(Ui.window().getShell());
        try {
            control.setSizeConstraints(400, 300);
            control.setInformation("<b>effect</b><br>with <pre>tags</pre>");
            List<StyledText> texts = new ArrayList<>();
            for (org.eclipse.swt.widgets.Shell shell : Ui.window().getShell().getShells()) {
                texts.addAll(Widgets.all(shell, StyledText.class));
            }
            assertThat(texts).extracting(StyledText::getText).anyMatch(text -> text.contains("effect")).noneMatch(text -> text.contains("<"));
        } finally {
            control.dispose();
        }
    }

    @Test
    void renameHasAKeyThatNothingElseTakes() throws Exception {
        Ui.open(shows.show());
        IBindingService bindings = Ui.window().getService(IBindingService.class);
        Binding key = bindings.getPerfectMatch(KeySequence.getInstance("M2+M3+R"));
        assertThat(key).isNotNull();
        assertThat(key.getParameterizedCommand().getId()).isEqualTo("org.eclipse.ui.edit.rename");
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
            Ui.until("the outline is filled", () -> Widgets.texts((Tree) control).contains("section") || Widgets.texts((Tree) control).contains("Opening"));
            assertThat(Widgets.texts((Tree) control)).contains("score Song").contains("RedPeony75").contains("Opening");
        } finally {
            page.dispose();
            shell.dispose();
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
}
