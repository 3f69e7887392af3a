package org.girandole.lang.ide.completion;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.Named;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;

/** Where a time begins: marks, bars, clock times; inside of figures and repetitions their own start. */
final class Moments {
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    Moments(Here here) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
    }

    void propose() {
        boolean relative = caret.block().equals("repeat") || !caret.head("figure").isEmpty();
        if (!relative) {
            marks();
            out.snippet("bar", "bar ${1:1}", "a bar of the music");
            out.snippet("bar and beat", "bar ${1:1} beat ${2:1}", "a beat of the music");
            out.snippet("minutes and seconds", "${1:0:00.000}", "a time of the music");
        } else {
            out.word("0", CompletionItemKind.Value, "at the start");
            out.snippet("beats", "${1:1} beat", "so many beats after the start");
        }
        new Parameters(here).propose();
    }

    private void marks() {
        String soundtrack = soundtrack();
        Map<String, Long> moments = here.plan().flatMap(plan -> plan.soundtrack(soundtrack))
                .map(PlannedSoundtrack::marksUs).orElse(Map.of());
        Set<String> marks = new LinkedHashSet<>(moments.keySet());
        here.names().ifPresent(names -> {
            Named owner = names.in(Space.SOUNDTRACK).get(soundtrack);
            if (owner != null) {
                names.inside(owner).values().stream().filter(MarkDef.class::isInstance).forEach(mark -> marks.add(mark.getName()));
            }
        });
        marks.forEach(mark -> out.word(here.written(mark), CompletionItemKind.Event, moments.containsKey(mark)
                ? "mark at " + Times.clock(moments.get(mark)) : "mark"));
    }

    private String soundtrack() {
        List<Word> score = caret.head("score");
        List<Word> track = caret.head("soundtrack");
        if (score.size() > 1 || track.size() > 1) {
            return score.size() > 1 ? score.get(1).name() : track.get(1).name();
        }
        // A rehearsal that names no soundtrack is of the first.
        List<Word> rehearsal = caret.head("rehearse");
        return rehearsal.size() > 3 ? rehearsal.get(3).name() : here.names().flatMap(names -> names.in(Space.SOUNDTRACK).keySet().stream().findFirst()).orElse("");
    }
}
