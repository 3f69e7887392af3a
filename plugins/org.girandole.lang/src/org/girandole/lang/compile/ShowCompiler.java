package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.Recordings;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.parsing.SyntaxProblems;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.scoping.Names;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.DateField;
import org.girandole.lang.show.DistancesDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.FiringSystemDef;
import org.girandole.lang.show.IgniterDef;
import org.girandole.lang.show.LotDef;
import org.girandole.lang.show.ModuleDef;
import org.girandole.lang.show.ModuleTypeDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.RackDef;
import org.girandole.lang.show.RefField;
import org.girandole.lang.show.RehearsalDef;
import org.girandole.lang.show.ReleaseDef;
import org.girandole.lang.show.RuleLine;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.ShowDef;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.StrayElement;
import org.girandole.lang.show.TableDef;
import org.girandole.lang.show.WaiverDef;
import org.girandole.lang.show.WireDef;
import org.girandole.lang.show.WordField;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.DistanceRules;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.Rehearsal;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.RuleSetting;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ShowHeader;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TableLayout;
import org.girandole.plan.script.Waiver;
import org.girandole.plan.script.Wire;

/** Turns a parsed script, with the files it uses, into the plan's input. */
@Singleton
public class ShowCompiler {
    private final ShowGrammarAccess grammar;
    private final Lookup lookup;
    private final UsedFiles used;

    @Inject
    public ShowCompiler(ShowGrammarAccess grammar, Lookup lookup, UsedFiles used) {
        this.grammar = grammar;
        this.lookup = lookup;
        this.used = used;
    }

    /** Never fails for what the script says: everything wrong with it is among the problems. */
    public LoadedShow compile(XtextResource main) {
        return compile(main, Recordings.FROM_DISK, new CueMemory(), () -> false);
    }

    /**
     * As {@link #compile(XtextResource)}, sooner, and given up as soon as something newer is to be done.
     *
     * @param recordings where the recordings of soundtracks are listened to
     * @param cues the cue lines of this script as they were when it was compiled before; this time adds to it
     * @param overtaken whether nobody wants the answer any more
     * @throws java.util.concurrent.CancellationException when it was overtaken
     */
    public LoadedShow compile(XtextResource main, Recordings recordings, CueMemory cues, BooleanSupplier overtaken) {
        if (main.getContents().isEmpty()) {
            // An empty file has no root object, but may have had trouble being read.
            Sources sources = new Sources(uri -> relative(main));
            Problems problems = new Problems();
            FileProblems.report(List.of(main), List.of(), problems, sources);
            return new LoadedShow(relative(main), Optional.empty(), problems.sorted(), List.of());
        }
        Compilation compilation = new Compilation(grammar, lookup, main, recordings, overtaken);
        UsedFiles.Closure closure = used.of(main);
        FileProblems.report(closure.files(), closure.troubles(), compilation.problems(), compilation.sources());
        for (XtextResource file : closure.files()) {
            SyntaxProblems.report(file, compilation.problems(), compilation.sources());
            compilation.input(new InputFile(compilation.sources().file(file), DiskFile.sha256(text(file))));
        }
        Optional<ShowScript> script = new Parts(compilation, closure, cues).script();
        return new LoadedShow(compilation.sources().file(main), script, compilation.problems().sorted(), compilation.inputs());
    }

    private static String relative(XtextResource main) {
        return ProjectRoot.relative(ProjectRoot.of(main),
                ProjectRoot.path(main.getURI()));
    }

    private static String text(XtextResource file) {
        return file.getParseResult() == null ? "" : file.getParseResult().getRootNode().getText();
    }

    /** All parts of one script, compiled in the order in which they need each other. */
    private static final class Parts {
        private final Compilation compilation;
        private final CueMemory cues;
        private final List<Element> elements = new ArrayList<>();
        private final Map<Class<?>, List<Element>> byType = new HashMap<>();

        Parts(Compilation compilation, UsedFiles.Closure closure, CueMemory cues) {
            this.compilation = compilation;
            this.cues = cues;
            for (XtextResource file : closure.files()) {
                if (!file.getContents().isEmpty() && file.getContents().get(0) instanceof Script script) {
                    elements.addAll(script.getElements());
                }
            }
            elements.forEach(element -> byType.computeIfAbsent(element.eClass().getInstanceClass(), type -> new ArrayList<>()).add(element));
        }

        Optional<ShowScript> script() {
            clashes();
            strays();
            Optional<ShowDef> show = all(ShowDef.class).stream().findFirst();
            Optional<Block> header = show.map(def -> new Block(compilation, def, def.getFields(), "a show",
                    compilation.grammar().getShowFieldRule(), Set.of()));
            Optional<SiteDef> siteDef = chosen(header, "site", SiteDef.class);
            Optional<FiringSystemDef> systemDef = chosen(header, "firing system", FiringSystemDef.class);

            SiteBlock places = new SiteBlock(compilation, siteDef);
            Optional<Site> site = places.site();
            all(SiteDef.class).stream().filter(def -> siteDef.isEmpty() || siteDef.get() != def)
                    .forEach(def -> new SiteBlock(compilation, Optional.of(def)).site());
            Hardware hardware = new Hardware(compilation, places);
            List<Igniter> igniters = map(IgniterDef.class, hardware::igniter);
            List<Wire> wires = map(WireDef.class, hardware::wire);
            List<ModuleType> types = map(ModuleTypeDef.class, hardware::moduleType);
            List<Module> modules = map(ModuleDef.class, hardware::module);
            List<Rack> racks = map(RackDef.class, hardware::rack);
            Map<FiringSystemDef, FiringSystem> systems = new IdentityHashMap<>();
            all(FiringSystemDef.class).forEach(def -> systems.put(def, hardware.firingSystem(def)));
            Catalogue catalogue = new Catalogue(compilation);
            List<Effect> effects = catalogue.effects(all(EffectDef.class));
            List<Lot> lots = map(LotDef.class, catalogue::lot);
            List<Chain> chains = map(ChainDef.class, catalogue::chain);
            Times times = new Times(compilation);
            Music music = new Music(compilation, times);
            List<Soundtrack> soundtracks = map(SoundtrackDef.class,
                    def -> def.getName() == null ? Optional.empty() : Optional.of(music.soundtrack(def)));
            // Without a site that could be read, lines are the first to ask what a group means, and what is wrong with it is told then.
            Optional<CueMemory.Round> memory = site.map(known -> cues.round(CueFrame.of(compilation, known, music)));
            ScoreBlock scoreBlock = new ScoreBlock(compilation, times, places, music, memory);
            List<Score> scores = map(ScoreDef.class, scoreBlock::score);
            memory.ifPresent(CueMemory.Round::end);
            List<Rehearsal> rehearsals = map(RehearsalDef.class, new Rehearsals(compilation, times, music, all(SoundtrackDef.class))::rehearsal);
            Outputs outputs = new Outputs(compilation, times.clocks());
            List<DistanceRules> distances = map(DistancesDef.class, new DistanceBlock(compilation)::table);
            List<Waiver> waivers = map(WaiverDef.class, outputs::waiver);
            List<RuleSetting> rules = map(RuleLine.class, outputs::rule);
            List<TableLayout> tables = map(TableDef.class, outputs::table);
            Optional<ReleaseSpec> release = release(outputs);
            all(FigureDef.class).forEach(scoreBlock::unplayed);

            return show.filter(def -> def.getName() != null).map(def -> new ShowScript(header(def, header.orElseThrow(), siteDef, systemDef,
                    times.clocks()), soundtracks, effects, lots, chains, site, igniters, wires, types, modules, racks,
                    systemDef.map(systems::get), scores, distances, waivers, rules, tables, release, rehearsals, compilation.inputs()));
        }

        /** Of several in a row only the first is told: one brace too many leaves all of them over. */
        private void strays() {
            for (int i = 0; i < elements.size(); i++) {
                if (elements.get(i) instanceof StrayElement stray && (i == 0 || !(elements.get(i - 1) instanceof StrayElement))
                        && !isTold(stray)) {
                    if (i > 0 && elements.get(i - 1) instanceof ModuleDef && Joints.is(stray.getWord())) {
                        Joints.report(compilation, stray, eINSTANCE.getStrayElement_Word(), stray.getWord(), Joints.WRITE_COMMA);
                        continue;
                    }
                    Strays.report(compilation, stray, eINSTANCE.getStrayElement_Word(), stray.getWord(), "any part of a script",
                            Vocabulary.first(compilation.grammar().getElementRule()), "}".equals(stray.getWord())
                                    ? "take it out; every block before it is closed already"
                                    : "see the language reference for the parts of a script; perhaps the block before it is closed too early");
                }
            }
        }

        /** Whether the parser stumbled over the same word already, when it left the block before. */
        private static boolean isTold(StrayElement stray) {
            for (ILeafNode leaf : NodeModelUtils.findActualNodeFor(stray).getLeafNodes()) {
                if (!leaf.isHidden()) {
                    return leaf.getSyntaxErrorMessage() != null;
                }
            }
            return false;
        }

        /** The second of two things with one name is left out. */
        private void clashes() {
            for (Names.Clash clash : compilation.names().clashes()) {
                SourceRef first = compilation.sources().of(clash.first());
                String kind = Kind.of(clash.second()).map(Kind::words).orElse("something");
                compilation.problems().report(LanguageRules.DUPLICATE_NAME, "There is already " + Kind.of(clash.first())
                        .map(Kind::words).orElse(kind) + " '" + clash.second().getName() + "', in " + first.file() + " line " + first.line())
                        .found(clash.second().getName(), "each name once").remedy("rename one of the two")
                        .at(compilation.sources().of(clash.second()));
                compilation.drop(clash.second());
            }
            List<ShowDef> shows = all(ShowDef.class);
            for (ShowDef second : shows.subList(Math.min(1, shows.size()), shows.size())) {
                if (second.getName() != null && !second.getName().equals(shows.get(0).getName())) {
                    compilation.problems().report(LanguageRules.DUPLICATE_NAME, "There is already a show"
                            + Optional.ofNullable(shows.get(0).getName()).map(name -> ", '" + name + "'").orElse("") + "; a script has one").found("two shows", "one show").remedy("put the other show into a file of its own")
                            .at(compilation.sources().of(second));
                }
            }
        }

        private <T> List<T> all(Class<T> type) {
            return byType.getOrDefault(type, List.of()).stream().map(type::cast).toList();
        }

        private <T extends Element, R> List<R> map(Class<T> type, Function<T, Optional<R>> compile) {
            List<R> compiled = new ArrayList<>();
            for (T element : all(type)) {
                compilation.goOn();
                Optional<R> part = compile.apply(element);
                if (!(element instanceof Named named) || !compilation.dropped(named)) {
                    part.ifPresent(compiled::add);
                }
            }
            return compiled;
        }

        /** What the header names, or the only one there is. */
        private <T extends Named> Optional<T> chosen(Optional<Block> header, String key, Class<T> type) {
            Optional<RefField> named = header.flatMap(block -> block.field(key, RefField.class));
            if (named.isPresent()) {
                return compilation.resolve(named.get(), eINSTANCE.getRefField_Target(), type);
            }
            List<T> all = all(type);
            return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
        }

        private Optional<ReleaseSpec> release(Outputs outputs) {
            List<ReleaseDef> all = all(ReleaseDef.class);
            for (ReleaseDef second : all.subList(Math.min(1, all.size()), all.size())) {
                compilation.problems().report(LanguageRules.REPEATED_FIELD, "There is already a release; a show has one")
                        .remedy("put both into one block").at(compilation.sources().whole(second));
            }
            return all.stream().findFirst().map(outputs::release);
        }

        private ShowHeader header(ShowDef def, Block block, Optional<SiteDef> site, Optional<FiringSystemDef> system, Clocks clocks) {
            Optional<DateField> on = block.field("on", DateField.class);
            return new ShowHeader(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(),
                    on.flatMap(f -> clocks.date(f, eINSTANCE.getDateField_Date(), f.getDate())),
                    on.flatMap(f -> clocks.timeOfDay(f, eINSTANCE.getDateField_Time(), f.getTime())), on.flatMap(this::zone),
                    site.map(Named::getName), system.map(Named::getName), block.us("sync within", Range.SYNC),
                    block.field("separation by", WordField.class).map(WordField::getWord), compilation.sources().of(def));
        }

        private Optional<ZoneId> zone(DateField field) {
            if (field.getZone() == null) {
                return Optional.empty();
            }
            try {
                return Optional.of(ZoneId.of(field.getZone()));
            } catch (DateTimeException e) {
                Optional<String> near = Words.nearest(field.getZone(), ZoneId.getAvailableZoneIds().stream().sorted().toList());
                compilation.problems().report(LanguageRules.UNKNOWN_WORD, "'" + Words.shown(field.getZone()) + "' is no time zone"
                        + near.map(n -> "; did you mean " + n + "?").orElse("")).found(Words.shown(field.getZone()),
                        "a name of the IANA time zone database, such as Europe/Lisbon").remedy("write continent and city")
                        .at(compilation.sources().of(field, eINSTANCE.getDateField_Zone()));
                return Optional.empty();
            }
        }
    }
}
