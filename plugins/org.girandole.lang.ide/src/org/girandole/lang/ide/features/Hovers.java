package org.girandole.lang.ide.features;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.RulePages;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.RuleLine;
import org.girandole.lang.show.WaiverDef;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.Times;
import org.girandole.plan.explain.Explanations;
import org.girandole.plan.rules.RuleInfo;

/**
 * What is behind a word: for a cue how its moment comes about, in the words of {@code girandole explain}; for a name what it stands
 * for; for a rule what it checks.
 */
public final class Hovers {
    /** More derivations than this are not read in a hover. */
    private static final int MOST = 3;
    private static final int MOST_LINES = 20;

    private Hovers() {
    }

    public static Optional<Hover> at(ScriptView view, Optional<CheckedScript> checked, Position caret) {
        int offset = view.lines().offset(caret);
        Optional<Hover> rule = rule(view, offset);
        if (rule.isPresent()) {
            return rule;
        }
        Optional<NameUse> use = NameUse.at(view, offset);
        if (use.isPresent()) {
            String derivation = use.get().target() instanceof CueLine || isFired(view, use.get())
                    ? cues(view, checked, caret.getLine()).map(text -> "\n\n" + text).orElse("") : "";
            return Optional.of(hover(definition(use.get().target(), checked) + derivation, view, use.get().node()));
        }
        return view.around(offset, CueLine.class).flatMap(cue -> cues(view, checked, line(view, cue)).map(text -> {
            Hover hover = new Hover(new MarkupContent(MarkupKind.MARKDOWN, text));
            view.range(cue).ifPresent(hover::setRange);
            return hover;
        }));
    }

    private static int line(ScriptView view, CueLine cue) {
        return view.range(cue).map(range -> range.getStart().getLine()).orElse(-1);
    }

    /** Whether a name is the effect of a cue, not one of its places or marks. */
    private static boolean isFired(ScriptView view, NameUse use) {
        return Kind.of(use.target()).filter(kind -> kind == Kind.EFFECT || kind == Kind.CHAIN).isPresent()
                && NodeModelUtils.findActualSemanticObjectFor(use.node()) instanceof CueLine;
    }

    private static Optional<Hover> rule(ScriptView view, int offset) {
        Optional<WaiverDef> waiver = view.around(offset, WaiverDef.class);
        Optional<RuleLine> line = view.around(offset, RuleLine.class);
        String id = waiver.map(WaiverDef::getRule).or(() -> line.map(RuleLine::getRule)).orElse(null);
        EObject owner = waiver.<EObject>map(w -> w).or(() -> line.map(l -> l)).orElse(null);
        if (id == null) {
            return Optional.empty();
        }
        INode node = NodeModelUtils.findNodesForFeature(owner, owner.eClass().getEStructuralFeature("rule")).stream().findFirst().orElse(null);
        if (node == null || offset < node.getOffset() || offset > node.getEndOffset()) {
            return Optional.empty();
        }
        return RulePages.text(id).or(() -> info(id)).map(text -> hover(text, view, node));
    }

    private static Optional<String> info(String id) {
        return ShowPipeline.rules().stream().filter(rule -> rule.id().equals(id)).findFirst().map(Hovers::text);
    }

    private static String text(RuleInfo rule) {
        return "**" + rule.id() + "**\n\n" + rule.summary() + "\n\n" + rule.reason() + "\n\n" + rule.basis();
    }

    private static String definition(Named target, Optional<CheckedScript> checked) {
        String kind = Kind.of(target).map(Kind::words).map(words -> words.substring(words.indexOf(' ') + 1)).orElse("name");
        String moment = target instanceof MarkDef mark ? checked.flatMap(CheckedScript::plan).flatMap(plan -> plan.soundtracks().stream()
                .filter(soundtrack -> soundtrack.marksUs().containsKey(mark.getName())).findFirst()
                .map(soundtrack -> "\n\nat " + Times.exactClock(soundtrack.marksUs().get(mark.getName())) + " of " + soundtrack.name()))
                .orElse("") : "";
        return "**" + kind + " " + target.getName() + "**" + moment + "\n\n```show\n" + written(target) + "\n```";
    }

    private static String written(Named target) {
        INode node = NodeModelUtils.findActualNodeFor(target);
        if (node == null) {
            return "";
        }
        List<String> lines = NodeModelUtils.getTokenText(node).lines().toList();
        return lines.stream().limit(MOST_LINES).collect(Collectors.joining("\n")) + (lines.size() > MOST_LINES ? "\n…" : "");
    }

    private static Optional<String> cues(ScriptView view, Optional<CheckedScript> checked, int line) {
        List<PlannedCue> cues = checked.flatMap(script -> PlanLines.of(script, view)).map(lines -> lines.cues().getOrDefault(line, List.of()))
                .orElse(List.of());
        if (cues.isEmpty()) {
            return Optional.empty();
        }
        Explanations explanations = new Explanations(checked.flatMap(CheckedScript::plan).orElseThrow());
        String text = cues.stream().limit(MOST).map(cue -> explanations.of(cue).text()).collect(Collectors.joining("\n"));
        String more = cues.size() > MOST ? "\nAnd " + (cues.size() - MOST) + " more of this line." : "";
        return Optional.of("```text\n" + text + "```" + more);
    }

    private static Hover hover(String markdown, ScriptView view, INode node) {
        return new Hover(new MarkupContent(MarkupKind.MARKDOWN, markdown), view.range(node));
    }
}
