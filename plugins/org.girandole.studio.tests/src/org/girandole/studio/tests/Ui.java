package org.girandole.studio.tests;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.girandole.studio.client.Findings;

/** What a test does with the workbench. All on the display's thread, which these methods keep turning. */
final class Ui {
    /** After this a test has failed; nothing in a test depends on how long something takes. */
    private static final int DEADLINE_MS = 60_000;
    private static final int WAKE_MS = 20;

    private Ui() {
    }

    /** Turns the display until something holds; fails with the last reason when it never does. */
    static void until(String what, Callable<Boolean> holds) {
        Display display = Display.getCurrent();
        long deadline = System.nanoTime() + DEADLINE_MS * 1_000_000L;
        Throwable last = null;
        while (System.nanoTime() < deadline) {
            try {
                if (holds.call()) {
                    return;
                }
                last = null;
            } catch (Exception | AssertionError e) {
                last = e;
            }
            if (!display.readAndDispatch()) {
                display.timerExec(WAKE_MS, () -> { });
                display.sleep();
            }
        }
        throw new AssertionError("never came true: " + what, last);
    }

    /** What may fail. */
    interface Work {
        void run() throws Exception;
    }

    /** Does something that opens a dialog and waits for it, and presses one of the dialog's buttons; what the dialog says. */
    static String answering(String button, Work opens) throws Exception {
        Display display = Display.getCurrent();
        long deadline = System.nanoTime() + DEADLINE_MS * 1_000_000L;
        List<String> said = new ArrayList<>();
        List<String> other = new ArrayList<>();
        display.timerExec(WAKE_MS, new Runnable() {
            @Override
            public void run() {
                Shell dialog = dialog();
                if (dialog != null && Widgets.button(dialog, button).isPresent()) {
                    said.add(Widgets.texts(dialog));
                    Widgets.press(Widgets.button(dialog, button).get());
                } else if (System.nanoTime() > deadline && dialog != null) {
                    other.add(Widgets.texts(dialog));
                    dialog.close();
                } else if (System.nanoTime() < deadline) {
                    display.timerExec(WAKE_MS, this);
                }
            }
        });
        opens.run();
        until("a dialog with a button " + button, () -> !said.isEmpty() || !other.isEmpty());
        if (said.isEmpty()) {
            throw new AssertionError("a dialog without a button " + button + ": " + other);
        }
        settle();
        return said.get(0);
    }

    /** The dialog that is open; null when there is none. */
    static Shell dialog() {
        for (Shell shell : Display.getCurrent().getShells()) {
            if (shell.isVisible() && !shell.getText().isEmpty() && shell != window().getShell()) {
                return shell;
            }
        }
        return null;
    }

    /** The value of a future, with the display turning. */
    static <T> T get(CompletableFuture<T> future) {
        until("an answer", future::isDone);
        return future.join();
    }

    /** Turns the display until nothing is left to do. */
    static void settle() {
        Display display = Display.getCurrent();
        while (display.readAndDispatch()) {
            continue;
        }
    }

    static IWorkbenchWindow window() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        return window != null ? window : PlatformUI.getWorkbench().getWorkbenchWindows()[0];
    }

    static IWorkbenchPage page() {
        return window().getActivePage();
    }

    static ITextEditor open(IFile file) throws CoreException {
        ITextEditor editor = Adapters.adapt(IDE.openEditor(page(), file, true), ITextEditor.class);
        settle();
        return editor;
    }

    static IDocument document(ITextEditor editor) {
        return editor.getDocumentProvider().getDocument(editor.getEditorInput());
    }

    static ITextViewer viewer(ITextEditor editor) {
        return Adapters.adapt(editor, ITextViewer.class);
    }

    /** Puts the caret behind the first occurrence of a text; where that is. */
    static int caretAfter(ITextEditor editor, String text) {
        int at = document(editor).get().indexOf(text);
        if (at < 0) {
            throw new AssertionError("not in the text: " + text);
        }
        editor.selectAndReveal(at + text.length(), 0);
        return at + text.length();
    }

    static void run(String command) throws Exception {
        window().getService(IHandlerService.class).executeCommand(command, null);
        settle();
    }

    /** The markers of findings on a file or folder. */
    static List<IMarker> markers(IResource resource) throws CoreException {
        return new ArrayList<>(Arrays.asList(resource.findMarkers(Findings.MARKER, true, IResource.DEPTH_INFINITE)));
    }

    static boolean hasMarker(IResource resource, String rule) throws CoreException {
        return markers(resource).stream().anyMatch(marker -> rule.equals(marker.getAttribute(Findings.RULE, "")));
    }

    static IMarker marker(IResource resource, String rule) throws CoreException {
        until(rule + " on " + resource.getName(), () -> hasMarker(resource, rule));
        return markers(resource).stream().filter(one -> rule.equals(one.getAttribute(Findings.RULE, ""))).findFirst().orElseThrow();
    }
}
