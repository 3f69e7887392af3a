package org.girandole.lang.ide.completion;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.scoping.Names;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.Named;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;

/** One place, while it is looked at: what is known of it, and how it is told. */
final class Here {
    private final ScriptView view;
    private final Optional<CheckedScript> checked;
    private final Caret caret;
    private final Proposals out;
    private final Lookup lookup;
    private final Renaming naming;

    Here(ScriptView view, Optional<CheckedScript> checked, Caret caret, Proposals out, Lookup lookup, Renaming naming) {
        this.view = view;
        this.checked = checked;
        this.caret = caret;
        this.out = out;
        this.lookup = lookup;
        this.naming = naming;
    }

    ScriptView view() {
        return view;
    }

    Caret caret() {
        return caret;
    }

    Proposals out() {
        return out;
    }

    /** The last plan. */
    Optional<Plan> plan() {
        return checked.flatMap(CheckedScript::plan);
    }

    /** What the last plan has left over. */
    Optional<Free> free() {
        return plan().map(Free::new);
    }

    /** What is found and nobody has agreed to. */
    List<Finding> found() {
        return checked.map(show -> show.show().findings().stream().filter(finding -> !finding.waived()).toList()).orElse(List.of());
    }

    /** A name as it has to be written. */
    String written(String name) {
        return naming.written(name);
    }

    void after(String word, Space space, Kind kind) {
        if (caret.last().is(word)) {
            names(space, kind);
        }
    }

    void keyword(boolean fits, String... words) {
        if (fits) {
            for (String word : words) {
                out.word(word, CompletionItemKind.Keyword, "");
            }
        }
    }

    Optional<Names> names() {
        return view.script().map(lookup::names);
    }

    void names(Space space, Kind kind) {
        names().ifPresent(names -> names.in(space).values().stream().filter(named -> Kind.of(named).filter(k -> k == kind).isPresent())
                .forEach(this::name));
    }

    void name(Named named) {
        CompletionItemKind kind = switch (Kind.of(named).orElse(Kind.SHOW)) {
            case EFFECT, CHAIN -> CompletionItemKind.Class;
            case POSITION, GROUP -> CompletionItemKind.EnumMember;
            case FIGURE -> CompletionItemKind.Function;
            case MARK, CUE -> CompletionItemKind.Event;
            default -> CompletionItemKind.Struct;
        };
        out.word(written(named.getName()), kind, label(named));
    }

    static String label(Named named) {
        String kind = Kind.of(named).map(Kind::words).map(words -> words.substring(words.indexOf(' ') + 1)).orElse("");
        String label = named instanceof EffectDef effect ? effect.getLabel() : named instanceof ChainDef chain ? chain.getLabel() : null;
        String sort = named instanceof EffectDef effect ? effect.getKind() : kind;
        return label == null ? sort : sort + " \"" + label + "\"";
    }
}
