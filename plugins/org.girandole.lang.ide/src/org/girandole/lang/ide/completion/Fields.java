package org.girandole.lang.ide.completion;

import java.util.Set;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.xtext.ParserRule;
import org.girandole.lang.compile.Vocabulary;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.services.ShowGrammarAccess;

/** Blocks of fields: everything but scores. */
final class Fields {
    static final Set<String> EFFECTS = Set.of("shell", "salute", "mine", "comet", "candle", "cake", "fountain", "wheel", "flare", "rocket");

    private final ShowGrammarAccess grammar;
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    Fields(Here here, ShowGrammarAccess grammar) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
        this.grammar = grammar;
    }

    void propose(String block) {
        Word last = caret.last();
        if (last.isNumber()) {
            new Units(here).behindNumber(block);
        }
        switch (last.text()) {
            case "igniter" -> here.names(Space.IGNITER, Kind.IGNITER);
            case "site" -> here.names(Space.SITE, Kind.SITE);
            case "system" -> here.names(Space.FIRING_SYSTEM, Kind.FIRING_SYSTEM);
            case "lead" -> {
                here.names(Space.WIRE, Kind.WIRE);
                here.keyword(block.equals("module type"), "at most");
            }
            case "by" -> distances();
            case "ending" -> here.keyword(true, "crlf", "lf");
            case "header" -> here.keyword(true, "yes", "no");
            case "join" -> here.keyword(true, "series", "parallel");
            case "sheets" -> here.keyword(true, "pdf", "html");
            case "paper" -> here.keyword(true, "A4", "Letter");
            case "marks" -> here.keyword(true, block.equals("release") ? new String[] {"midi", "labels", "cues"} : new String[] {"from"});
            case "as" -> new Columns(here).formats();
            case "=" -> {
                if (block.equals("table")) {
                    new Columns(here).fields();
                } else {
                    new Places(here).propose();
                }
            }
            default -> fieldDefault(block, last);
        }
    }

    private void fieldDefault(String block, Word last) {
        if (block.equals("release") && last.is("table")) {
            here.keyword(true, "standard");
            here.names(Space.TABLE, Kind.TABLE);
            return;
        }
        if (block.equals("soundtrack") && caret.statement().stream().anyMatch(word -> word.is("mark")) || block.equals("tempo")) {
            if (last.is("at")) {
                new Moments(here).propose();
                return;
            }
            here.keyword(block.equals("tempo") && last.isNumber(), "bpm", "ramp to", "4/4", "3/4");
        }
        if (block.equals("site") && caret.statement().stream().anyMatch(word -> word.is("group"))
                && (last.is(",") || last.is("..")) && caret.statement().stream().anyMatch(word -> word.is("="))) {
            new Places(here).propose();
            return;
        }
        if (block.equals("rehearse")) {
            switch (last.text()) {
                case "fired", "suppressed", "skipped" -> here.names(Space.CUE, Kind.CUE);
                case "from", "to", "at" -> new Moments(here).propose();
                default -> {
                    // The words of the block follow below.
                }
            }
        }
        if (block.equals("table") && caret.statement().stream().anyMatch(word -> word.is("="))) {
            here.keyword(true, "as");
        }
        ParserRule rule = fields(block);
        if (rule != null) {
            Vocabulary.of(rule).forEach(word -> out.word(word, CompletionItemKind.Field, ""));
        }
        here.keyword(block.equals("tempo"), "at", "bar");
    }

    private ParserRule fields(String block) {
        return switch (block) {
            case "show" -> grammar.getShowFieldRule();
            case "soundtrack" -> grammar.getSoundtrackFieldRule();
            case "lot" -> grammar.getLotFieldRule();
            case "chain" -> grammar.getChainFieldRule();
            case "site" -> grammar.getSiteFieldRule();
            case "igniter" -> grammar.getIgniterFieldRule();
            case "wire" -> grammar.getWireFieldRule();
            case "module type" -> grammar.getModuleTypeFieldRule();
            case "rack" -> grammar.getRackFieldRule();
            case "firing" -> grammar.getFiringSystemFieldRule();
            case "rehearse" -> grammar.getRehearsalFieldRule();
            case "distances" -> grammar.getDistancesFieldRule();
            case "table" -> grammar.getTableFieldRule();
            case "release" -> grammar.getReleaseFieldRule();
            default -> EFFECTS.contains(block) ? grammar.getEffectFieldRule() : null;
        };
    }

    private void distances() {
        here.plan().ifPresent(plan -> plan.script().distanceTables()
                .forEach(table -> out.word(table.name(), CompletionItemKind.Interface, "a distance table")));
        here.names(Space.DISTANCES, Kind.DISTANCES);
    }
}
