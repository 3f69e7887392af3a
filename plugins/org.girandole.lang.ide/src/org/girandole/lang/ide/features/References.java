package org.girandole.lang.ide.features;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.xtext.resource.XtextResource;

/** Where a name is defined, and where it is used. */
public final class References {
    private References() {
    }

    public static Optional<Location> definition(ScriptView view, Position caret, Function<XtextResource, ScriptView> views) {
        return NameUse.at(view, view.lines().offset(caret)).flatMap(use -> definition(use, views));
    }

    private static Optional<Location> definition(NameUse use, Function<XtextResource, ScriptView> views) {
        ScriptView where = views.apply((XtextResource) use.target().eResource());
        return NameUse.definition(use.target()).map(node -> new Location(where.uri(), where.range(node)));
    }

    /** All uses over all scripts, with the definition first when it is wanted. */
    public static List<Location> all(ScriptView view, Position caret, Collection<XtextResource> scripts,
            Function<XtextResource, ScriptView> views, boolean withDefinition) {
        List<Location> all = new ArrayList<>();
        NameUse.at(view, view.lines().offset(caret)).ifPresent(use -> {
            if (withDefinition) {
                definition(use, views).ifPresent(all::add);
            }
            NameUse.uses(use.target(), scripts).forEach(found -> {
                ScriptView where = views.apply(found.script());
                all.add(new Location(where.uri(), where.range(found.node())));
            });
        });
        return all;
    }

    /** Definition and uses in this script. */
    public static List<DocumentHighlight> highlights(ScriptView view, Position caret) {
        List<DocumentHighlight> all = new ArrayList<>();
        NameUse.at(view, view.lines().offset(caret)).ifPresent(use -> {
            if (use.target().eResource() == view.resource()) {
                NameUse.definition(use.target()).ifPresent(node -> all.add(new DocumentHighlight(view.range(node), DocumentHighlightKind.Write)));
            }
            NameUse.uses(use.target(), List.of(view.resource()))
                    .forEach(found -> all.add(new DocumentHighlight(view.range(found.node()), DocumentHighlightKind.Read)));
        });
        return all;
    }
}
