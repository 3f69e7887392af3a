package org.girandole.lang.ide.completion;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.scoping.Kind.Space;

/** Effects and chains. */
final class Effects {
    private final Here here;

    Effects(Here here) {
        this.here = here;
    }

    /** What some free tube of all these places fits comes first, with how many more could be loaded. */
    void at(List<String> places) {
        Optional<Free> free = here.free();
        List<String> positions = new Places(here).positions(places);
        List<Runnable> without = new ArrayList<>();
        here.names().ifPresent(names -> names.in(Space.SHOT).values().forEach(named -> {
            Optional<Integer> room = Optional.empty();
            boolean known = free.isPresent() && !positions.isEmpty();
            for (String position : known ? positions : List.<String>of()) {
                Optional<Integer> there = free.get().room(named.getName(), position);
                room = there.isEmpty() ? room : room.isEmpty() ? there : Optional.of(Math.min(room.get(), there.get()));
            }
            String label = Here.label(named);
            if (room.isPresent() && room.get() == 0) {
                without.add(() -> here.out().word(here.written(named.getName()), CompletionItemKind.Class, label + " (no free tube here)"));
            } else {
                String fits = room.map(count -> " (room for " + count + " more here)").orElse("");
                here.out().word(here.written(named.getName()), CompletionItemKind.Class, label + fits);
            }
        }));
        new Parameters(here).propose();
        without.forEach(Runnable::run);
    }
}
