package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Parameter;

/** Lines of a score, of its sections and repetitions, and of figures. */
final class Scores {
    static final Set<String> BLOCKS = Set.of("score", "section", "repeat", "figure");
    private static final List<String> BEGINNINGS = List.of("at", "cue", "repeat", "play", "hold", "section");

    private final Here here;
    private final Caret caret;
    private final Proposals out;

    Scores(Here here) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
    }

    void propose() {
        List<Word> words = caret.statement();
        Word last = caret.last();
        if (caret.begins()) {
            Snippets.SCORE.stream().filter(snippet -> stands(snippet.text())).forEach(snippet -> out.snippet(snippet.label(), snippet.text(), snippet.detail()));
            BEGINNINGS.stream().filter(this::stands).forEach(word -> here.keyword(true, word));
        }
        switch (words.isEmpty() ? "" : words.get(0).text()) {
            case "at" -> cue(words.subList(1, words.size()));
            case "cue" -> {
                int at = indexOf(words, "at");
                if (at < 0) {
                    here.keyword(words.size() > 1, "at");
                } else {
                    cue(words.subList(at + 1, words.size()));
                }
            }
            case "play" -> play(words, last);
            case "hold", "section", "repeat" -> span(words, last);
            default -> {
                // Nothing is begun yet.
            }
        }
    }

    /** Sections stand in a score alone, holds not in what is played again and again. */
    private boolean stands(String line) {
        return switch (caret.block()) {
            case "score" -> true;
            case "section" -> !line.startsWith("section");
            default -> !line.startsWith("section") && !line.startsWith("hold");
        };
    }

    private void span(List<Word> words, Word last) {
        int from = Math.max(Math.max(lastIndexOf(words, "from"), lastIndexOf(words, "to")), lastIndexOf(words, "every"));
        if (from < 0) {
            here.keyword(true, words.get(0).is("repeat") ? "every" : "from");
            return;
        }
        CueSlot slot = CueSlot.of(words.subList(from + 1, words.size()));
        slot.expects().forEach(expected -> {
            if (expected != CueSlot.Expected.PLACE && expected != CueSlot.Expected.EFFECT) {
                expected(expected, slot);
            }
        });
        here.keyword(last.isNumber() || slot.expects().contains(CueSlot.Expected.PLACE), words.get(0).is("repeat") ? "from" : "to");
    }

    private void play(List<Word> words, Word last) {
        if (words.size() == 1) {
            here.names().ifPresent(names -> names.in(Space.FIGURE).values().forEach(named -> {
                FigureDef figure = (FigureDef) named;
                List<String> gaps = new ArrayList<>();
                for (Parameter parameter : figure.getParameters()) {
                    gaps.add("${" + (gaps.size() + 1) + ":" + parameter.getName() + "}");
                }
                out.snippet(here.written(figure.getName()), here.written(figure.getName()) + "(" + String.join(", ", gaps) + ") at ${"
                        + (gaps.size() + 1) + ":bar 1}", "a figure with its values");
            }));
        } else if (last.is("(") || last.is(",")) {
            new Effects(here).at(List.of());
            here.names().ifPresent(names -> names.in(Space.PLACE).values().forEach(here::name));
            new Moments(here).propose();
        } else if (last.is("at") || lastIndexOf(words, ")") >= 0 && lastIndexOf(words, "at") > lastIndexOf(words, ")")) {
            CueSlot slot = CueSlot.of(words.subList(lastIndexOf(words, "at") + 1, words.size()));
            slot.expects().stream().filter(expected -> expected != CueSlot.Expected.PLACE).forEach(expected -> expected(expected, slot));
        } else if (last.isNumber()) {
            here.keyword(true, Units.TIME.toArray(String[]::new));
        } else {
            here.keyword(true, "at");
        }
    }

    private void cue(List<Word> words) {
        CueSlot slot = CueSlot.of(words);
        slot.expects().forEach(expected -> expected(expected, slot));
    }

    private void expected(CueSlot.Expected expected, CueSlot slot) {
        switch (expected) {
            case ANCHOR -> new Moments(here).propose();
            case BEAT_WORD -> here.keyword(true, "beat");
            case TIME_UNIT, STEP_UNIT -> here.keyword(true, Units.TIME.toArray(String[]::new));
            case STEP -> new Parameters(here).propose();
            case PLACE -> new Places(here).propose();
            case EFFECT -> new Effects(here).at(slot.places());
            case OPTION -> new CueOptions(here).propose(slot);
            default -> {
                // A number, or a sign: nothing that could be proposed.
            }
        }
    }

    private static int indexOf(List<Word> words, String word) {
        return words.stream().map(Word::text).toList().indexOf(word);
    }

    private static int lastIndexOf(List<Word> words, String word) {
        return words.stream().map(Word::text).toList().lastIndexOf(word);
    }
}
