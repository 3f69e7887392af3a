package org.girandole.lang.ide.completion;

import java.util.List;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ShowScript;

/** Pins and tubes that no cue uses. */
final class Loading {
    private static final int SHOWN = 3;

    private final Here here;

    Loading(Here here) {
        this.here = here;
    }

    void pins() {
        here.free().ifPresent(free -> {
            for (Module module : free.plan().script().modules()) {
                List<Integer> pins = free.pins(module);
                pins.stream().limit(SHOWN).forEach(pin -> here.out().word(here.written(module.name()) + "/" + pin, CompletionItemKind.Value,
                        "free; " + pins.size() + " free on " + module.name() + " at " + String.join(", ", module.positions())));
            }
        });
    }

    void tubes(List<String> positions) {
        here.free().ifPresent(free -> {
            for (Rack rack : free.plan().script().racks()) {
                if (positions.isEmpty() || positions.contains(rack.position())) {
                    free.tubes(rack).stream().limit(SHOWN).forEach(tube -> here.out().word(here.written(rack.name()) + "/" + tube,
                            CompletionItemKind.Value, "free tube at " + rack.position()));
                }
            }
        });
    }

    /** Free numbers behind {@code M1/}. */
    void numbers() {
        List<Word> words = here.caret().statement();
        String owner = words.size() < 2 ? "" : words.get(words.size() - 2).name();
        here.free().ifPresent(free -> {
            ShowScript show = free.plan().script();
            show.modules().stream().filter(module -> module.name().equals(owner)).forEach(module -> free.pins(module)
                    .forEach(pin -> here.out().word(pin.toString(), CompletionItemKind.Value, "free pin of " + owner)));
            show.racks().stream().filter(rack -> rack.name().equals(owner)).forEach(rack -> free.tubes(rack)
                    .forEach(tube -> here.out().word(tube.toString(), CompletionItemKind.Value, "free tube of " + owner)));
        });
    }
}
