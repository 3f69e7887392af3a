package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.CueEndField;
import org.girandole.lang.show.JumpField;
import org.girandole.lang.show.MomentField;
import org.girandole.lang.show.QuantityField;
import org.girandole.lang.show.RehearsalDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.StretchField;
import org.girandole.plan.script.Rehearsal;
import org.girandole.plan.script.Rehearsal.CueEnds;
import org.girandole.plan.script.Rehearsal.Drift;
import org.girandole.plan.script.Rehearsal.Limit;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;

/** Rehearsals. One of which any part is wrong is left out: half a night proves nothing. */
final class Rehearsals {
    private static final int MOST_SLOT = 999;
    private static final Map<String, Drift.Way> CLOCKS = Map.of("clock off by", Drift.Way.EITHER, "clock slow by", Drift.Way.SLOW,
            "clock fast by", Drift.Way.FAST);
    private static final Map<String, Limit.Side> LIMITS = Map.of("expect no cue later than", Limit.Side.LATER,
            "expect no cue earlier than", Limit.Side.EARLIER);
    private static final Map<String, CueEnds.End> ENDS = Map.of("expect fired", CueEnds.End.FIRED, "expect suppressed",
            CueEnds.End.SUPPRESSED, "expect skipped", CueEnds.End.SKIPPED);
    private static final Set<String> MANY = Set.of("timecode lost", "released", "code jumps to", "expect fired", "expect suppressed",
            "expect skipped");

    private final Compilation compilation;
    private final Times times;
    private final Music music;
    private final List<SoundtrackDef> soundtracks;
    private final Map<String, SourceRef> named = new HashMap<>();
    private boolean whole;

    Rehearsals(Compilation compilation, Times times, Music music, List<SoundtrackDef> soundtracks) {
        this.compilation = compilation;
        this.times = times;
        this.music = music;
        this.soundtracks = soundtracks;
    }

    Optional<Rehearsal> rehearsal(RehearsalDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a rehearsal", compilation.grammar().getRehearsalFieldRule(), MANY);
        whole = true;
        Optional<SoundtrackDef> soundtrack = soundtrack(def);
        String name = def.getLabel() == null ? "" : def.getLabel();
        if (name.isBlank()) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, "A rehearsal needs a name, so that it can be asked for")
                    .found("nothing", "a name in quotes").remedy("write rehearse \"Lost code\" { … }").at(compilation.sources().of(def));
            return Optional.empty();
        }
        SourceRef source = compilation.sources().of(def, eINSTANCE.getRehearsalDef_Label());
        SourceRef first = named.putIfAbsent(name, source);
        if (first != null) {
            compilation.problems().report(LanguageRules.DUPLICATE_NAME, "There is already a rehearsal '" + Words.shown(name) + "', in "
                    + first.file() + " line " + first.line()).found(Words.shown(name), "each name once").remedy("rename one of the two")
                    .at(source);
            return Optional.empty();
        }
        if (soundtrack.isEmpty()) {
            return Optional.empty();
        }
        Times.Place place = new Times.Place(Map.of(), music.importedMarks(soundtrack.get()), false);
        List<Rehearsal.Jump> jumps = new ArrayList<>();
        for (JumpField jump : block.all("code jumps to", JumpField.class)) {
            Optional<TimeExpr> to = time(jump.getTo(), place);
            time(jump.getAt(), place).ifPresent(at -> to.ifPresent(t -> jumps.add(new Rehearsal.Jump(t, at, compilation.sources().whole(jump)))));
        }
        OptionalInt slot = block.count("slot", "a slot", 0, MOST_SLOT);
        whole &= slot.isPresent() == block.has("slot");
        Optional<Long> musicLate = said(block, "music starts", block.us("music starts", Range.MUSIC_LATE));
        Rehearsal rehearsal = new Rehearsal(name, soundtrack.get().getName(), stretches(block, "timecode lost", place),
                stretches(block, "released", place), drift(block), musicLate.orElse(0L), jumps,
                slot.isPresent() ? Optional.of(slot.getAsInt()) : Optional.empty(),
                block.field("backup takes over at", MomentField.class).flatMap(field -> time(field.getAt(), place)), expectations(block), source);
        return whole ? Optional.of(rehearsal) : Optional.empty();
    }

    /** The one it names, or the only one there is: which of several is meant must be said. */
    private Optional<SoundtrackDef> soundtrack(RehearsalDef def) {
        if (!Sources.text(def, eINSTANCE.getRehearsalDef_Soundtrack()).isEmpty()) {
            return compilation.resolve(def, eINSTANCE.getRehearsalDef_Soundtrack(), SoundtrackDef.class);
        }
        List<SoundtrackDef> usable = soundtracks.stream().filter(track -> track.getName() != null && !compilation.dropped(track)).toList();
        if (usable.size() > 1) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, "There are several soundtracks, and this rehearsal does not say which it is of")
                    .found("nothing", "of and the name of a soundtrack").remedy("write rehearse \"…\" of " + usable.get(0).getName())
                    .at(compilation.sources().of(def));
        }
        return usable.size() == 1 ? Optional.of(usable.get(0)) : Optional.empty();
    }

    private Optional<TimeExpr> time(org.girandole.lang.show.TimeExpr written, Times.Place place) {
        Optional<TimeExpr> time = times.time(written, place);
        whole &= time.isPresent();
        return time;
    }

    private <T> Optional<T> said(Block block, String key, Optional<T> value) {
        whole &= value.isPresent() == block.has(key);
        return value;
    }

    private List<Rehearsal.Stretch> stretches(Block block, String key, Times.Place place) {
        List<Rehearsal.Stretch> stretches = new ArrayList<>();
        for (StretchField field : block.all(key, StretchField.class)) {
            Optional<TimeExpr> from = time(field.getFrom(), place);
            time(field.getTo(), place).ifPresent(to -> from.ifPresent(f -> stretches.add(
                    new Rehearsal.Stretch(f, to, compilation.sources().whole(field)))));
        }
        return stretches;
    }

    private Optional<Drift> drift(Block block) {
        List<String> written = CLOCKS.keySet().stream().filter(block::has).sorted().toList();
        if (written.size() > 1) {
            QuantityField second = block.field(written.get(1), QuantityField.class).orElseThrow();
            compilation.problems().report(LanguageRules.REPEATED_FIELD, "A clock is off in one way; here it is said in " + written.size())
                    .found("'" + String.join("' and '", written) + "'", "one of them").remedy("write clock off by for either way")
                    .at(compilation.sources().whole(second));
            whole = false;
        }
        return written.isEmpty() ? Optional.empty() : said(block, written.get(0), block.si(written.get(0), Range.DRIFT))
                .map(ppm -> new Drift(CLOCKS.get(written.get(0)), ppm));
    }

    private List<Rehearsal.Expectation> expectations(Block block) {
        List<Rehearsal.Expectation> expectations = new ArrayList<>();
        LIMITS.keySet().stream().sorted().forEach(key -> said(block, key, block.us(key, Range.LATE)).ifPresent(us -> expectations.add(new Limit(
                LIMITS.get(key), us, compilation.sources().whole(block.field(key, QuantityField.class).orElseThrow())))));
        ENDS.keySet().stream().sorted().forEach(key -> block.all(key, CueEndField.class).forEach(field -> {
            Optional<String> cue = compilation.resolvedName(field, eINSTANCE.getCueEndField_Cue());
            whole &= cue.isPresent();
            cue.ifPresent(c -> expectations.add(new CueEnds(c, ENDS.get(key), compilation.sources().whole(field))));
        }));
        return expectations;
    }
}
