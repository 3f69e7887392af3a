package org.girandole.cli;

import java.util.function.UnaryOperator;
import org.girandole.plan.Finding;
import org.girandole.plan.script.SourceRef;

/** Findings of several projects side by side: their paths are those that can be opened from the current folder. */
final class Shown {
    private Shown() {
    }

    static Finding at(Finding f, UnaryOperator<String> path) {
        SourceRef there = f.source();
        return new Finding(f.rule(), f.severity(), f.message(), f.found(), f.allowed(), f.basis(), f.remedy(),
                new SourceRef(path.apply(there.file()), there.line(), there.column(), there.length()), f.subject(), f.data(), f.waiver());
    }
}
