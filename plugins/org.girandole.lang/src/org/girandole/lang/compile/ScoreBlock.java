package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.Argument;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.HoldLine;
import org.girandole.lang.show.Item;
import org.girandole.lang.show.NameAnchor;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PlayLine;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.StrayItem;
import org.girandole.lang.show.StrayWaiver;
import org.girandole.plan.script.Duration;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/** Scores with their sections, repetitions and figures. */
final class ScoreBlock {
    private static final int MOST_SLOT = 999;
    private static final int MOST_REPEATS = 10_000;
    /** Figures that play figures multiply; a show has no more lines than this. */
    private static final int MOST_ITEMS = 500_000;

    private static final List<String> LINES = List.of("at", "cue", "repeat", "play", "section", "hold");

    private final Compilation compilation;
    private final Times times;
    private final CueLines cues;
    private final Music music;
    private final Optional<CueMemory.Round> memory;
    private final Set<FigureDef> playing = new LinkedHashSet<>();
    private final Set<FigureDef> played = new HashSet<>();
    private int items;
    /** The soundtrack of the score being compiled; null where there is none around. */
    private String score;

    /** @param memory of lines that may be known already; empty to compile all of them */
    ScoreBlock(Compilation compilation, Times times, SiteBlock places, Music music, Optional<CueMemory.Round> memory) {
        this.memory = memory;
        this.compilation = compilation;
        this.times = times;
        this.cues = new CueLines(compilation, times, places);
        this.music = music;
    }

    Optional<Score> score(ScoreDef def) {
        Optional<SoundtrackDef> soundtrack = compilation.resolve(def, eINSTANCE.getScoreDef_Soundtrack(), SoundtrackDef.class);
        if (soundtrack.isEmpty()) {
            return Optional.empty();
        }
        OptionalInt slot = compilation.quantities().whole(def, eINSTANCE.getScoreDef_Slot(), def.getSlot(), "a slot", 0, MOST_SLOT);
        if (def.getSlot() == null) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, "This score does not say which slot of the controller it is for")
                    .found("nothing", "in slot and its number").remedy("write score " + soundtrack.get().getName() + " in slot 0")
                    .at(compilation.sources().of(def, eINSTANCE.getScoreDef_Soundtrack()));
        }
        if (def.getSlot() != null && !def.isInto()) {
            compilation.problems().report(LanguageRules.SYNTAX, "The slot of the score stands there without its 'in'").found("slot " + def.getSlot(),
                    "in slot " + def.getSlot()).remedy("write 'in' before it").at(compilation.sources().of(def, eINSTANCE.getScoreDef_Slot()));
        }
        if (slot.isEmpty()) {
            return Optional.empty();
        }
        Times.Place place = new Times.Place(Map.of(), music.importedMarks(soundtrack.get()), false);
        score = soundtrack.get().getName();
        List<Score.Section> sections = new ArrayList<>();
        List<Score.Hold> holds = new ArrayList<>();
        List<ScoreItem> loose = new ArrayList<>();
        for (Item item : def.getItems()) {
            if (item instanceof SectionDef section) {
                section(section, place, holds).ifPresent(sections::add);
            } else if (item instanceof HoldLine hold) {
                hold(hold, place).ifPresent(holds::add);
            } else {
                item(item, place).ifPresent(loose::add);
            }
        }
        score = null;
        return Optional.of(new Score(soundtrack.get().getName(), slot.getAsInt(), sections, loose, holds,
                compilation.sources().of(def, eINSTANCE.getScoreDef_Soundtrack())));
    }

    private Optional<Score.Section> section(SectionDef def, Times.Place place, List<Score.Hold> holds) {
        Optional<TimeExpr> from = times.time(def.getFrom(), place);
        Optional<TimeExpr> to = times.time(def.getTo(), place);
        List<ScoreItem> inside = new ArrayList<>();
        for (Item item : def.getItems()) {
            if (item instanceof HoldLine hold) {
                hold(hold, place).ifPresent(holds::add);
            } else if (item instanceof SectionDef nested) {
                misplaced(nested, "A section stands in a score, not in another section");
            } else {
                item(item, place).ifPresent(inside::add);
            }
        }
        if (from.isEmpty() || to.isEmpty() || def.getName() == null) {
            return Optional.empty();
        }
        return Optional.of(new Score.Section(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), from.get(), to.get(),
                inside, compilation.sources().of(def)));
    }

    private Optional<Score.Hold> hold(HoldLine hold, Times.Place place) {
        Optional<TimeExpr> from = times.time(hold.getFrom(), place);
        Optional<TimeExpr> to = times.time(hold.getTo(), place);
        return from.isEmpty() || to.isEmpty() ? Optional.empty() : Optional.of(new Score.Hold(from.get(), to.get(),
                hold.getReason() == null ? "" : hold.getReason(), compilation.sources().whole(hold)));
    }

    private void misplaced(Item item, String message) {
        compilation.problems().report(LanguageRules.SYNTAX, message).remedy("move it to where it belongs")
                .at(compilation.sources().of(item));
    }

    private Optional<ScoreItem> item(Item item, Times.Place place) {
        compilation.goOn();
        if (++items > MOST_ITEMS) {
            if (items == MOST_ITEMS + 1) {
                compilation.problems().report(LanguageRules.NUMBER_RANGE, "The figures of this show multiply to more lines than can be shot")
                        .found("more than " + MOST_ITEMS + " lines", "at most " + MOST_ITEMS + " lines")
                        .remedy("let figures play fewer figures").at(compilation.sources().whole(item));
            }
            return Optional.empty();
        }
        if (item instanceof CueLine cue) {
            return cue(cue, place);
        }
        if (item instanceof RepeatBlock repeat) {
            return repeat(repeat, place);
        }
        if (item instanceof PlayLine play) {
            return play(play, place);
        }
        if (item instanceof StrayItem stray) {
            stray(stray);
        } else if (item instanceof StrayWaiver waiver) {
            waiver(waiver);
        } else {
            misplaced(item, item instanceof HoldLine ? "A hold stands in a score or section, not in a repetition or figure"
                    : "A section stands in a score, not in a repetition or figure");
        }
        return Optional.empty();
    }

    /** What a line in a figure means hangs on what the figure is given, so that only others are remembered. */
    private Optional<ScoreItem> cue(CueLine cue, Times.Place place) {
        if (memory.isEmpty() || score == null || !playing.isEmpty()) {
            return cues.cue(cue, place);
        }
        SourceRef start = compilation.sources().whole(cue);
        return memory.get().cue(new CueMemory.Line(score, start.file(), place.relative(), Sources.written(cue)), start, compilation.problems(),
                () -> cues.cue(cue, place));
    }

    /** Where the block around it is not closed, that is what is wrong: the waiver stands after it. */
    private void waiver(StrayWaiver waiver) {
        if (Sources.written(waiver.eContainer()).endsWith("}")) {
            compilation.problems().report(LanguageRules.SYNTAX, "A waiver stands outside of the score, not among its lines")
                    .found("a waiver among the lines of a score or figure", "a waiver after the brace that closes it")
                    .remedy("move it below the brace that closes the score")
                    .at(compilation.sources().whole(waiver));
        }
    }

    private void stray(StrayItem stray) {
        if (joinsEffects(stray)) {
            compilation.problems().report(LanguageRules.SYNTAX, "A cue fires one effect; '" + stray.getWord() + "' joins no other to it")
                    .found(stray.getWord(), "one effect in a cue").remedy("write what follows as a cue of its own at the same time")
                    .at(compilation.sources().of(stray, eINSTANCE.getStrayItem_Word()));
            return;
        }
        Strays.report(compilation, stray, eINSTANCE.getStrayItem_Word(), stray.getWord(), "a line of a score", LINES,
                "a cue is written: at TIME PLACES EFFECT");
    }

    /** Whether it is a comma or a word for it right after a cue that has its effect. */
    private static boolean joinsEffects(StrayItem stray) {
        if (!",".equals(stray.getWord()) && !Joints.is(stray.getWord())) {
            return false;
        }
        List<EObject> lines = stray.eContainer().eContents();
        int before = lines.indexOf(stray) - 1;
        return before >= 0 && lines.get(before) instanceof CueLine cue && cue.getEffect() != null;
    }

    private List<ScoreItem> inside(List<Item> written, Times.Place place) {
        List<ScoreItem> inside = new ArrayList<>();
        for (Item item : written) {
            item(item, place).ifPresent(inside::add);
        }
        return inside;
    }

    private Optional<ScoreItem> repeat(RepeatBlock repeat, Times.Place place) {
        OptionalInt count = compilation.quantities().whole(repeat, eINSTANCE.getRepeatBlock_Times(), repeat.getTimes(), "a number of repetitions",
                1, MOST_REPEATS);
        Optional<Duration> every = times.duration(repeat.getEvery(), place);
        Optional<TimeExpr> from = repeat.getFrom() == null
                ? Optional.of(new TimeExpr(new TimeExpr.Origin(), List.of(), compilation.sources().of(repeat, eINSTANCE.getRepeatBlock_Times())))
                : times.time(repeat.getFrom(), place);
        List<ScoreItem> inside = inside(repeat.getItems(), place.inside());
        if (count.isEmpty() || every.isEmpty() || from.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new ScoreItem.Repeat(count.getAsInt(), every.get(), from.get(), inside,
                compilation.sources().of(repeat, eINSTANCE.getRepeatBlock_Times())));
    }

    private Optional<ScoreItem> play(PlayLine play, Times.Place place) {
        Optional<FigureDef> figure = compilation.resolve(play, eINSTANCE.getPlayLine_Figure(), FigureDef.class);
        Optional<TimeExpr> at = times.time(play.getAt(), place);
        Map<Parameter, Given> values = new HashMap<>();
        if (figure.isEmpty() || !fill(figure.get(), play, place, values) || at.isEmpty()) {
            return Optional.empty();
        }
        if (!playing.add(figure.get())) {
            List<String> names = new ArrayList<>();
            playing.stream().dropWhile(f -> f != figure.get()).forEach(f -> names.add(f.getName()));
            names.add(figure.get().getName());
            compilation.problems().report(LanguageRules.FIGURE_CYCLE, names.size() == 2 ? "The figure '" + names.get(0) + "' plays itself"
                    : "These figures play each other in a circle: " + String.join(" -> ", names))
                    .found(String.join(" -> ", names), "figures that end").remedy("take one play out of the circle")
                    .at(compilation.sources().of(play, eINSTANCE.getPlayLine_Figure()));
            return Optional.empty();
        }
        played.add(figure.get());
        List<ScoreItem> inside = inside(figure.get().getItems(), new Times.Place(values, Set.of(), true));
        playing.remove(figure.get());
        return Optional.of(new ScoreItem.Play(figure.get().getName(), at.get(), inside,
                compilation.sources().upTo(play, eINSTANCE.getPlayLine_Figure())));
    }

    private boolean fill(FigureDef figure, PlayLine play, Times.Place place, Map<Parameter, Given> values) {
        if (figure.getParameters().stream().anyMatch(parameter -> parameter.getName() == null)) {
            return false;
        }
        int wanted = figure.getParameters().size();
        int given = play.getArguments().size();
        if (wanted != given) {
            List<String> names = figure.getParameters().stream().map(Parameter::getName).toList();
            compilation.problems().report(LanguageRules.FIGURE_ARGUMENTS, "The figure '" + figure.getName() + "' wants "
                    + Words.count(wanted, "value") + (wanted == 0 ? "" : " (" + String.join(", ", names) + ")") + " and is given " + given)
                    .found(Words.count(given, "value"), Words.count(wanted, "value"))
                    .remedy(wanted == 0 ? "leave out the brackets" : "write " + figure.getName() + "(" + String.join(", ", names)
                            + ") with a value for each").at(compilation.sources().of(play, eINSTANCE.getPlayLine_Figure()));
            return false;
        }
        boolean whole = true;
        for (int i = 0; i < wanted; i++) {
            Optional<Given> value = given(play.getArguments().get(i), place);
            whole &= value.isPresent();
            Parameter parameter = figure.getParameters().get(i);
            value.ifPresent(v -> values.put(parameter, v));
        }
        return whole;
    }

    private Optional<Given> given(Argument argument, Times.Place place) {
        org.girandole.lang.show.TimeExpr value = argument.getValue();
        if (value != null && value.getAnchor() instanceof NameAnchor anchor) {
            Optional<Named> named = compilation.resolve(anchor, eINSTANCE.getNameAnchor_Target());
            if (named.isEmpty()) {
                return Optional.empty();
            }
            if (named.get() instanceof Parameter outer && value.getSteps().isEmpty()) {
                return Optional.ofNullable(place.values().get(outer));
            }
            if (value.getSteps().isEmpty()) {
                return Optional.of(new Given(named, Optional.empty(), compilation.sources().whole(argument)));
            }
        }
        // A fixed moment is let through here; where the figure uses it as a length of time, that is reported.
        return times.time(value, new Times.Place(place.values(), place.marks(), false))
                .map(time -> new Given(Optional.empty(), Optional.of(time), compilation.sources().whole(argument)));
    }

    /** A figure that nothing plays is looked through all the same, as far as that goes without its values. */
    void unplayed(FigureDef figure) {
        if (!played.contains(figure)) {
            inside(figure.getItems(), new Times.Place(Map.of(), Set.of(), true));
        }
    }
}
