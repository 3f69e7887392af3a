package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.CueOption;
import org.girandole.lang.show.FanOption;
import org.girandole.lang.show.HeardOption;
import org.girandole.lang.show.LotOption;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.NoteOption;
import org.girandole.lang.show.OrderOption;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PinOption;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.TiltOption;
import org.girandole.lang.show.TubeOption;
import org.girandole.lang.show.UnitRef;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TiltRange;
import org.girandole.plan.script.TimeExpr;

/** Single lines of a score. */
final class CueLines {
    private static final int MOST_COUNT = 1000;
    private static final int MOST_NUMBER = 10_000;

    private final Compilation compilation;
    private final Times times;
    private final SiteBlock places;

    CueLines(Compilation compilation, Times times, SiteBlock places) {
        this.compilation = compilation;
        this.times = times;
        this.places = places;
    }

    /** Empty when time, places, count or effect are wrong. Options that are wrong are left out; all of it is reported. */
    Optional<ScoreItem> cue(CueLine line, Times.Place place) {
        Optional<TimeExpr> at = times.time(line.getAt(), place);
        Optional<List<PositionDef>> positions = places.expand(line.getPlaces(), place.values());
        Optional<String> effect = effect(line, place);
        OptionalInt count = count(line);
        Options options = new Options(line, place);
        if (at.isEmpty() || positions.isEmpty() || effect.isEmpty() || count.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new ScoreItem.Cue(Optional.ofNullable(line.getName()), at.get(),
                positions.get().stream().map(PositionDef::getName).toList(), options.distribution, count.getAsInt(), effect.get(), options.lot,
                options.tilt, options.fan, options.heard, options.pins, options.tubes, options.note, options.leanRefused,
                compilation.sources().upTo(line, eINSTANCE.getCueLine_Effect())));
    }

    private OptionalInt count(CueLine line) {
        if (line.getCount() == null) {
            return OptionalInt.of(1);
        }
        if (line.getCount().equals("-")) {
            compilation.problems().report(LanguageRules.SYNTAX, "'-' makes no range of positions").found("-", "..").remedy("a range is written A .. B")
                    .at(compilation.sources().of(line, eINSTANCE.getCueLine_Count()));
            return OptionalInt.empty();
        }
        return compilation.quantities().whole(line, eINSTANCE.getCueLine_Count(), line.getCount(), "a count of shots", 1, MOST_COUNT);
    }

    private Optional<String> effect(CueLine line, Times.Place place) {
        Optional<Named> named = compilation.resolve(line, eINSTANCE.getCueLine_Effect());
        if (named.isPresent() && named.get() instanceof Parameter parameter) {
            Given given = place.values().get(parameter);
            named = given == null ? Optional.empty() : given.as(compilation, parameter, Set.of(Kind.EFFECT, Kind.CHAIN));
        }
        return named.map(Named::getName);
    }

    /** What follows the effect. */
    private final class Options {
        private ScoreItem.Distribution distribution = ScoreItem.Distribution.TOGETHER;
        private Optional<String> lot = Optional.empty();
        private Optional<ScoreItem.Tilt> tilt = Optional.empty();
        private Optional<TiltRange> fan = Optional.empty();
        private boolean leanRefused;
        private boolean heard;
        private final List<ScoreItem.PinRef> pins = new ArrayList<>();
        private final List<ScoreItem.TubeRef> tubes = new ArrayList<>();
        private Optional<String> note = Optional.empty();

        Options(CueLine line, Times.Place place) {
            Set<String> seen = new HashSet<>();
            for (CueOption option : line.getOptions()) {
                if (option.getKey() == null || !once(option, seen)) {
                    continue;
                }
                if (option instanceof FanOption f) {
                    fan = fan(f);
                    leanRefused = fan.isEmpty();
                } else if (option instanceof TiltOption t) {
                    tilt = tilt(t);
                    leanRefused = tilt.isEmpty();
                } else if (option instanceof OrderOption o) {
                    distribution = order(o, place);
                } else if (option instanceof HeardOption) {
                    heard = true;
                } else if (option instanceof LotOption l) {
                    lot = compilation.resolvedName(l, eINSTANCE.getLotOption_Lot());
                } else if (option instanceof PinOption p) {
                    p.getPins().forEach(pin -> number(pin, "a pin").ifPresent(n -> pins.add(new ScoreItem.PinRef(n.owner, n.number, n.source))));
                } else if (option instanceof TubeOption t) {
                    t.getTubes().forEach(tube -> number(tube, "a tube")
                            .ifPresent(n -> tubes.add(new ScoreItem.TubeRef(n.owner, n.number, n.source))));
                } else if (option instanceof NoteOption n) {
                    note = Optional.ofNullable(n.getText());
                }
            }
        }

        private boolean once(CueOption option, Set<String> seen) {
            String subject = option instanceof OrderOption ? "every" : option instanceof FanOption ? "tilt" : option.getKey();
            if (seen.add(subject)) {
                return true;
            }
            String message = switch (subject) {
                case "every" -> "The places of a cue follow each other in one order only";
                case "tilt" -> "A cue has a tilt or a fan, and that once";
                default -> "'" + option.getKey() + "' is said twice of this cue";
            };
            compilation.problems().report(LanguageRules.REPEATED_FIELD, message).remedy("keep one of the two")
                    .at(compilation.sources().of(option, eINSTANCE.getCueOption_Key()));
            return false;
        }

        private Optional<TiltRange> fan(FanOption option) {
            Optional<Double> from = compilation.quantities().si(option.getFrom(), Range.TILT);
            Optional<Double> to = compilation.quantities().si(option.getTo(), Range.TILT);
            return from.isEmpty() || to.isEmpty() ? Optional.empty() : Optional.of(new TiltRange(from.get(), to.get()));
        }

        private Optional<ScoreItem.Tilt> tilt(TiltOption option) {
            Optional<Double> angle = compilation.quantities().si(option.getAngle(), Range.TILT);
            if (angle.isEmpty()) {
                return Optional.empty();
            }
            if (option.getLean() == null) {
                return Optional.of(new ScoreItem.Tilt(angle.get(), ScoreItem.Lean.SIDE, Optional.empty()));
            }
            if ("away".equals(option.getLean())) {
                return Optional.of(new ScoreItem.Tilt(angle.get(), ScoreItem.Lean.AWAY_FROM_AUDIENCE, Optional.empty()));
            }
            if (option.isAudience()) {
                return Optional.of(new ScoreItem.Tilt(angle.get(), ScoreItem.Lean.TOWARD_AUDIENCE, Optional.empty()));
            }
            return compilation.quantities().si(option.getBearing(), Range.BEARING)
                    .map(bearing -> new ScoreItem.Tilt(angle.get(), ScoreItem.Lean.BEARING, Optional.of(bearing)));
        }

        private ScoreItem.Distribution order(OrderOption option, Times.Place place) {
            Optional<Duration> every = times.duration(option.getEvery(), place);
            if (every.isEmpty()) {
                return ScoreItem.Distribution.TOGETHER;
            }
            ScoreItem.Order order = switch (option.getKey()) {
                case "outward" -> ScoreItem.Order.OUTWARD;
                case "inward" -> ScoreItem.Order.INWARD;
                case "alternating" -> ScoreItem.Order.ALTERNATING;
                default -> ScoreItem.Order.IN_TURN;
            };
            return new ScoreItem.Distribution(order, every);
        }

        private Optional<Numbered> number(UnitRef ref, String what) {
            Optional<String> owner = compilation.resolvedName(ref, eINSTANCE.getUnitRef_Owner());
            OptionalInt number = compilation.quantities().whole(ref, eINSTANCE.getUnitRef_Number(), ref.getNumber(), what, 1, MOST_NUMBER);
            return owner.isEmpty() || number.isEmpty() ? Optional.empty()
                    : Optional.of(new Numbered(owner.get(), number.getAsInt(), compilation.sources().whole(ref)));
        }
    }

    private record Numbered(String owner, int number, SourceRef source) {
    }
}
