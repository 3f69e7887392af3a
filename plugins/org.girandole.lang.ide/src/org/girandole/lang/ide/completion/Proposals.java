package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Collects what can be written, best first. */
final class Proposals {
    private final String prefix;
    private final Range replaced;
    private final boolean snippets;
    private final List<CompletionItem> items = new ArrayList<>();
    private final Set<String> labels = new HashSet<>();

    /**
     * @param prefix what is written of the word already
     * @param replaced where that stands
     * @param snippets whether the client can jump from gap to gap
     */
    Proposals(String prefix, Range replaced, boolean snippets) {
        this.prefix = prefix.toLowerCase(Locale.ROOT);
        this.replaced = replaced;
        this.snippets = snippets;
    }

    void word(String word, CompletionItemKind kind, String detail) {
        add(word, word, kind, detail, "", false);
    }

    void word(String word, CompletionItemKind kind, String detail, String more) {
        add(word, word, kind, detail, more, false);
    }

    /** @param gaps text with {@code ${1:gap}} where something is to be filled in */
    void snippet(String label, String gaps, String detail) {
        String plain = gaps.replaceAll("\\$\\{\\d+:([^}]*)}", "$1").replaceAll("\\$\\d+", "");
        add(label, snippets ? gaps : plain, CompletionItemKind.Snippet, detail, "```show\n" + plain + "\n```", snippets);
    }

    private void add(String label, String text, CompletionItemKind kind, String detail, String more, boolean snippet) {
        if (!label.toLowerCase(Locale.ROOT).contains(prefix) || !labels.add(label + kind)) {
            return;
        }
        CompletionItem item = new CompletionItem(label);
        item.setKind(kind);
        item.setDetail(detail);
        if (!more.isEmpty()) {
            item.setDocumentation(new MarkupContent(MarkupKind.MARKDOWN, more));
        }
        item.setFilterText(label);
        item.setInsertTextFormat(snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText);
        item.setTextEdit(Either.forLeft(new TextEdit(replaced, text)));
        // What begins with the letters comes before what only holds them.
        boolean begins = label.toLowerCase(Locale.ROOT).startsWith(prefix);
        item.setSortText(String.format(Locale.ROOT, "%d%05d", begins ? 0 : 1, items.size()));
        items.add(item);
    }

    List<CompletionItem> items() {
        return List.copyOf(items);
    }
}
