package org.girandole.studio.editor;

import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.core.resources.IMarker;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.swt.graphics.Image;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.IMarkerResolution2;
import org.eclipse.ui.IMarkerResolutionGenerator2;
import org.girandole.studio.client.Edits;
import org.girandole.studio.client.Findings;
import org.girandole.studio.client.KnownTexts;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Tell;
import org.girandole.studio.client.Waiting;

/** What can be done about a finding: the server's quick fixes, in the list of problems and at the caret. */
public final class QuickFixes implements IMarkerResolutionGenerator2 {
    private Question question;
    private CompletableFuture<List<Either<Command, CodeAction>>> asked = CompletableFuture.completedFuture(List.of());

    @Override
    public boolean hasResolutions(IMarker marker) {
        return !marker.getAttribute(Findings.RULE, "").isEmpty();
    }

    @Override
    public IMarkerResolution[] getResolutions(IMarker marker) {
        URI location = marker.getResource().getLocationURI();
        if (location == null) {
            return new IMarkerResolution[0];
        }
        String uri = Path.of(location).toUri().toString();
        KnownTexts texts = KnownTexts.now();
        Optional<Diagnostic> finding = ShowClient.get().finding(uri, marker.getAttribute(Findings.RULE, ""),
                marker.getAttribute(IMarker.LINE_NUMBER, 0) - 1, marker.getAttribute(IMarker.MESSAGE, ""));
        if (finding.isEmpty()) {
            return new IMarkerResolution[0];
        }
        Optional<List<Either<Command, CodeAction>>> actions = Waiting.of(ask(new Question(uri, texts, finding.get())), Waiting.SHORT_MS);
        if (actions.isEmpty()) {
            return new IMarkerResolution[] {new Later()};
        }
        List<IMarkerResolution> resolutions = new ArrayList<>();
        for (Either<Command, CodeAction> action : actions.get()) {
            if (action.isRight() && action.getRight().getEdit() != null) {
                resolutions.add(new Fix(action.getRight(), texts));
            }
        }
        return resolutions.toArray(IMarkerResolution[]::new);
    }

    /** A question that was not answered in time is not asked twice: its answer is there the next time. */
    private synchronized CompletableFuture<List<Either<Command, CodeAction>>> ask(Question now) {
        if (!now.equals(question) || asked.isDone()) {
            boolean stillGood = now.equals(question) && asked.isDone() && Waiting.of(asked, 0).isPresent();
            if (!stillGood) {
                question = now;
                asked = request(now.uri, now.finding.getRange(), new CodeActionContext(List.of(now.finding), List.of(CodeActionKind.QuickFix)));
            }
        }
        return asked;
    }

    static CompletableFuture<List<Either<Command, CodeAction>>> request(String uri, Range range, CodeActionContext context) {
        CodeActionParams params = new CodeActionParams(new TextDocumentIdentifier(uri), range, context);
        return ShowClient.get().ask(server -> server.getTextDocumentService().codeAction(params));
    }

    private record Question(String uri, KnownTexts texts, Diagnostic finding) {
    }

    private record Fix(CodeAction action, KnownTexts texts) implements IMarkerResolution2 {
        @Override
        public String getLabel() {
            return action.getTitle();
        }

        @Override
        public String getDescription() {
            return "";
        }

        @Override
        public Image getImage() {
            return null;
        }

        @Override
        public void run(IMarker marker) {
            Edits.apply(action.getTitle(), action.getEdit(), texts);
        }
    }

    /** Shown in place of fixes that are still being worked out. */
    private static final class Later implements IMarkerResolution {
        @Override
        public String getLabel() {
            return "The fixes are being worked out: ask again";
        }

        @Override
        public void run(IMarker marker) {
            Tell.status("The fixes are there now: ask again.");
        }
    }
}
