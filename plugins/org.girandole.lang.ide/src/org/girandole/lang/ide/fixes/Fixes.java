package org.girandole.lang.ide.fixes;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.plan.Finding;

/** Which fixes there are for which rule. The fixes of a finding are made of the finding's own data; the last one is to waive it. */
@Singleton
public final class Fixes {
    private final Map<String, List<Function<Case, List<Fix>>>> recipes = new LinkedHashMap<>();
    private final Rewrites rewrites;
    private final BlockFixes blocks;
    private final WordFixes words;

    @Inject
    Fixes(Renaming naming) {
        this.words = new WordFixes(naming);
        CueFixes cues = new CueFixes(naming);
        this.blocks = new BlockFixes(naming);
        this.rewrites = new Rewrites();
        recipe("missing-unit", words::unit);
        recipe("unresolved-name", words::declare);
        recipe("repeated-field", words::removeRepeated);
        recipe("place-twice", words::removePlace);
        recipe("missing-field", words::slot);
        recipe("syntax", words::escape);
        recipe("syntax", words::close);
        recipe("syntax", words::comma);
        recipe("syntax", blocks::moveWaiver);
        recipe("off-mark", cues::mark);
        recipe("pins-too-close", one -> cues.later(one));
        recipe("fires-in-preroll", one -> cues.later(one));
        recipe("fires-before-timecode", one -> cues.later(one));
        recipe("fires-before-timecode", blocks::preroll);
        recipe("hold-debris", one -> cues.earlier(one));
        recipe("chain-overruns", one -> cues.earlier(one));
        recipe("pin-taken", cues::pin);
        recipe("pin-out-of-range", cues::pin);
        recipe("module-elsewhere", cues::pin);
        recipe("tube-taken", cues::tube);
        recipe("tube-calibre", cues::tube);
        recipe("tube-out-of-range", cues::tube);
        recipe("rack-elsewhere", cues::tube);
        recipe("tube-tilt", cues::tube);
        recipe("mortar-too-short", cues::longerTube);
        recipe("too-many-at-once", cues::inTurn);
        recipe("too-many-at-once", cues::split);
        recipe("no-tube", blocks::rack);
        recipe("no-tube", cues::split);
        recipe("no-pin", blocks::module);
        recipe("preroll-short", blocks::preroll);
        recipe("audio-length", blocks::length);
        recipe("audio-changed", blocks::hash);
        recipe("slot-clash", blocks::slot);
        recipe("unused-effect", blocks::removeUnused);
        recipe("waiver-unused", blocks::removeWaiver);
        recipe("waiver-expired", blocks::removeWaiver);
    }

    private void recipe(String rule, Function<Case, List<Fix>> recipe) {
        recipes.computeIfAbsent(rule, id -> new ArrayList<>()).add(recipe);
    }

    /** Rules that have fixes of their own, beside the nearest word and the waiver that many others have. */
    public Set<String> rules() {
        return Set.copyOf(recipes.keySet());
    }

    /** What can be done at a place; nothing while the check has not caught up with the text. */
    public List<CodeAction> at(ScriptView view, Optional<CheckedScript> checked, Range range, CodeActionContext context) {
        List<CodeAction> actions = new ArrayList<>();
        if (wants(context, CodeActionKind.QuickFix)) {
            checked.ifPresent(show -> quick(view, show, range, context, actions));
        }
        if (wants(context, CodeActionKind.RefactorRewrite)) {
            checked.ifPresent(show -> rewrites.at(view, show, range.getStart()).forEach(fix -> {
                CodeAction action = new CodeAction(fix.title());
                action.setKind(CodeActionKind.RefactorRewrite);
                action.setEdit(new WorkspaceEdit(fix.edits()));
                actions.add(action);
            }));
        }
        return actions;
    }

    private void quick(ScriptView view, CheckedScript show, Range range, CodeActionContext context, List<CodeAction> actions) {
        Set<String> titles = new LinkedHashSet<>();
        for (Finding finding : show.show().findings()) {
            Case one = new Case(view, show, finding);
            if (!one.isInView(finding)) {
                continue;
            }
            Range found = one.range();
            if (!touch(found, range) || !asked(context, finding, found)) {
                continue;
            }
            Diagnostic diagnostic = diagnostic(context, finding, found);
            boolean first = true;
            for (Fix fix : fixes(one)) {
                if (titles.add(fix.title() + "@" + fix.edits())) {
                    CodeAction action = new CodeAction(fix.title());
                    action.setKind(CodeActionKind.QuickFix);
                    action.setEdit(new WorkspaceEdit(fix.edits()));
                    action.setIsPreferred(first && !fix.title().startsWith("Waive") ? Boolean.TRUE : null);
                    if (diagnostic != null) {
                        action.setDiagnostics(List.of(diagnostic));
                    }
                    actions.add(action);
                    first = false;
                }
            }
        }
    }

    private List<Fix> fixes(Case one) {
        List<Fix> fixes = new ArrayList<>(words.replace(one));
        recipes.getOrDefault(one.finding().rule(), List.of()).forEach(recipe -> fixes.addAll(recipe.apply(one)));
        fixes.addAll(blocks.waive(one));
        return fixes;
    }

    private static boolean wants(CodeActionContext context, String kind) {
        return context == null || context.getOnly() == null || context.getOnly().stream().anyMatch(only -> kind.equals(only) || kind.startsWith(only + "."));
    }

    /** A client that names diagnostics wants fixes for these. */
    private static boolean asked(CodeActionContext context, Finding finding, Range range) {
        return context == null || context.getDiagnostics() == null || context.getDiagnostics().isEmpty()
                || diagnostic(context, finding, range) != null;
    }

    private static Diagnostic diagnostic(CodeActionContext context, Finding finding, Range range) {
        if (context == null || context.getDiagnostics() == null) {
            return null;
        }
        return context.getDiagnostics().stream().filter(one -> one.getCode() != null && one.getCode().isLeft()
                && one.getCode().getLeft().equals(finding.rule()) && Objects.equals(one.getRange(), range)
                && one.getMessage().isLeft() && one.getMessage().getLeft().startsWith(finding.message())).findFirst().orElse(null);
    }

    private static boolean touch(Range a, Range b) {
        return !before(a.getEnd(), b.getStart()) && !before(b.getEnd(), a.getStart());
    }

    private static boolean before(Position a, Position b) {
        return a.getLine() < b.getLine() || a.getLine() == b.getLine() && a.getCharacter() < b.getCharacter();
    }
}
