package org.girandole.lang.ide.completion;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Position;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.compile.Dimension;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.compile.Vocabulary;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.ide.features.Renaming;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.scoping.Names;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.Script;
import org.girandole.plan.Finding;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.Rules;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.Rack;
import org.girandole.plan.table.TableField;
import org.girandole.plan.table.TableFormat;
import org.girandole.plan.script.ShowScript;

/** Proposes what can stand at the caret. */
@Singleton
public final class Completion {
    private static final int FREE_SHOWN = 3;
    private static final Set<String> SCORE_BLOCKS = Set.of("score", "section", "repeat", "figure");
    private static final Set<String> EFFECTS = Set.of("shell", "salute", "mine", "comet", "candle", "cake", "fountain", "wheel", "flare", "rocket");
    private static final List<String> TIME_UNITS = List.of("beats", "beat", "bars", "bar", "s", "ms", "min", "frames", "frame");
    private static final Map<String, Dimension> DIMENSIONS = Map.ofEntries(Map.entry("calibre", Dimension.LENGTH), Map.entry("rise", Dimension.TIME),
            Map.entry("apex", Dimension.LENGTH), Map.entry("spread", Dimension.LENGTH), Map.entry("lasts", Dimension.TIME),
            Map.entry("charge", Dimension.MASS), Map.entry("mass", Dimension.MASS), Map.entry("length", Dimension.LENGTH),
            Map.entry("gap", Dimension.TIME), Map.entry("resistance", Dimension.RESISTANCE), Map.entry("all-fire", Dimension.CURRENT),
            Map.entry("no-fire", Dimension.CURRENT), Map.entry("gauge", Dimension.GAUGE), Map.entry("area", Dimension.AREA),
            Map.entry("drive", Dimension.VOLTAGE), Map.entry("source", Dimension.RESISTANCE), Map.entry("capacitor", Dimension.CAPACITANCE),
            Map.entry("test", Dimension.CURRENT), Map.entry("spaced", Dimension.LENGTH), Map.entry("tilt", Dimension.ANGLE),
            Map.entry("fan", Dimension.ANGLE), Map.entry("toward", Dimension.ANGLE), Map.entry("air", Dimension.TEMPERATURE),
            Map.entry("elevation", Dimension.LENGTH), Map.entry("from", Dimension.ANGLE), Map.entry("at", Dimension.SPEED),
            Map.entry("gusting", Dimension.SPEED), Map.entry("radius", Dimension.LENGTH), Map.entry("(", Dimension.LENGTH),
            Map.entry(",", Dimension.LENGTH), Map.entry("step", Dimension.TIME), Map.entry("latency", Dimension.TIME),
            Map.entry("copper", Dimension.TEMPERATURE), Map.entry("slack", Dimension.LENGTH), Map.entry("preroll", Dimension.TIME),
            Map.entry("over", Dimension.TIME), Map.entry("every", Dimension.TIME), Map.entry("tubes", Dimension.LENGTH),
            Map.entry("tube", Dimension.LENGTH), Map.entry("long", Dimension.LENGTH), Map.entry("within", Dimension.TIME),
            Map.entry("timecode", Dimension.RATE), Map.entry("wav", Dimension.FREQUENCY), Map.entry("keep", Dimension.LENGTH),
            Map.entry("sector", Dimension.ANGLE));

    private final ShowGrammarAccess grammar;
    private final Lookup lookup;
    private final Renaming naming;

    @Inject
    Completion(ShowGrammarAccess grammar, Lookup lookup, Renaming naming) {
        this.grammar = grammar;
        this.lookup = lookup;
        this.naming = naming;
    }

    /**
     * Proposals at a place, best first.
     *
     * @param checked the last check: what is free, which rules find something, when marks are
     * @param snippets whether the client knows snippets
     */
    public List<CompletionItem> at(ScriptView view, Optional<CheckedScript> checked, Position position, boolean snippets) {
        int offset = view.lines().offset(position);
        Caret caret = Caret.at(view.lines().text(), offset);
        if (caret.inText()) {
            return List.of();
        }
        Proposals proposals = new Proposals(caret.prefix(), view.lines().range(offset - caret.prefix().length(), offset), snippets);
        new At(view, checked, caret, proposals).propose();
        return proposals.items();
    }

    /** One place, while it is looked at. */
    private final class At {
        private final Optional<Script> script;
        private final ScriptView view;
        private final Optional<CheckedScript> checked;
        private final Caret caret;
        private final Proposals out;

        At(ScriptView view, Optional<CheckedScript> checked, Caret caret, Proposals out) {
            this.view = view;
            this.script = view.script();
            this.checked = checked;
            this.caret = caret;
            this.out = out;
        }

        void propose() {
            // A number, as in "75 mm", asks for its unit first.
            if (Character.isDigit(caret.prefix().isEmpty() ? ' ' : caret.prefix().charAt(0))) {
                return;
            }
            String block = caret.block();
            if (SCORE_BLOCKS.contains(block)) {
                score();
            } else if (block.isEmpty()) {
                top();
            } else {
                field(block);
            }
        }

        // ---- top level ----

        private void top() {
            Word last = caret.last();
            String start = caret.statement().isEmpty() ? "" : caret.statement().get(0).text();
            switch (start) {
                case "rehearse" -> {
                    keyword(caret.statement().size() == 2, "of");
                    after("of", Space.SOUNDTRACK, Kind.SOUNDTRACK);
                }
                case "use" -> files();
                case "waive" -> waiver();
                case "rule" -> ruleLine();
                case "lot" -> after("of", Space.SHOT, Kind.EFFECT);
                case "chain" -> {
                    if (last.isNumber()) {
                        names(Space.SHOT, Kind.EFFECT);
                    }
                }
                case "module" -> {
                    after("of", Space.MODULE_TYPE, Kind.MODULE_TYPE);
                    if (last.is("at") || last.is(",") || last.is("..")) {
                        places();
                    }
                    keyword(caret.statement().size() == 1, "type");
                }
                case "rack" -> after("at", Space.PLACE, Kind.POSITION);
                case "score" -> {
                    if (caret.statement().size() == 1) {
                        names(Space.SOUNDTRACK, Kind.SOUNDTRACK);
                    } else {
                        keyword(true, "in slot");
                    }
                }
                case "firing" -> keyword(caret.statement().size() == 1, "system");
                default -> {
                    if (EFFECTS.contains(start)) {
                        after("like", Space.SHOT, Kind.EFFECT);
                        keyword(!last.is("like") && caret.statement().size() > 1, "like");
                    }
                }
            }
            if (caret.begins()) {
                Snippets.TOP.forEach(snippet -> out.snippet(snippet.label(), snippet.text(), snippet.detail()));
                Vocabulary.first(grammar.getElementRule()).forEach(word -> out.word(word, CompletionItemKind.Keyword, ""));
                out.word("use", CompletionItemKind.Keyword, "");
            }
        }

        private void after(String word, Space space, Kind kind) {
            if (caret.last().is(word)) {
                names(space, kind);
            }
        }

        private void keyword(boolean fits, String... words) {
            if (fits) {
                for (String word : words) {
                    out.word(word, CompletionItemKind.Keyword, "");
                }
            }
        }

        private void files() {
            if (!view.resource().getURI().isFile()) {
                return;
            }
            Path own = ProjectRoot.path(view.resource().getURI());
            for (var other : view.resource().getResourceSet().getResources()) {
                Path file = ProjectRoot.path(other.getURI());
                if (!file.equals(own)) {
                    String path = own.getParent().relativize(file).toString().replace('\\', '/');
                    out.word("\"" + path + "\"", CompletionItemKind.File, "a script of this project");
                }
            }
        }

        private void waiver() {
            Word last = caret.last();
            int size = caret.statement().size();
            if (size == 1 || last.is("-")) {
                waivable();
            } else if (last.is("for")) {
                subjects();
            } else if (last.is("at")) {
                names(Space.PLACE, Kind.POSITION);
            } else if (last.is("because") || last.is("by")) {
                out.snippet("a text in quotes", "\"${1:" + (last.is("by") ? "who agreed" : "why it is safe all the same") + "}\"", "");
            } else if (last.is("until")) {
                checked.flatMap(CheckedScript::plan).flatMap(plan -> plan.script().show().date())
                        .ifPresent(date -> out.word(date.plusDays(1).toString(), CompletionItemKind.Value, "the day after the show"));
            } else {
                keyword(true, "for", "at", "because", "by", "until");
            }
        }

        /** What is found just now comes first: that is what is to be waived. */
        private void waivable() {
            Map<String, Finding> found = new HashMap<>();
            checked.ifPresent(show -> show.show().findings().stream().filter(finding -> !finding.waived())
                    .forEach(finding -> found.putIfAbsent(finding.rule(), finding)));
            List<RuleInfo> rules = new ArrayList<>(Rules.infos());
            rules.sort((a, b) -> Boolean.compare(!found.containsKey(a.id()), !found.containsKey(b.id())));
            for (RuleInfo rule : rules) {
                Finding finding = found.get(rule.id());
                out.word(rule.id(), CompletionItemKind.Value, finding == null ? rule.summary() : "found: " + finding.message(), rule.reason());
            }
        }

        private void subjects() {
            Set<String> subjects = new LinkedHashSet<>();
            String rule = String.join("", caret.statement().stream().skip(1).takeWhile(word -> !word.is("for")).map(Word::text).toList());
            checked.ifPresent(show -> show.show().findings().stream().filter(finding -> finding.rule().equals(rule) && !finding.waived())
                    .forEach(finding -> subjects.addAll(finding.subject().names())));
            subjects.forEach(name -> out.word(naming.written(name), CompletionItemKind.Class, "found by " + rule));
            for (Space space : List.of(Space.SHOT, Space.CUE, Space.MODULE, Space.RACK, Space.SOUNDTRACK, Space.AREA)) {
                names().ifPresent(names -> names.in(space).values().forEach(this::name));
            }
        }

        private void ruleLine() {
            if (caret.last().is("is")) {
                keyword(true, "error", "warning", "info");
            } else if (caret.statement().size() == 1 || caret.last().is("-")) {
                ShowPipeline.rules().forEach(rule -> out.word(rule.id(), CompletionItemKind.Value, rule.summary(), rule.reason()));
            } else {
                keyword(true, "is");
            }
        }

        // ---- blocks of fields ----

        private void field(String block) {
            Word last = caret.last();
            if (last.isNumber()) {
                units(block);
            }
            switch (last.text()) {
                case "igniter" -> names(Space.IGNITER, Kind.IGNITER);
                case "site" -> names(Space.SITE, Kind.SITE);
                case "system" -> names(Space.FIRING_SYSTEM, Kind.FIRING_SYSTEM);
                case "lead" -> {
                    names(Space.WIRE, Kind.WIRE);
                    keyword(block.equals("module type"), "at most");
                }
                case "by" -> distances();
                case "ending" -> keyword(true, "crlf", "lf");
                case "header" -> keyword(true, "yes", "no");
                case "join" -> keyword(true, "series", "parallel");
                case "sheets" -> keyword(true, "pdf", "html");
                case "paper" -> keyword(true, "A4", "Letter");
                case "marks" -> keyword(true, block.equals("release") ? new String[] {"midi", "labels", "cues"} : new String[] {"from"});
                case "as" -> formats();
                case "=" -> {
                    if (block.equals("table")) {
                        columns();
                    } else {
                        places();
                    }
                }
                default -> fieldDefault(block, last);
            }
        }

        private void fieldDefault(String block, Word last) {
            if (block.equals("release") && last.is("table")) {
                keyword(true, "standard");
                names(Space.TABLE, Kind.TABLE);
                return;
            }
            if (block.equals("soundtrack") && caret.statement().stream().anyMatch(word -> word.is("mark")) || block.equals("tempo")) {
                if (last.is("at")) {
                    anchors();
                    return;
                }
                keyword(block.equals("tempo") && last.isNumber(), "bpm", "ramp to", "4/4", "3/4");
            }
            if (block.equals("site") && caret.statement().stream().anyMatch(word -> word.is("group"))
                    && (last.is(",") || last.is("..")) && caret.statement().stream().anyMatch(word -> word.is("="))) {
                places();
                return;
            }
            if (block.equals("rehearse")) {
                switch (last.text()) {
                    case "fired", "suppressed", "skipped" -> names(Space.CUE, Kind.CUE);
                    case "from", "to", "at" -> anchors();
                    default -> {
                        // The words of the block follow below.
                    }
                }
            }
            if (block.equals("table") && caret.statement().stream().anyMatch(word -> word.is("="))) {
                keyword(true, "as");
            }
            var rule = switch (block) {
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
            if (rule != null) {
                Vocabulary.of(rule).forEach(word -> out.word(word, CompletionItemKind.Field, ""));
            }
            keyword(block.equals("tempo"), "at", "bar");
        }

        private void columns() {
            for (TableField field : TableField.values()) {
                out.word(field.id(), CompletionItemKind.Field, field.meaning());
            }
        }

        private void formats() {
            List<Word> words = caret.statement();
            int equal = -1;
            for (int i = 0; i < words.size(); i++) {
                equal = words.get(i).is("=") ? i : equal;
            }
            String field = String.join(" ", words.subList(equal + 1, words.size() - 1).stream().map(Word::text).toList());
            List<TableFormat> formats = TableField.find(field).map(TableField::formats).orElse(List.of(TableFormat.values()));
            formats.forEach(format -> out.word(format.id(), CompletionItemKind.Value, format.meaning()));
        }

        private void distances() {
            checked.flatMap(CheckedScript::plan).ifPresent(plan -> plan.script().distanceTables()
                    .forEach(table -> out.word(table.name(), CompletionItemKind.Interface, "a distance table")));
            names(Space.DISTANCES, Kind.DISTANCES);
        }

        private void units(String block) {
            for (int i = caret.statement().size() - 1; i >= 0; i--) {
                Word word = caret.statement().get(i);
                String key = word.is("fire") && i > 1 ? caret.statement().get(i - 2).text() + "-fire" : word.text();
                Dimension dimension = DIMENSIONS.get(key);
                if (dimension == Dimension.LENGTH && key.equals("length") && block.equals("soundtrack") || key.equals("lead") && block.equals("chain")) {
                    dimension = Dimension.TIME;
                } else if (key.equals("within") && block.equals("firing")) {
                    dimension = Dimension.DRIFT;
                }
                if (dimension != null) {
                    units(dimension);
                    return;
                }
            }
        }

        private void units(Dimension dimension) {
            dimension.symbols().forEach(unit -> out.word(unit, CompletionItemKind.Unit, dimension.words()));
        }

        // ---- score ----

        private void score() {
            List<Word> words = caret.statement();
            Word last = caret.last();
            if (caret.begins()) {
                Snippets.SCORE.forEach(snippet -> out.snippet(snippet.label(), snippet.text(), snippet.detail()));
                keyword(true, "at", "cue", "repeat", "play", "hold", "section");
            }
            switch (words.isEmpty() ? "" : words.get(0).text()) {
                case "at" -> cue(words.subList(1, words.size()));
                case "cue" -> {
                    int at = indexOf(words, "at");
                    if (at < 0) {
                        keyword(words.size() > 1, "at");
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

        private void span(List<Word> words, Word last) {
            int from = Math.max(Math.max(lastIndexOf(words, "from"), lastIndexOf(words, "to")), lastIndexOf(words, "every"));
            if (from < 0) {
                keyword(true, words.get(0).is("repeat") ? "every" : "from");
                return;
            }
            CueSlot slot = CueSlot.of(words.subList(from + 1, words.size()));
            slot.expects().forEach(expected -> {
                if (expected != CueSlot.Expected.PLACE && expected != CueSlot.Expected.EFFECT) {
                    expected(expected, slot);
                }
            });
            keyword(last.isNumber() || slot.expects().contains(CueSlot.Expected.PLACE), words.get(0).is("repeat") ? "from" : "to");
        }

        private void play(List<Word> words, Word last) {
            if (words.size() == 1) {
                names().ifPresent(names -> names.in(Space.FIGURE).values().forEach(named -> {
                    FigureDef figure = (FigureDef) named;
                    List<String> gaps = new ArrayList<>();
                    for (Parameter parameter : figure.getParameters()) {
                        gaps.add("${" + (gaps.size() + 1) + ":" + parameter.getName() + "}");
                    }
                    out.snippet(naming.written(figure.getName()), naming.written(figure.getName()) + "(" + String.join(", ", gaps) + ") at ${"
                            + (gaps.size() + 1) + ":bar 1}", "a figure with its values");
                }));
            } else if (last.is("(") || last.is(",")) {
                effects(List.of());
                names().ifPresent(names -> names.in(Space.PLACE).values().forEach(this::name));
                anchors();
            } else if (last.is("at") || lastIndexOf(words, ")") >= 0 && lastIndexOf(words, "at") > lastIndexOf(words, ")")) {
                CueSlot slot = CueSlot.of(words.subList(lastIndexOf(words, "at") + 1, words.size()));
                slot.expects().stream().filter(expected -> expected != CueSlot.Expected.PLACE).forEach(expected -> expected(expected, slot));
            } else if (last.isNumber()) {
                keyword(true, TIME_UNITS.toArray(String[]::new));
            } else {
                keyword(true, "at");
            }
        }

        private void cue(List<Word> words) {
            CueSlot slot = CueSlot.of(words);
            slot.expects().forEach(expected -> expected(expected, slot));
        }

        private void expected(CueSlot.Expected expected, CueSlot slot) {
            switch (expected) {
                case ANCHOR -> anchors();
                case BEAT_WORD -> keyword(true, "beat");
                case TIME_UNIT, STEP_UNIT -> keyword(true, TIME_UNITS.toArray(String[]::new));
                case STEP -> parameters();
                case PLACE -> places();
                case EFFECT -> effects(slot.places());
                case OPTION -> options(slot);
                default -> {
                    // A number, or a sign: nothing that could be proposed.
                }
            }
        }

        private void anchors() {
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
            parameters();
        }

        private void marks() {
            String soundtrack = soundtrack();
            Map<String, Long> moments = checked.flatMap(CheckedScript::plan).flatMap(plan -> plan.soundtrack(soundtrack))
                    .map(PlannedSoundtrack::marksUs).orElse(Map.of());
            Set<String> marks = new LinkedHashSet<>(moments.keySet());
            names().ifPresent(names -> {
                Named owner = names.in(Space.SOUNDTRACK).get(soundtrack);
                if (owner != null) {
                    names.inside(owner).values().stream().filter(MarkDef.class::isInstance).forEach(mark -> marks.add(mark.getName()));
                }
            });
            marks.forEach(mark -> out.word(naming.written(mark), CompletionItemKind.Event, moments.containsKey(mark)
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
            return rehearsal.size() > 3 ? rehearsal.get(3).name() : names().flatMap(names -> names.in(Space.SOUNDTRACK).keySet().stream().findFirst()).orElse("");
        }

        private void parameters() {
            List<Word> head = caret.head("figure");
            if (head.size() < 2) {
                return;
            }
            names().map(names -> names.in(Space.FIGURE).get(head.get(1).name())).ifPresent(named -> {
                if (named instanceof FigureDef figure) {
                    figure.getParameters().stream().filter(parameter -> parameter.getName() != null)
                            .forEach(parameter -> out.word(naming.written(parameter.getName()), CompletionItemKind.Variable, "a value of the figure"));
                }
            });
        }

        private void places() {
            names().ifPresent(names -> {
                names.in(Space.PLACE).values().stream().filter(PositionDef.class::isInstance).forEach(this::name);
                names.in(Space.PLACE).values().stream().filter(GroupDef.class::isInstance).forEach(this::name);
            });
            parameters();
            out.word("all", CompletionItemKind.Keyword, "every position");
        }

        /** What some free tube of all these places fits comes first, with how many more could be loaded. */
        private void effects(List<String> places) {
            Optional<Free> free = checked.flatMap(CheckedScript::plan).map(Free::new);
            List<String> positions = positions(places);
            List<Runnable> without = new ArrayList<>();
            names().ifPresent(names -> names.in(Space.SHOT).values().forEach(named -> {
                Optional<Integer> room = Optional.empty();
                boolean known = free.isPresent() && !positions.isEmpty();
                for (String position : known ? positions : List.<String>of()) {
                    Optional<Integer> here = free.get().room(named.getName(), position);
                    room = here.isEmpty() ? room : room.isEmpty() ? here : Optional.of(Math.min(room.get(), here.get()));
                }
                String label = label(named);
                if (room.isPresent() && room.get() == 0) {
                    without.add(() -> out.word(naming.written(named.getName()), CompletionItemKind.Class, label + " (no free tube here)"));
                } else {
                    String fits = room.map(count -> " (room for " + count + " more here)").orElse("");
                    out.word(naming.written(named.getName()), CompletionItemKind.Class, label + fits);
                }
            }));
            parameters();
            without.forEach(Runnable::run);
        }

        /** The positions that places mean, groups and ranges resolved, as far as that is known. */
        private List<String> positions(List<String> places) {
            List<String> order = checked.flatMap(CheckedScript::plan).flatMap(plan -> plan.script().site())
                    .map(site -> site.positions().stream().map(position -> position.name()).toList()).orElse(List.of());
            List<String> positions = new ArrayList<>();
            for (int i = 0; i < places.size(); i++) {
                String place = places.get(i);
                if (place.equals("all")) {
                    positions.addAll(order);
                } else if (place.equals("..") && i > 0 && i + 1 < places.size()) {
                    int from = order.indexOf(places.get(i - 1));
                    int to = order.indexOf(places.get(i + 1));
                    if (from >= 0 && to >= from) {
                        positions.addAll(order.subList(from, to + 1));
                    }
                } else if (order.contains(place)) {
                    positions.add(place);
                } else {
                    names().map(names -> names.in(Space.PLACE).get(place)).filter(GroupDef.class::isInstance).map(GroupDef.class::cast)
                            .ifPresent(group -> positions.addAll(positions(members(group))));
                }
            }
            return positions.stream().distinct().toList();
        }

        private List<String> members(GroupDef group) {
            List<String> members = new ArrayList<>();
            if (group.getPlaces() != null && !Sources.text(group.getPlaces()).contains(group.getName())) {
                for (String part : Sources.text(group.getPlaces()).replace("..", " .. ").split("[\\s,]+")) {
                    members.add(part);
                }
            }
            return members;
        }

        private void options(CueSlot slot) {
            Word last = caret.last();
            switch (last.text()) {
                case "lot" -> names(Space.LOT, Kind.LOT);
                case "from" -> keyword(true, "lot", "audience");
                case "toward" -> keyword(true, "audience");
                case "away" -> keyword(true, "from audience");
                case "pin" -> pins();
                case "tube" -> tubes(positions(slot.places()));
                case "/" -> numbers(slot);
                case "turn", "outward", "inward", "alternating" -> keyword(true, "every");
                case "every" -> parameters();
                default -> {
                    if (last.isNumber()) {
                        String key = lastKey();
                        keyword(key.equals("every"), TIME_UNITS.toArray(String[]::new));
                        if (key.equals("fan") || key.equals("tilt") || key.equals("toward")) {
                            units(Dimension.ANGLE);
                        }
                    }
                    out.snippet("fan", "fan ${1:-20} deg .. ${2:20} deg", "spread out to both sides");
                    out.snippet("tilt", "tilt ${1:15} deg", "leaning to the side");
                    out.snippet("in turn", "in turn every ${1:1/2 beat}", "one place after the other");
                    out.snippet("outward", "outward every ${1:1/2 beat}", "from the middle to the ends");
                    out.snippet("inward", "inward every ${1:1/2 beat}", "from the ends to the middle");
                    out.snippet("alternating", "alternating every ${1:1/2 beat}", "from side to side");
                    out.snippet("note", "note \"${1:what it is for}\"", "a word for the crew");
                    keyword(true, "heard", "from lot", "pin", "tube");
                }
            }
        }

        private String lastKey() {
            List<Word> words = caret.statement();
            for (int i = words.size() - 1; i >= 0; i--) {
                if (Set.of("every", "fan", "tilt", "toward").contains(words.get(i).text())) {
                    return words.get(i).text();
                }
            }
            return "";
        }

        private void pins() {
            checked.flatMap(CheckedScript::plan).map(Free::new).ifPresent(free -> {
                for (Module module : free.plan().script().modules()) {
                    List<Integer> pins = free.pins(module);
                    pins.stream().limit(FREE_SHOWN).forEach(pin -> out.word(naming.written(module.name()) + "/" + pin, CompletionItemKind.Value,
                            "free; " + pins.size() + " free on " + module.name() + " at " + String.join(", ", module.positions())));
                }
            });
        }

        private void tubes(List<String> positions) {
            checked.flatMap(CheckedScript::plan).map(Free::new).ifPresent(free -> {
                for (Rack rack : free.plan().script().racks()) {
                    if (positions.isEmpty() || positions.contains(rack.position())) {
                        free.tubes(rack).stream().limit(FREE_SHOWN).forEach(tube -> out.word(naming.written(rack.name()) + "/" + tube,
                                CompletionItemKind.Value, "free tube at " + rack.position()));
                    }
                }
            });
        }

        /** Free numbers behind {@code M1/}. */
        private void numbers(CueSlot slot) {
            String owner = caret.statement().size() < 2 ? "" : caret.statement().get(caret.statement().size() - 2).name();
            checked.flatMap(CheckedScript::plan).map(Free::new).ifPresent(free -> {
                ShowScript show = free.plan().script();
                show.modules().stream().filter(module -> module.name().equals(owner)).forEach(module -> free.pins(module)
                        .forEach(pin -> out.word(pin.toString(), CompletionItemKind.Value, "free pin of " + owner)));
                show.racks().stream().filter(rack -> rack.name().equals(owner)).forEach(rack -> free.tubes(rack)
                        .forEach(tube -> out.word(tube.toString(), CompletionItemKind.Value, "free tube of " + owner)));
            });
        }

        // ---- names ----

        private Optional<Names> names() {
            return script.map(lookup::names);
        }

        private void names(Space space, Kind kind) {
            names().ifPresent(names -> names.in(space).values().stream().filter(named -> Kind.of(named).filter(k -> k == kind).isPresent())
                    .forEach(this::name));
        }

        private void name(Named named) {
            CompletionItemKind kind = switch (Kind.of(named).orElse(Kind.SHOW)) {
                case EFFECT, CHAIN -> CompletionItemKind.Class;
                case POSITION, GROUP -> CompletionItemKind.EnumMember;
                case FIGURE -> CompletionItemKind.Function;
                case MARK, CUE -> CompletionItemKind.Event;
                default -> CompletionItemKind.Struct;
            };
            out.word(naming.written(named.getName()), kind, label(named));
        }

        private String label(Named named) {
            String kind = Kind.of(named).map(Kind::words).map(words -> words.substring(words.indexOf(' ') + 1)).orElse("");
            String label = named instanceof EffectDef effect ? effect.getLabel() : named instanceof ChainDef chain ? chain.getLabel() : null;
            String sort = named instanceof EffectDef effect ? effect.getKind() : kind;
            return label == null ? sort : sort + " \"" + label + "\"";
        }

        private int indexOf(List<Word> words, String word) {
            return words.stream().map(Word::text).toList().indexOf(word);
        }

        private int lastIndexOf(List<Word> words, String word) {
            return words.stream().map(Word::text).toList().lastIndexOf(word);
        }
    }
}
