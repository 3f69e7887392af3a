package org.girandole.lang.ide.completion;

import java.nio.file.Path;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.compile.Vocabulary;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.services.ShowGrammarAccess;

/** What stands outside of all blocks. */
final class TopLevel {
    private final ShowGrammarAccess grammar;
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    TopLevel(Here here, ShowGrammarAccess grammar) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
        this.grammar = grammar;
    }

    void propose() {
        Word last = caret.last();
        String start = caret.statement().isEmpty() ? "" : caret.statement().get(0).text();
        switch (start) {
            case "rehearse" -> {
                here.keyword(caret.statement().size() == 2, "of");
                here.after("of", Space.SOUNDTRACK, Kind.SOUNDTRACK);
            }
            case "use" -> files();
            case "waive" -> new Agreements(here).waiver();
            case "rule" -> new Agreements(here).rule();
            case "lot" -> here.after("of", Space.SHOT, Kind.EFFECT);
            case "chain" -> {
                if (last.isNumber()) {
                    here.names(Space.SHOT, Kind.EFFECT);
                }
            }
            case "module" -> {
                here.after("of", Space.MODULE_TYPE, Kind.MODULE_TYPE);
                if (last.is("at") || last.is(",") || last.is("..")) {
                    new Places(here).propose();
                }
                here.keyword(caret.statement().size() == 1, "type");
            }
            case "rack" -> here.after("at", Space.PLACE, Kind.POSITION);
            case "score" -> {
                if (caret.statement().size() == 1) {
                    here.names(Space.SOUNDTRACK, Kind.SOUNDTRACK);
                } else {
                    here.keyword(true, "in slot");
                }
            }
            case "firing" -> here.keyword(caret.statement().size() == 1, "system");
            default -> {
                if (Fields.EFFECTS.contains(start)) {
                    here.after("like", Space.SHOT, Kind.EFFECT);
                    here.keyword(!last.is("like") && caret.statement().size() > 1, "like");
                }
            }
        }
        if (caret.begins()) {
            Snippets.TOP.forEach(snippet -> out.snippet(snippet.label(), snippet.text(), snippet.detail()));
            Vocabulary.first(grammar.getElementRule()).forEach(word -> out.word(word, CompletionItemKind.Keyword, ""));
            out.word("use", CompletionItemKind.Keyword, "");
        }
    }

    private void files() {
        if (!here.view().resource().getURI().isFile()) {
            return;
        }
        Path own = ProjectRoot.path(here.view().resource().getURI());
        for (var other : here.view().resource().getResourceSet().getResources()) {
            Path file = ProjectRoot.path(other.getURI());
            if (!file.equals(own)) {
                String path = own.getParent().relativize(file).toString().replace('\\', '/');
                out.word("\"" + path + "\"", CompletionItemKind.File, "a script of this project");
            }
        }
    }
}
