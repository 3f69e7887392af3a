package org.girandole.lang.ide.completion;

import java.util.List;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.FigureDef;

/** The values that a figure is given, inside of it. */
final class Parameters {
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    Parameters(Here here) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
    }

    void propose() {
        List<Word> head = caret.head("figure");
        if (head.size() < 2) {
            return;
        }
        here.names().map(names -> names.in(Space.FIGURE).get(head.get(1).name())).ifPresent(named -> {
            if (named instanceof FigureDef figure) {
                figure.getParameters().stream().filter(parameter -> parameter.getName() != null)
                        .forEach(parameter -> out.word(here.written(parameter.getName()), CompletionItemKind.Variable, "a value of the figure"));
            }
        });
    }
}
