package org.girandole.lang.ide.completion;

import java.util.List;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.plan.table.TableField;
import org.girandole.plan.table.TableFormat;

/** What stands in a column of a table, and how it is written. */
final class Columns {
    private final Caret caret;
    private final Proposals out;

    Columns(Here here) {
        this.caret = here.caret();
        this.out = here.out();
    }

    void fields() {
        for (TableField field : TableField.values()) {
            out.word(field.id(), CompletionItemKind.Field, field.meaning());
        }
    }

    void formats() {
        List<Word> words = caret.statement();
        int equal = -1;
        for (int i = 0; i < words.size(); i++) {
            equal = words.get(i).is("=") ? i : equal;
        }
        String field = String.join(" ", words.subList(equal + 1, words.size() - 1).stream().map(Word::text).toList());
        List<TableFormat> formats = TableField.find(field).map(TableField::formats).orElse(List.of(TableFormat.values()));
        formats.forEach(format -> out.word(format.id(), CompletionItemKind.Value, format.meaning()));
    }
}
