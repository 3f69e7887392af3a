package org.girandole.lang.scoping;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

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
        if (reference == eINSTANCE.getCueLine_Effect()) {
            return inFigure(context, names, EnumSet.of(Kind.EFFECT, Kind.CHAIN), Space.SHOT);
        }
        if (reference == eINSTANCE.getPlaceRange_First() || reference == eINSTANCE.getPlaceRange_Last()) {
            return inFigure(context, names, EnumSet.of(Kind.POSITION, Kind.GROUP), Space.PLACE);
        }
        if (reference == eINSTANCE.getNameAnchor_Target()) {
            return context.eContainer() != null && context.eContainer().eContainer() instanceof Argument
                    ? argument(context, names) : moment(context, names);
        }
        if (reference == eINSTANCE.getNamedStep_Target()) {
            return inFigure(context, names, EnumSet.noneOf(Kind.class));
        }
        if (reference == eINSTANCE.getEffectDef_Like() || reference == eINSTANCE.getLotDef_Of() || reference == eINSTANCE.getChainDef_Of()) {
            return plain(names, EnumSet.of(Kind.EFFECT), Space.SHOT);
        }
        if (reference == eINSTANCE.getUnitRef_Owner()) {
            return context.eContainer() instanceof PinOption ? plain(names, EnumSet.of(Kind.MODULE), Space.MODULE)
                    : plain(names, EnumSet.of(Kind.RACK), Space.RACK);
        }
        if (reference == eINSTANCE.getWaiverDef_Subject()) {
            return plain(names, EnumSet.of(Kind.EFFECT, Kind.CHAIN, Kind.CUE, Kind.MODULE, Kind.MODULE_TYPE, Kind.RACK, Kind.SOUNDTRACK,
                    Kind.LOT, Kind.IGNITER, Kind.FIRING_SYSTEM, Kind.SITE, Kind.AREA), Space.SHOT, Space.CUE, Space.MODULE,
                    Space.MODULE_TYPE, Space.RACK, Space.SOUNDTRACK, Space.LOT, Space.IGNITER, Space.FIRING_SYSTEM, Space.SITE,
                    Space.AREA);
        }
        Kind kind = single(context, reference);
        return plain(names, EnumSet.of(kind), kind.space());
    }

    private static Kind single(EObject context, EReference reference) {
        if (reference == eINSTANCE.getRefField_Target()) {
            return switch (((RefField) context).getKey() == null ? "" : ((RefField) context).getKey()) {
                case "site" -> Kind.SITE;
                case "igniter" -> Kind.IGNITER;
                default -> Kind.FIRING_SYSTEM;
            };
        }
        if (reference == eINSTANCE.getModuleDef_Of()) {
            return Kind.MODULE_TYPE;
        }
        if (reference == eINSTANCE.getRackDef_Position() || reference == eINSTANCE.getWaiverDef_Position()) {
            return Kind.POSITION;
        }
        if (reference == eINSTANCE.getLotOption_Lot()) {
            return Kind.LOT;
        }
        if (reference == eINSTANCE.getPlayLine_Figure()) {
            return Kind.FIGURE;
        }
        if (reference == eINSTANCE.getCueEndField_Cue()) {
            return Kind.CUE;
        }
        if (reference == eINSTANCE.getScoreDef_Soundtrack() || reference == eINSTANCE.getRehearsalDef_Soundtrack()) {
            return Kind.SOUNDTRACK;
        }
        if (reference == eINSTANCE.getLeadField_Wire()) {
            return Kind.WIRE;
        }
        if (reference == eINSTANCE.getTableRefField_Table()) {
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
        Named named = score != null ? names.in(Space.SOUNDTRACK).get(Sources.name(score, eINSTANCE.getScoreDef_Soundtrack()))
                : rehearsed(container(context, RehearsalDef.class), names.in(Space.SOUNDTRACK));
        return named == null ? Map.of() : names.inside(named);
    }

    /** The soundtrack that a rehearsal names, or the only one there is. */
    private static Named rehearsed(RehearsalDef rehearsal, Map<String, Named> soundtracks) {
        if (rehearsal == null) {
            return null;
        }
        String name = Sources.name(rehearsal, eINSTANCE.getRehearsalDef_Soundtrack());
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
