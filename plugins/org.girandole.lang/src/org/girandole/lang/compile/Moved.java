package org.girandole.lang.compile;

import java.util.Optional;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/** A compiled cue line that now stands elsewhere in the same file. */
final class Moved {
    private final SourceRef from;
    private final SourceRef to;

    private Moved(SourceRef from, SourceRef to) {
        this.from = from;
        this.to = to;
    }

    /** The same cue, its text beginning at {@code start}; the same object when it has not moved. */
    static ScoreItem.Cue to(ScoreItem.Cue cue, SourceRef start) {
        SourceRef from = cue.source();
        return from.line() == start.line() && from.column() == start.column() ? cue : new Moved(from, start).cue(cue);
    }

    private ScoreItem.Cue cue(ScoreItem.Cue cue) {
        return new ScoreItem.Cue(cue.name(), time(cue.at()), cue.positions(), distribution(cue.distribution()), cue.count(), cue.effect(),
                cue.lot(), cue.tilt(), cue.fan(), cue.heard(),
                cue.pins().stream().map(pin -> new ScoreItem.PinRef(pin.module(), pin.pin(), source(pin.source()))).toList(),
                cue.tubes().stream().map(tube -> new ScoreItem.TubeRef(tube.rack(), tube.tube(), source(tube.source()))).toList(),
                cue.note(), cue.leanRefused(), source(cue.source()));
    }

    private TimeExpr time(TimeExpr time) {
        return new TimeExpr(time.anchor(), time.steps(), source(time.source()));
    }

    private ScoreItem.Distribution distribution(ScoreItem.Distribution distribution) {
        Optional<Duration> every = distribution.every().map(span -> new Duration(span.steps(), source(span.source())));
        return every.isEmpty() ? distribution : new ScoreItem.Distribution(distribution.order(), every);
    }

    /** Columns move with the start on its own line only. */
    private SourceRef source(SourceRef source) {
        int column = source.line() == from.line() ? source.column() + to.column() - from.column() : source.column();
        return new SourceRef(source.file(), source.line() + to.line() - from.line(), column, source.length());
    }
}
