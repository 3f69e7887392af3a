package org.girandole.lang.ide.completion;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.Position;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.services.ShowGrammarAccess;

/** Proposes what can stand at the caret. */
@Singleton
public final class Completion {
    private final ShowGrammarAccess grammar;
    private final Lookup lookup;
    private final Renaming naming;

    @Inject
    Completion(ShowGrammarAccess grammar, Lookup lookup, Renaming naming) {
        this.grammar = grammar;
        this.lookup = lookup;
        this.naming = naming;
    }

    /**
     * Proposals at a place, best first.
     *
     * @param checked the last check: what is free, which rules find something, when marks are
     * @param snippets whether the client knows snippets
     */
    public List<CompletionItem> at(ScriptView view, Optional<CheckedScript> checked, Position position, boolean snippets) {
        int offset = view.lines().offset(position);
        Caret caret = Caret.at(view.lines().text(), offset);
        // A number, as in "75 mm", asks for its unit first.
        if (caret.inText() || !caret.prefix().isEmpty() && Character.isDigit(caret.prefix().charAt(0))) {
            return List.of();
        }
        Proposals proposals = new Proposals(caret.prefix(), view.lines().range(offset - caret.prefix().length(), offset), snippets);
        propose(new Here(view, checked, caret, proposals, lookup, naming));
        return proposals.items();
    }

    private void propose(Here here) {
        String block = here.caret().block();
        if (Scores.BLOCKS.contains(block)) {
            new Scores(here).propose();
        } else if (block.isEmpty()) {
            new TopLevel(here, grammar).propose();
        } else {
            new Fields(here, grammar).propose(block);
        }
    }
}
