package org.girandole.lang.compile;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;
import org.girandole.lang.scoping.Names;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.plan.script.Site;

/**
 * All that the meaning of a cue line hangs on beside its own text. Two equal frames give equal lines an equal meaning.
 *
 * @param names the names that a line can use, and what they stand for
 * @param places the positions in the order of the site
 * @param groups the positions of each group
 * @param marks the marks of each soundtrack that are in the script, and what they stand for
 * @param imported those that are in files of marks
 */
record CueFrame(Map<Space, Map<String, Meaning>> names, List<String> places, Map<String, List<String>> groups,
        Map<String, Map<String, Meaning>> marks, Map<String, Set<String>> imported) {
    private static final Set<Space> USED = Set.of(Space.SHOT, Space.PLACE, Space.LOT, Space.MODULE, Space.RACK);

    /** What a name stands for. @param dropped whether that is left out of the show, being broken */
    record Meaning(Optional<Kind> kind, boolean dropped) {
    }

    /** @param music has compiled the soundtracks */
    static CueFrame of(Compilation compilation, Site site, Music music) {
        Names all = compilation.names();
        Map<Space, Map<String, Meaning>> names = new EnumMap<>(Space.class);
        USED.forEach(space -> names.put(space, meanings(compilation, all.in(space))));
        Map<String, Map<String, Meaning>> marks = new HashMap<>();
        Map<String, Set<String>> imported = new HashMap<>();
        all.in(Space.SOUNDTRACK).forEach((name, soundtrack) -> {
            marks.put(name, meanings(compilation, all.inside(soundtrack)));
            imported.put(name, Set.copyOf(music.importedMarks((SoundtrackDef) soundtrack)));
        });
        return new CueFrame(names, site.positions().stream().map(Site.Position::name).toList(),
                site.groups().stream().collect(Collectors.toMap(Site.Group::name, Site.Group::positions, (first, second) -> first)), marks,
                imported);
    }

    private static Map<String, Meaning> meanings(Compilation compilation, Map<String, Named> table) {
        Map<String, Meaning> meanings = new HashMap<>();
        table.forEach((name, named) -> meanings.put(name, new Meaning(Kind.of(named), compilation.dropped(named))));
        return meanings;
    }
}
