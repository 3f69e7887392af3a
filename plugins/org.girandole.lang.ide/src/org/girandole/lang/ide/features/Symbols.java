package org.girandole.lang.ide.features;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.HoldLine;
import org.girandole.lang.show.MarksField;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PlayLine;
import org.girandole.lang.show.RehearsalDef;
import org.girandole.lang.show.ReleaseDef;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.RuleLine;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.UseLine;
import org.girandole.lang.show.WaiverDef;

/** The outline of a script, and the names of a whole workspace. */
public final class Symbols {
    private static final int MOST_FOUND = 500;

    private Symbols() {
    }

    /** The outline: definitions, scores with their sections and in these every line that fires something. */
    public static List<DocumentSymbol> outline(ScriptView view) {
        List<DocumentSymbol> symbols = new ArrayList<>();
        view.script().ifPresent(script -> script.eContents().forEach(child -> collect(view, child, symbols)));
        return symbols;
    }

    private static void collect(ScriptView view, EObject object, List<DocumentSymbol> into) {
        Optional<String> title = title(object);
        Optional<Range> range = view.range(object);
        if (title.isEmpty() || range.isEmpty()) {
            return;
        }
        List<DocumentSymbol> inside = new ArrayList<>();
        object.eContents().forEach(child -> collect(view, child, inside));
        Range name = object instanceof Named named ? NameUse.definition(named).map(view::range).orElse(range.get()) : firstLine(range.get(), view);
        DocumentSymbol symbol = new DocumentSymbol(title.get(), kind(object), range.get(), name, detail(object), inside);
        into.add(symbol);
    }

    private static Range firstLine(Range range, ScriptView view) {
        return range.getStart().getLine() == range.getEnd().getLine() ? range : new Range(range.getStart(),
                view.lines().position(view.lines().offset(new org.eclipse.lsp4j.Position(range.getStart().getLine(), Integer.MAX_VALUE))));
    }

    private static Optional<String> title(EObject object) {
        if (object instanceof CueLine cue) {
            String at = cue.getAt() == null ? "" : Sources.text(cue.getAt());
            return Optional.of(cue.getName() != null ? cue.getName() : "at " + at);
        }
        if (object instanceof ScoreDef score) {
            return Optional.of("score " + Sources.name(score, eINSTANCE.getScoreDef_Soundtrack()));
        }
        if (object instanceof RepeatBlock repeat) {
            return Optional.of("repeat " + (repeat.getTimes() == null ? "" : repeat.getTimes()));
        }
        if (object instanceof PlayLine play) {
            return Optional.of("play " + Sources.name(play, eINSTANCE.getPlayLine_Figure()));
        }
        if (object instanceof HoldLine) {
            return Optional.of("hold");
        }
        if (object instanceof WaiverDef waiver) {
            return Optional.of("waive " + waiver.getRule());
        }
        if (object instanceof RuleLine rule) {
            return Optional.of("rule " + rule.getRule());
        }
        if (object instanceof RehearsalDef rehearsal) {
            return Optional.of("rehearse " + (rehearsal.getLabel() == null ? "" : rehearsal.getLabel()));
        }
        if (object instanceof ReleaseDef) {
            return Optional.of("release");
        }
        if (object instanceof UseLine use) {
            return Optional.of("use " + use.getPath());
        }
        if (object instanceof MarksField marks) {
            return Optional.of("marks " + marks.getFile());
        }
        return object instanceof Named named && !(object instanceof Parameter) && named.getName() != null && !named.getName().isEmpty()
                ? Optional.of(named.getName()) : Optional.empty();
    }

    private static String detail(EObject object) {
        if (object instanceof CueLine cue) {
            String what = Sources.name(cue, eINSTANCE.getCueLine_Effect());
            String places = cue.getPlaces() == null ? "" : Sources.text(cue.getPlaces());
            String at = cue.getName() != null && cue.getAt() != null ? Sources.text(cue.getAt()) + "  " : "";
            return at + places + "  " + (cue.getCount() == null ? "" : cue.getCount() + " x ") + what;
        }
        if (object instanceof HoldLine hold) {
            return hold.getReason() == null ? "" : hold.getReason();
        }
        if (object instanceof SectionDef section && section.getFrom() != null && section.getTo() != null) {
            return "from " + Sources.text(section.getFrom()) + " to " + Sources.text(section.getTo());
        }
        return Kind.of(object).map(kind -> kind.words().substring(kind.words().indexOf(' ') + 1)).orElse("");
    }

    private static SymbolKind kind(EObject object) {
        if (object instanceof RepeatBlock) {
            return SymbolKind.Array;
        }
        if (object instanceof PlayLine) {
            return SymbolKind.Method;
        }
        if (object instanceof UseLine || object instanceof MarksField) {
            return SymbolKind.File;
        }
        if (object instanceof ScoreDef) {
            return SymbolKind.Module;
        }
        return Kind.of(object).map(Symbols::kind).orElse(SymbolKind.Property);
    }

    private static SymbolKind kind(Kind kind) {
        return switch (kind) {
            case SHOW -> SymbolKind.Package;
            case SOUNDTRACK, SECTION -> SymbolKind.Namespace;
            case CUE -> SymbolKind.Event;
            case MARK -> SymbolKind.Key;
            case EFFECT, CHAIN -> SymbolKind.Class;
            case LOT -> SymbolKind.Object;
            case SITE -> SymbolKind.Module;
            case POSITION, AREA -> SymbolKind.Field;
            case GROUP -> SymbolKind.Array;
            case FIGURE -> SymbolKind.Function;
            case PARAMETER -> SymbolKind.Variable;
            case MODULE, RACK, MODULE_TYPE, FIRING_SYSTEM, IGNITER, WIRE -> SymbolKind.Struct;
            case DISTANCES, TABLE -> SymbolKind.Interface;
        };
    }

    /** Named things whose name holds the letters asked for, wherever they are defined. */
    public static List<WorkspaceSymbol> find(String query, Collection<XtextResource> scripts, Function<XtextResource, ScriptView> view) {
        String letters = query.toLowerCase(Locale.ROOT);
        List<WorkspaceSymbol> found = new ArrayList<>();
        for (XtextResource script : scripts) {
            ScriptView seen = view.apply(script);
            for (Iterator<EObject> all = script.getAllContents(); all.hasNext() && found.size() < MOST_FOUND;) {
                if (all.next() instanceof Named named && !(named instanceof Parameter) && named.getName() != null
                        && named.getName().toLowerCase(Locale.ROOT).contains(letters)) {
                    Optional<INode> name = NameUse.definition(named);
                    name.ifPresent(node -> found.add(new WorkspaceSymbol(named.getName(), Kind.of(named).map(Symbols::kind)
                            .orElse(SymbolKind.Property), Either.forLeft(new Location(seen.uri(), seen.range(node))))));
                }
            }
        }
        return found;
    }
}
