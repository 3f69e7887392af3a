package org.girandole.lang.scoping;

import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.girandole.lang.show.AreaField;
import org.girandole.lang.show.ChainDef;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.DistancesDef;
import org.girandole.lang.show.EffectDef;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.FiringSystemDef;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.IgniterDef;
import org.girandole.lang.show.LotDef;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.ModuleDef;
import org.girandole.lang.show.ModuleTypeDef;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.RackDef;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.ShowDef;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.TableDef;
import org.girandole.lang.show.WireDef;

/** The kinds of named things. Names are unique within a space; effects and chains share one, and positions and groups. */
public enum Kind {
    SHOW("a show", Space.SHOW), SOUNDTRACK("a soundtrack", Space.SOUNDTRACK), MARK("a mark", Space.MARK),
    EFFECT("an effect", Space.SHOT), CHAIN("a chain", Space.SHOT), LOT("a lot", Space.LOT), SITE("a site", Space.SITE),
    POSITION("a position", Space.PLACE), GROUP("a group", Space.PLACE), AREA("an area", Space.AREA), IGNITER("an igniter", Space.IGNITER),
    WIRE("a wire", Space.WIRE), MODULE_TYPE("a module type", Space.MODULE_TYPE), MODULE("a module", Space.MODULE),
    RACK("a rack", Space.RACK), FIRING_SYSTEM("a firing system", Space.FIRING_SYSTEM), FIGURE("a figure", Space.FIGURE),
    PARAMETER("a value of the figure", Space.PARAMETER), SECTION("a section", Space.SECTION), CUE("a cue", Space.CUE),
    DISTANCES("a distance table", Space.DISTANCES), TABLE("a table", Space.TABLE);

    /** A set of names of which each may stand for one thing only. */
    public enum Space {
        SHOW, SOUNDTRACK, MARK, SHOT, LOT, SITE, PLACE, AREA, IGNITER, WIRE, MODULE_TYPE, MODULE, RACK, FIRING_SYSTEM, FIGURE, PARAMETER,
        SECTION, CUE, DISTANCES, TABLE
    }

    private final String words;
    private final Space space;

    Kind(String words, Space space) {
        this.words = words;
        this.space = space;
    }

    /** With article, for messages. */
    public String words() {
        return words;
    }

    public Space space() {
        return space;
    }

    /** The kind of a named object. */
    public static Optional<Kind> of(EObject object) {
        return Optional.ofNullable(object instanceof EffectDef ? EFFECT : object instanceof CueLine ? CUE
                : object instanceof PositionDef ? POSITION : object instanceof GroupDef ? GROUP : object instanceof MarkDef ? MARK
                : object instanceof ChainDef ? CHAIN : object instanceof Parameter ? PARAMETER : object instanceof LotDef ? LOT
                : object instanceof ModuleDef ? MODULE : object instanceof RackDef ? RACK : object instanceof SoundtrackDef ? SOUNDTRACK
                : object instanceof SiteDef ? SITE : object instanceof AreaField ? AREA : object instanceof IgniterDef ? IGNITER
                : object instanceof WireDef ? WIRE : object instanceof ModuleTypeDef ? MODULE_TYPE
                : object instanceof FiringSystemDef ? FIRING_SYSTEM : object instanceof FigureDef ? FIGURE
                : object instanceof SectionDef ? SECTION : object instanceof DistancesDef ? DISTANCES
                : object instanceof TableDef ? TABLE : object instanceof ShowDef ? SHOW : null);
    }
}
