package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.ecore.EReference;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.show.AreaField;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;
import org.girandole.lang.show.PlaceRange;
import org.girandole.lang.show.Places;
import org.girandole.lang.show.PointField;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.SiteDef;
import org.girandole.lang.show.WindField;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;

/** The site, and what names of places mean on it. */
final class SiteBlock {
    private static final double MOST_TIMES = 100;

    private final Compilation compilation;
    private final Optional<SiteDef> def;
    /** Positions in site order, with their number in it. */
    private final Map<PositionDef, Integer> order = new LinkedHashMap<>();
    private final Map<GroupDef, List<PositionDef>> groups = new IdentityHashMap<>();
    private final Set<GroupDef> open = new HashSet<>();

    SiteBlock(Compilation compilation, Optional<SiteDef> def) {
        this.compilation = compilation;
        this.def = def;
        for (Field field : def.map(SiteDef::getFields).<List<Field>>map(List::copyOf).orElse(List.of())) {
            if (field instanceof PositionDef position && position.getName() != null) {
                order.put(position, order.size());
            }
        }
    }

    Optional<Site> site() {
        return def.filter(site -> site.getName() != null).map(this::site);
    }

    private Site site(SiteDef site) {
        Block block = new Block(compilation, site, site.getFields(), "a site", compilation.grammar().getSiteFieldRule(),
                Set.of("position", "group", "audience", "protect"));
        List<Site.Position> positions = new ArrayList<>();
        for (PositionDef position : block.all("position", PositionDef.class)) {
            Optional<Point> at = point(position.getAt());
            if (position.getName() != null && at.isPresent()) {
                positions.add(new Site.Position(position.getName(), at.get(), compilation.sources().of(position)));
            } else {
                unmeasured(position);
                order.remove(position);
                compilation.drop(position);
            }
        }
        List<Site.Group> groupList = new ArrayList<>();
        for (GroupDef group : block.all("group", GroupDef.class)) {
            List<PositionDef> members = members(group);
            if (group.getName() != null) {
                groupList.add(new Site.Group(group.getName(), members.stream().map(PositionDef::getName).toList(),
                        compilation.sources().of(group)));
            }
        }
        List<Site.Refused> refused = new ArrayList<>();
        List<Site.Area> audience = new ArrayList<>();
        for (AreaField area : block.all("audience", AreaField.class)) {
            area(area, 2, "A line along which people stand").ifPresentOrElse(audience::add, () -> refused.add(refused(Site.Part.AUDIENCE, area)));
        }
        List<Site.Protected> protectedPlaces = new ArrayList<>();
        for (AreaField area : block.all("protect", AreaField.class)) {
            protectedPlace(area).ifPresentOrElse(protectedPlaces::add, () -> refused.add(refused(Site.Part.PROTECTED, area)));
        }
        Optional<Site.Area> boundary = block.field("boundary", AreaField.class).flatMap(area -> area(area, 3, "A boundary"));
        Optional<Site.Wind> wind = block.field("wind", WindField.class).flatMap(this::wind);
        Optional<Double> air = block.si("air", Range.AIR);
        Optional<Double> elevation = block.si("elevation", Range.ELEVATION);
        refused(block, "boundary", Site.Part.BOUNDARY, boundary).ifPresent(refused::add);
        refused(block, "wind", Site.Part.WIND, wind).ifPresent(refused::add);
        refused(block, "air", Site.Part.AIR, air).ifPresent(refused::add);
        refused(block, "elevation", Site.Part.ELEVATION, elevation).ifPresent(refused::add);
        return new Site(site.getName(), site.getLabel() == null ? site.getName() : site.getLabel(), positions, groupList, audience, boundary,
                protectedPlaces, wind, air, elevation,
                block.field("listening", PointField.class).flatMap(field -> point(field.getPoint())), refused, compilation.sources().of(site));
    }

    private Site.Refused refused(Site.Part part, AreaField area) {
        return new Site.Refused(part, area.getName() == null ? area.getKey() : area.getName(), place(area));
    }

    /** A line that is there and gave no value. */
    private Optional<Site.Refused> refused(Block block, String key, Site.Part part, Optional<?> value) {
        return value.isPresent() ? Optional.empty()
                : block.field(key, Field.class).map(field -> new Site.Refused(part, key, compilation.sources().whole(field)));
    }

    private void unmeasured(PositionDef position) {
        if (position.getUnsaid() != null) {
            compilation.problems().report(LanguageRules.SYNTAX, "The place of '" + position.getName() + "' stands there without its 'at'")
                    .found(Sources.text(position.getUnsaid()), "at " + Sources.text(position.getUnsaid())).remedy("write 'at' before it")
                    .at(compilation.sources().whole(position.getUnsaid()));
        } else if (position.getName() != null && Sources.line(position).endsWith(" " + Sources.text(position, eINSTANCE.getNamed_Name()))) {
            // Where something follows that could not be read, the parser has said so.
            compilation.problems().report(LanguageRules.MISSING_FIELD, "The position '" + position.getName() + "' does not say where it is")
                    .found("nothing after '" + position.getName() + "'", "its place, such as at (10 m, 0 m)")
                    .remedy("measure where it is, and write at and its coordinates after its name").at(compilation.sources().of(position));
        }
    }

    Optional<Point> point(org.girandole.lang.show.Point written) {
        return point(written, Range.COORDINATE);
    }

    Optional<Point> point(org.girandole.lang.show.Point written, Range range) {
        if (written == null) {
            return Optional.empty();
        }
        Optional<Double> x = compilation.quantities().si(written.getX(), range);
        Optional<Double> y = compilation.quantities().si(written.getY(), range);
        Optional<Double> z = written.getZ() == null ? Optional.of(0.0) : compilation.quantities().si(written.getZ(), range);
        return x.isEmpty() || y.isEmpty() || z.isEmpty() ? Optional.empty() : Optional.of(new Point(x.get(), y.get(), z.get()));
    }

    private Optional<List<Point>> points(AreaField area) {
        List<Point> points = new ArrayList<>();
        for (org.girandole.lang.show.Point written : area.getPoints()) {
            Optional<Point> point = point(written);
            if (point.isEmpty()) {
                return Optional.empty();
            }
            points.add(point.get());
        }
        return Optional.of(points);
    }

    private Optional<Site.Area> area(AreaField area, int fewest, String what) {
        Optional<List<Point>> points = points(area);
        if (points.isEmpty() || !enough(area, points.get().size(), fewest, what)) {
            return Optional.empty();
        }
        String name = area.getName() == null ? area.getKey() : area.getName();
        return Optional.of(new Site.Area(name, points.get(), place(area)));
    }

    private SourceRef place(AreaField area) {
        return compilation.sources().of(area, area.getName() == null ? eINSTANCE.getAreaField_Key() : eINSTANCE.getNamed_Name());
    }

    private boolean enough(AreaField area, int points, int fewest, String what) {
        if (points >= fewest) {
            return true;
        }
        if (points > 0) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, what + " needs at least " + fewest + " points")
                    .found(Words.count(points, "point"), "at least " + fewest + " points").remedy("write the points one after the other")
                    .at(compilation.sources().whole(area));
        }
        return false;
    }

    private Optional<Site.Protected> protectedPlace(AreaField area) {
        Optional<List<Point>> points = points(area);
        boolean circle = area.getRadius() != null;
        Optional<Double> radius = circle ? compilation.quantities().si(area.getRadius(), Range.RADIUS) : Optional.empty();
        if (points.isEmpty() || circle && radius.isEmpty() || area.getName() == null
                || !circle && !enough(area, points.get().size(), 3, "A protected place")) {
            return Optional.empty();
        }
        Optional<Double> times = area.getTimes() == null ? Optional.of(1.0)
                : compilation.quantities().number(area, eINSTANCE.getAreaField_Times(), area.getTimes(), "a multiple of a distance", 1,
                        MOST_TIMES).map(Number::doubleValue);
        return times.map(multiple -> new Site.Protected(area.getName(), points.get(), radius, multiple, place(area)));
    }

    private Optional<Site.Wind> wind(WindField field) {
        Optional<Double> from = compilation.quantities().si(field.getFrom(), Range.BEARING);
        Optional<Double> speed = compilation.quantities().si(field.getSpeed(), Range.WIND);
        Optional<Double> gust = compilation.quantities().si(field.getGust(), Range.WIND);
        if (from.isEmpty() || speed.isEmpty()) {
            return Optional.empty();
        }
        if (gust.isPresent() && gust.get() < speed.get()) {
            compilation.problems().report(LanguageRules.NUMBER_RANGE, "The gusts are slower than the wind")
                    .found(Sources.text(field.getGust()), "at least " + Sources.text(field.getSpeed())).remedy("check both speeds")
                    .at(compilation.sources().whole(field.getGust()));
        }
        return Optional.of(new Site.Wind(from.get(), speed.get(), gust, compilation.sources().whole(field)));
    }

    /** Positions of a group, its own groups expanded. */
    private List<PositionDef> members(GroupDef group) {
        List<PositionDef> known = groups.get(group);
        if (known != null) {
            return known;
        }
        if (!open.add(group)) {
            compilation.problems().report(LanguageRules.GROUP_CYCLE, "The group '" + group.getName() + "' contains itself")
                    .found("the group in its own list", "positions, or other groups")
                    .remedy("list positions instead of the group").at(compilation.sources().of(group));
            return List.of();
        }
        List<PositionDef> members = expand(group.getPlaces(), Map.of()).orElse(List.of());
        open.remove(group);
        groups.put(group, members);
        return members;
    }

    /**
     * Positions in the order in which they are walked.
     *
     * @param values what the values of the figure around mean
     * @return empty when any part of them is wrong, which is reported
     */
    Optional<List<PositionDef>> expand(Places places, Map<Parameter, Given> values) {
        if (places == null) {
            return Optional.empty();
        }
        if (places.isAll()) {
            if (order.isEmpty()) {
                compilation.problems().report(LanguageRules.UNRESOLVED_NAME, "There are no positions that 'all' could mean")
                        .remedy("define positions in a site").at(compilation.sources().whole(places));
            }
            return order.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(order.keySet()));
        }
        List<PositionDef> positions = new ArrayList<>();
        Set<PositionDef> seen = new HashSet<>();
        boolean whole = !places.getRanges().isEmpty();
        for (PlaceRange range : places.getRanges()) {
            Optional<List<PositionDef>> part = range(range, values);
            whole &= part.isPresent();
            for (PositionDef position : part.orElse(List.of())) {
                if (seen.add(position)) {
                    positions.add(position);
                } else {
                    compilation.problems().report(LanguageRules.PLACE_TWICE, "'" + position.getName() + "' is named twice in one line")
                            .found("twice", "once").remedy("name it once; for two shots there write 2 x before the effect")
                            .at(compilation.sources().whole(range));
                }
            }
        }
        return whole && !positions.isEmpty() ? Optional.of(positions) : Optional.empty();
    }

    private Optional<List<PositionDef>> range(PlaceRange range, Map<Parameter, Given> values) {
        Optional<Named> first = place(range, eINSTANCE.getPlaceRange_First(), values);
        boolean toward = range.eIsSet(eINSTANCE.getPlaceRange_Last());
        if (!toward) {
            return first.map(named -> named instanceof GroupDef group ? members(group) : List.of((PositionDef) named));
        }
        Optional<Named> last = place(range, eINSTANCE.getPlaceRange_Last(), values);
        if (first.isEmpty() || last.isEmpty()) {
            return Optional.empty();
        }
        if (!(first.get() instanceof PositionDef from) || !(last.get() instanceof PositionDef to)) {
            compilation.problems().report(LanguageRules.WRONG_KIND, "A range goes from one position to another, not to a group")
                    .found(Sources.text(range), "position .. position").remedy("write the group by itself, after a comma")
                    .at(compilation.sources().whole(range));
            return Optional.empty();
        }
        List<PositionDef> all = List.copyOf(order.keySet());
        int a = all.indexOf(from);
        int b = all.indexOf(to);
        List<PositionDef> walked = new ArrayList<>(all.subList(Math.min(a, b), Math.max(a, b) + 1));
        if (a > b) {
            Collections.reverse(walked);
        }
        return Optional.of(walked);
    }

    private Optional<Named> place(PlaceRange range, EReference reference, Map<Parameter, Given> values) {
        Optional<Named> named = compilation.resolve(range, reference);
        if (named.isPresent() && named.get() instanceof Parameter parameter) {
            Given given = values.get(parameter);
            return given == null ? Optional.empty() : given.as(compilation, parameter, Set.of(Kind.POSITION,
                    Kind.GROUP));
        }
        // A position of another site than the one that the show is on is in no order.
        return named.filter(place -> place instanceof GroupDef || order.containsKey(place));
    }
}
