package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.plan.Finding;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.Rules;

/** Waivers and rule lines: what somebody agrees to, and how seriously a rule is taken. */
final class Agreements {
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    Agreements(Here here) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
    }

    void waiver() {
        Word last = caret.last();
        int size = caret.statement().size();
        if (size == 1 || last.is("-")) {
            waivable();
        } else if (last.is("for")) {
            subjects();
        } else if (last.is("at")) {
            here.names(Space.PLACE, Kind.POSITION);
        } else if (last.is("because") || last.is("by")) {
            out.snippet("a text in quotes", "\"${1:" + (last.is("by") ? "who agreed" : "why it is safe all the same") + "}\"", "");
        } else if (last.is("until")) {
            here.plan().flatMap(plan -> plan.script().show().date())
                    .ifPresent(date -> out.word(date.plusDays(1).toString(), CompletionItemKind.Value, "the day after the show"));
        } else {
            here.keyword(true, "for", "at", "because", "by", "until");
        }
    }

    /** What is found just now comes first: that is what is to be waived. */
    private void waivable() {
        Map<String, Finding> found = new HashMap<>();
        here.found().forEach(finding -> found.putIfAbsent(finding.rule(), finding));
        List<RuleInfo> rules = new ArrayList<>(Rules.infos());
        rules.sort((a, b) -> Boolean.compare(!found.containsKey(a.id()), !found.containsKey(b.id())));
        for (RuleInfo rule : rules) {
            Finding finding = found.get(rule.id());
            out.word(rule.id(), CompletionItemKind.Value, finding == null ? rule.summary() : "found: " + finding.message(), rule.reason());
        }
    }

    private void subjects() {
        Set<String> subjects = new LinkedHashSet<>();
        String rule = String.join("", caret.statement().stream().skip(1).takeWhile(word -> !word.is("for")).map(Word::text).toList());
        here.found().stream().filter(finding -> finding.rule().equals(rule)).forEach(finding -> subjects.addAll(finding.subject().names()));
        subjects.forEach(name -> out.word(here.written(name), CompletionItemKind.Class, "found by " + rule));
        for (Space space : List.of(Space.SHOT, Space.CUE, Space.MODULE, Space.RACK, Space.SOUNDTRACK, Space.AREA)) {
            here.names().ifPresent(names -> names.in(space).values().forEach(here::name));
        }
    }

    void rule() {
        if (caret.last().is("is")) {
            here.keyword(true, "error", "warning", "info");
        } else if (caret.statement().size() == 1 || caret.last().is("-")) {
            ShowPipeline.rules().forEach(rule -> out.word(rule.id(), CompletionItemKind.Value, rule.summary(), rule.reason()));
        } else {
            here.keyword(true, "is");
        }
    }
}
