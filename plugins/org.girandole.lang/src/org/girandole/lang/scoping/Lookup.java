package org.girandole.lang.scoping;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.compile.Sources;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.show.Argument;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.PinOption;
import org.girandole.lang.show.RefField;
import org.girandole.lang.show.RehearsalDef;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.ShowPackage.Literals;
import org.girandole.lang.show.SoundtrackDef;

/** Which names a reference may mean. The one place that knows; linking, completion and messages all ask here. */
@Singleton
public class Lookup {
    private final UsedFiles used;

    @Inject
    public Lookup(UsedFiles used) {
        this.used = used;
    }

    /**
     * What a reference may point to.
     *
     * @param kinds what is wanted; anything else that has the name is of the wrong kind
     * @param tables where to look, the first hit counts
     */
    public record Candidates(Set<Kind> kinds, List<Map<String, Named>> tables) {
        /** The thing of that name, or null. */
        public Named find(String name) {
            for (Map<String, Named> table : tables) {
                Named named = table.get(name);
                if (named != null) {
                    return Kind.of(named).filter(kinds::contains).isPresent() ? named : null;
                }
            }
            return null;
        }
    }

    /** The names usable in the file of an object. */
    public Names names(EObject object) {
        return Names.of(used, (XtextResource) object.eResource());
    }

    public Candidates candidates(EObject context, EReference reference) {
        Names names = names(context);
        if (reference == Literals.CUE_LINE__EFFECT) {
            return inFigure(context, names, EnumSet.of(Kind.EFFECT, Kind.CHAIN), Space.SHOT);
        }
        if (reference == Literals.PLACE_RANGE__FIRST || reference == Literals.PLACE_RANGE__LAST) {
            return inFigure(context, names, EnumSet.of(Kind.POSITION, Kind.GROUP), Space.PLACE);
        }
        if (reference == Literals.NAME_ANCHOR__TARGET) {
            return context.eContainer() != null && context.eContainer().eContainer() instanceof Argument
                    ? argument(context, names) : moment(context, names);
        }
        if (reference == Literals.NAMED_STEP__TARGET) {
            return inFigure(context, names, EnumSet.noneOf(Kind.class));
        }
        if (reference == Literals.EFFECT_DEF__LIKE || reference == Literals.LOT_DEF__OF || reference == Literals.CHAIN_DEF__OF) {
            return plain(names, EnumSet.of(Kind.EFFECT), Space.SHOT);
        }
        if (reference == Literals.UNIT_REF__OWNER) {
            return context.eContainer() instanceof PinOption ? plain(names, EnumSet.of(Kind.MODULE), Space.MODULE)
                    : plain(names, EnumSet.of(Kind.RACK), Space.RACK);
        }
        if (reference == Literals.WAIVER_DEF__SUBJECT) {
            return plain(names, EnumSet.of(Kind.EFFECT, Kind.CHAIN, Kind.CUE, Kind.MODULE, Kind.MODULE_TYPE, Kind.RACK, Kind.SOUNDTRACK,
                    Kind.LOT, Kind.IGNITER, Kind.FIRING_SYSTEM, Kind.SITE, Kind.AREA), Space.SHOT, Space.CUE, Space.MODULE,
                    Space.MODULE_TYPE, Space.RACK, Space.SOUNDTRACK, Space.LOT, Space.IGNITER, Space.FIRING_SYSTEM, Space.SITE,
                    Space.AREA);
        }
        Kind kind = single(context, reference);
        return plain(names, EnumSet.of(kind), kind.space());
    }

    private static Kind single(EObject context, EReference reference) {
        if (reference == Literals.REF_FIELD__TARGET) {
            return switch (((RefField) context).getKey() == null ? "" : ((RefField) context).getKey()) {
                case "site" -> Kind.SITE;
                case "igniter" -> Kind.IGNITER;
                default -> Kind.FIRING_SYSTEM;
            };
        }
        if (reference == Literals.MODULE_DEF__OF) {
            return Kind.MODULE_TYPE;
        }
        if (reference == Literals.RACK_DEF__POSITION || reference == Literals.WAIVER_DEF__POSITION) {
            return Kind.POSITION;
        }
        if (reference == Literals.LOT_OPTION__LOT) {
            return Kind.LOT;
        }
        if (reference == Literals.PLAY_LINE__FIGURE) {
            return Kind.FIGURE;
        }
        if (reference == Literals.CUE_END_FIELD__CUE) {
            return Kind.CUE;
        }
        if (reference == Literals.SCORE_DEF__SOUNDTRACK || reference == Literals.REHEARSAL_DEF__SOUNDTRACK) {
            return Kind.SOUNDTRACK;
        }
        if (reference == Literals.LEAD_FIELD__WIRE) {
            return Kind.WIRE;
        }
        if (reference == Literals.TABLE_REF_FIELD__TABLE) {
            return Kind.TABLE;
        }
        throw new IllegalStateException("no rule of names for " + reference.getName());
    }

    private static Candidates plain(Names names, Set<Kind> kinds, Space... spaces) {
        List<Map<String, Named>> tables = new ArrayList<>();
        for (Space space : spaces) {
            tables.add(names.in(space));
        }
        return new Candidates(kinds, tables);
    }

    private static Candidates inFigure(EObject context, Names names, Set<Kind> kinds, Space... spaces) {
        List<Map<String, Named>> tables = new ArrayList<>();
        FigureDef figure = container(context, FigureDef.class);
        if (figure != null) {
            kinds.add(Kind.PARAMETER);
            tables.add(names.inside(figure));
        }
        for (Space space : spaces) {
            tables.add(names.in(space));
        }
        return new Candidates(kinds, tables);
    }

    private static Candidates moment(EObject context, Names names) {
        Candidates base = inFigure(context, names, EnumSet.of(Kind.MARK));
        List<Map<String, Named>> tables = new ArrayList<>(base.tables());
        tables.add(marks(context, names));
        return new Candidates(base.kinds(), tables);
    }

    private static Candidates argument(EObject context, Names names) {
        Candidates base = inFigure(context, names, EnumSet.of(Kind.EFFECT, Kind.CHAIN, Kind.POSITION, Kind.GROUP, Kind.MARK), Space.SHOT,
                Space.PLACE);
        List<Map<String, Named>> tables = new ArrayList<>(base.tables());
        tables.add(marks(context, names));
        return new Candidates(base.kinds(), tables);
    }

    /** Marks of the soundtrack around, or of the soundtrack of the score or rehearsal around. */
    private static Map<String, Named> marks(EObject context, Names names) {
        SoundtrackDef soundtrack = container(context, SoundtrackDef.class);
        if (soundtrack != null) {
            return names.inside(soundtrack);
        }
        ScoreDef score = container(context, ScoreDef.class);
        Named named = score != null ? names.in(Space.SOUNDTRACK).get(Sources.name(score, Literals.SCORE_DEF__SOUNDTRACK))
                : rehearsed(container(context, RehearsalDef.class), names.in(Space.SOUNDTRACK));
        return named == null ? Map.of() : names.inside(named);
    }

    /** The soundtrack that a rehearsal names, or the only one there is. */
    private static Named rehearsed(RehearsalDef rehearsal, Map<String, Named> soundtracks) {
        if (rehearsal == null) {
            return null;
        }
        String name = Sources.name(rehearsal, Literals.REHEARSAL_DEF__SOUNDTRACK);
        return name.isEmpty() && soundtracks.size() == 1 ? soundtracks.values().iterator().next() : soundtracks.get(name);
    }

    private static <T extends EObject> T container(EObject object, Class<T> type) {
        for (EObject o = object; o != null; o = o.eContainer()) {
            if (type.isInstance(o)) {
                return type.cast(o);
            }
        }
        return null;
    }
}
