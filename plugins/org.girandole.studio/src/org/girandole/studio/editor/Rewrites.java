package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.quickassist.IQuickAssistInvocationContext;
import org.eclipse.jface.text.quickassist.IQuickAssistProcessor;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.girandole.studio.client.Edits;
import org.girandole.studio.client.KnownTexts;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Waiting;

/** Rewritings at the caret that mend nothing, such as writing a time another way. */
public final class Rewrites implements IQuickAssistProcessor {
    @Override
    public ICompletionProposal[] computeQuickAssistProposals(IQuickAssistInvocationContext context) {
        IDocument document = context.getSourceViewer() == null ? null : context.getSourceViewer().getDocument();
        Optional<OpenText> text = ShowClient.get().text(document);
        if (text.isEmpty()) {
            return new ICompletionProposal[0];
        }
        KnownTexts asked = KnownTexts.now();
        List<Either<Command, CodeAction>> actions = Waiting.of(QuickFixes.request(text.get().uri(),
                Positions.range(document, context.getOffset(), Math.max(0, context.getLength())),
                new CodeActionContext(List.of(), List.of(CodeActionKind.RefactorRewrite))), Waiting.SHORT_MS).orElse(List.of());
        List<ICompletionProposal> proposals = new ArrayList<>();
        for (Either<Command, CodeAction> action : actions) {
            if (action.isRight() && action.getRight().getEdit() != null) {
                proposals.add(new Rewrite(action.getRight(), asked));
            }
        }
        return proposals.toArray(ICompletionProposal[]::new);
    }

    @Override
    public boolean canFix(Annotation annotation) {
        return false;
    }

    @Override
    public boolean canAssist(IQuickAssistInvocationContext context) {
        return true;
    }

    @Override
    public String getErrorMessage() {
        return null;
    }

    private record Rewrite(CodeAction action, KnownTexts asked) implements ICompletionProposal {
        @Override
        public void apply(IDocument document) {
            Edits.apply(action.getTitle(), action.getEdit(), asked);
        }

        @Override
        public Point getSelection(IDocument document) {
            return null;
        }

        @Override
        public String getAdditionalProposalInfo() {
            return null;
        }

        @Override
        public String getDisplayString() {
            return action.getTitle();
        }

        @Override
        public Image getImage() {
            return null;
        }

        @Override
        public IContextInformation getContextInformation() {
            return null;
        }
    }
}
