package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.codemining.ICodeMining;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.protocol.CueView;
import org.girandole.studio.editor.Minings;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.workbench.ShowHub;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What stands beside and above lines without being part of the text. */
class MiningsTest {
    private static final Pattern CLOCK = Pattern.compile("fires (-?)(\\d+):(\\d\\d)\\.(\\d{3})");

    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private static List<? extends ICodeMining> minings(ITextEditor editor) {
        List<ICodeMining> found = new ArrayList<>();
        Ui.until("the check has caught up", () -> {
            found.clear();
            found.addAll(Ui.get(new Minings().provideCodeMinings(Ui.viewer(editor), new NullProgressMonitor())));
            return !found.isEmpty();
        });
        return found;
    }

    private static int line(ITextEditor editor, ICodeMining mining) throws Exception {
        return Ui.document(editor).getLineOfOffset(mining.getPosition().getOffset());
    }

    @Test
    void everyCueTellsWhenItFires() throws Exception {
        Ui.page().showView("org.girandole.studio.views.timeline");
        ITextEditor editor = Ui.open(shows.show());
        Stage stage = ShowHub.get(Display.getCurrent()).stage();
        Ui.until("the plan", () -> stage.plan().nothing() == null && stage.plan().uri().contains(shows.project().getName()));
        List<? extends ICodeMining> minings = minings(editor);
        // The plan that the views draw and the text beside the cues must say the same of each line.
        for (int line : stage.plan().cues().stream().map(cue -> cue.source().line()).distinct().toList()) {
            CueView first = stage.plan().cues().stream().filter(cue -> cue.source().line() == line)
                    .min((a, b) -> Long.compare(a.fireUs(), b.fireUs())).orElseThrow();
            List<String> labels = new ArrayList<>();
            for (ICodeMining mining : minings) {
                if (line(editor, mining) == line - 1 && mining.getLabel().contains("fires")) {
                    labels.add(mining.getLabel());
                }
            }
            assertThat(labels).as("line " + line).hasSize(1);
            Matcher clock = CLOCK.matcher(labels.get(0));
            assertThat(clock.find()).as(labels.get(0)).isTrue();
            long ms = (Long.parseLong(clock.group(2)) * 60 + Long.parseLong(clock.group(3))) * 1000 + Long.parseLong(clock.group(4));
            assertThat((clock.group(1).isEmpty() ? ms : -ms) * 1000).as(labels.get(0)).isEqualTo(first.fireUs());
            assertThat(labels.get(0)).contains(first.timecode());
        }
    }

    @Test
    void everySectionTellsHowMuchIsInIt() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        int opening = document.getLineOfOffset(document.get().indexOf("section Opening"));
        List<String> labels = new ArrayList<>();
        for (ICodeMining mining : minings(editor)) {
            if (line(editor, mining) == opening) {
                labels.add(mining.getLabel());
            }
        }
        // One peony, two, and three mines of 62 g and 55 g, from bar 5 to bar 13 of four beats at 120 a minute: 16 s.
        assertThat(labels).containsExactly(String.format(Locale.ROOT, "6 igniters, 16.000 s, %.3f kg", 3 * 0.062 + 3 * 0.055));
    }

    @Test
    void theyAreDrawnAndFollowTheText() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        StyledText text = Ui.viewer(editor).getTextWidget();
        Ui.caretAfter(editor, "section Opening");
        Ui.until("room above the section", () -> text.getLineVerticalIndent(document.getLineOfOffset(document.get().indexOf("section Opening"))) > 0);
        Ui.until("all are annotations", () -> drawn(editor) == minings(editor).size());
        int before = drawn(editor);
        document.replace(document.get().indexOf("    at Start + 1 bar"), 0, "    at Start + 3 bars      B      RedPeony75\n");
        Ui.until("one more", () -> drawn(editor) == before + 1);
        assertThat(document.get()).as("they are no part of the text").doesNotContain("igniters");
    }

    /** The platform places every one of them anew at each check, on the display's thread. */
    @Test
    void inALongScriptOnlyThoseNearWhatIsSeenAreMade() throws Exception {
        shows.edit("cue First at Start  B       RedPeony75", "cue First at Start  B       RedPeony75\n" + "    // far apart\n".repeat(3_000).stripTrailing());
        ITextEditor editor = Ui.open(shows.show());
        String text = Ui.document(editor).get();
        int first = Ui.document(editor).getLineOfOffset(text.indexOf("cue First"));
        int far = Ui.document(editor).getLineOfOffset(text.indexOf("    at Start + 1 bar"));
        Ui.caretAfter(editor, "cue First");
        Ui.until("a time beside the cue that is seen", () -> hint(editor, first));
        assertThat(hint(editor, far)).as("a time beside a cue that is not").isFalse();
        Ui.viewer(editor).setTopIndex(far - 10);
        Ui.until("a time beside what has come into view", () -> hint(editor, far));
    }

    private static boolean hint(ITextEditor editor, int line) throws Exception {
        boolean[] found = new boolean[1];
        IDocument document = Ui.document(editor);
        var model = ((ISourceViewer) Ui.viewer(editor)).getAnnotationModel();
        model.getAnnotationIterator().forEachRemaining(annotation -> {
            try {
                found[0] |= annotation instanceof org.eclipse.jface.text.source.inlined.AbstractInlinedAnnotation
                        && document.getLineOfOffset(model.getPosition(annotation).getOffset()) == line;
            } catch (org.eclipse.jface.text.BadLocationException e) {
                throw new AssertionError(e);
            }
        });
        return found[0];
    }

    /** Else a new line below a cue would have that cue's time, and a cue that was moved its old one, until the check has caught up. */
    @Test
    void aTimeIsShownOnlyBesideTheLineItWasAskedFor() throws Exception {
        ITextEditor editor = Ui.open(shows.show());
        IDocument document = Ui.document(editor);
        String cue = "cue First at Start";
        Ui.caretAfter(editor, cue);
        ICodeMining mining = null;
        for (ICodeMining each : minings(editor)) {
            mining = mining == null && line(editor, each) == document.getLineOfOffset(document.get().indexOf(cue)) ? each : mining;
        }
        assertThat(width(editor, mining, cue)).isGreaterThan(50);
        document.replace(document.get().indexOf(cue) + cue.length(), 0, " + 1 beat");
        assertThat(width(editor, mining, cue)).isZero();
        document.replace(document.get().indexOf(cue) + cue.length(), " + 1 beat".length(), "");
        assertThat(width(editor, mining, cue)).isGreaterThan(50);
        assertThat(width(editor, mining, "section Opening")).isZero();
    }

    /** How wide it is drawn beside a line. */
    private static int width(ITextEditor editor, ICodeMining mining, String beside) {
        StyledText text = Ui.viewer(editor).getTextWidget();
        int line = text.getLineAtOffset(text.getText().indexOf(beside));
        GC gc = new GC(text);
        try {
            return mining.draw(gc, text, text.getForeground(), 0, text.getLinePixel(line) + text.getLineVerticalIndent(line)).x;
        } finally {
            gc.dispose();
        }
    }

    private static int drawn(ITextEditor editor) {
        int[] count = new int[1];
        ((ISourceViewer) Ui.viewer(editor)).getAnnotationModel().getAnnotationIterator().forEachRemaining(annotation -> {
            if (annotation instanceof org.eclipse.jface.text.source.inlined.AbstractInlinedAnnotation) {
                count[0]++;
            }
        });
        return count[0];
    }
}
