package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContentAssistProcessor;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.contentassist.IContextInformationValidator;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.Waiting;

/** What can stand at the caret: what the server proposes, then templates. The editor asks on a thread of its own. */
public final class Completions implements IContentAssistProcessor {
    private final ShowTemplates templates = new ShowTemplates();
    private CompletableFuture<?> asked;

    @Override
    public synchronized ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
        Optional<OpenText> text = ShowClient.get().text(viewer.getDocument());
        if (text.isEmpty()) {
            return new ICompletionProposal[0];
        }
        if (asked != null) {
            asked.cancel(true);
        }
        CompletionParams params = new CompletionParams(text.get().id(), Positions.position(viewer.getDocument(), offset));
        CompletableFuture<Either<List<CompletionItem>, CompletionList>> answer = ShowClient.get()
                .ask(server -> server.getTextDocumentService().completion(params));
        asked = answer;
        List<CompletionItem> items = Waiting.of(answer, Waiting.LONG_MS)
                .map(found -> found.isLeft() ? found.getLeft() : found.getRight().getItems()).orElse(List.of());
        List<ICompletionProposal> proposals = new ArrayList<>(List.of(proposals(viewer.getDocument(), offset, items)));
        // The platform mixes the proposals of several processors as it likes, and a template would stand before the marks.
        if (firstWord(viewer.getDocument(), offset)) {
            proposals.addAll(List.of(templates.computeCompletionProposals(viewer, offset)));
        }
        return proposals.toArray(ICompletionProposal[]::new);
    }

    /** Whether nothing stands before the word at the caret in its line: a template is at least one line. */
    private static boolean firstWord(IDocument document, int offset) {
        try {
            int line = document.getLineInformationOfOffset(offset).getOffset();
            return document.get(line, wordStart(document, offset) - line).isBlank();
        } catch (BadLocationException e) {
            return false;
        }
    }

    static ICompletionProposal[] proposals(IDocument document, int offset, List<CompletionItem> items) {
        List<Proposal> proposals = new ArrayList<>();
        for (CompletionItem item : items) {
            Proposal proposal = new Proposal(item, document, offset);
            if (proposal.fits(document, offset)) {
                proposals.add(proposal);
            }
        }
        proposals.sort(Comparator.comparing(Proposal::order));
        return proposals.toArray(ICompletionProposal[]::new);
    }

    /** Where the word before the caret begins. */
    static int wordStart(IDocument document, int offset) {
        int from = offset;
        try {
            while (from > 0 && (Character.isLetterOrDigit(document.getChar(from - 1)) || document.getChar(from - 1) == '_'
                    || document.getChar(from - 1) == '-' && from > 1 && Character.isLetter(document.getChar(from - 2)))) {
                from--;
            }
        } catch (BadLocationException e) {
            return offset;
        }
        return from;
    }

    static boolean begins(String word, String typed) {
        return word.toLowerCase(Locale.ROOT).startsWith(typed.toLowerCase(Locale.ROOT));
    }

    @Override
    public IContextInformation[] computeContextInformation(ITextViewer viewer, int offset) {
        return new IContextInformation[0];
    }

    @Override
    public char[] getCompletionProposalAutoActivationCharacters() {
        return new char[0];
    }

    @Override
    public char[] getContextInformationAutoActivationCharacters() {
        return new char[0];
    }

    @Override
    public String getErrorMessage() {
        return null;
    }

    @Override
    public IContextInformationValidator getContextInformationValidator() {
        return null;
    }
}
