package org.girandole.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.girandole.physics.fallout.Footprint;
import org.girandole.physics.geometry.Point2;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FalloutAreas;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Workings;
import org.girandole.plan.rules.distance.AskedDistances;
import org.girandole.plan.rules.distance.SiteInWind;
import org.girandole.plan.rules.distance.WindTable;
import org.girandole.plan.script.Site;

/** The answer of the site command. */
final class SiteText {
    private static final int FIRST_COLUMN = 14;

    private final Workings workings;
    private final SiteInWind inWind;
    private final Plan plan;
    private final Site site;
    private final PrintWriter out;

    SiteText(Workings workings, SiteInWind inWind, PrintWriter out) {
        this.workings = workings;
        this.inWind = inWind;
        this.plan = inWind.plan();
        this.site = plan.script().site().orElseThrow();
        this.out = out;
    }

    void print() {
        out.println(site.label() + ", " + site.wind().map(SiteText::wind).orElse(windRefused() ? "wind not known: what is written of it makes no sense"
                : "in calm air: nothing is said of the wind"));
        AskedDistances asked = AskedDistances.of(workings);
        out.println("Distances by " + asked.table().map(table -> table.name() + ": " + table.title() + " (" + table.document().text() + ")")
                .orElse("no table"));
        inWind.unchecked().forEach(why -> out.println("NOT CHECKED: " + why));
        FalloutAreas fallout = FalloutAreas.of(plan, workings.shells());
        List<String> positions = SiteInWind.positions(plan);
        positions.forEach(position -> position(position, asked, fallout));
        out.println();
        List<String> not = positions.stream().filter(position -> inWind.state(position) == SiteInWind.State.NOT_CLEAN).toList();
        List<String> unchecked = positions.stream().filter(position -> inWind.state(position) == SiteInWind.State.UNCHECKED).toList();
        if (!unchecked.isEmpty()) {
            out.println("Not known to be clean: " + String.join(", ", unchecked) + ".");
        }
        if (!not.isEmpty()) {
            out.println("Not clean in this wind: " + String.join(", ", not) + ".");
        }
        if (positions.isEmpty()) {
            out.println("Nothing is fired.");
        } else if (not.isEmpty() && unchecked.isEmpty()) {
            boolean waived = positions.stream().anyMatch(position -> inWind.state(position) == SiteInWind.State.WAIVED);
            out.println("Every position is clean in this wind, by these rules and this table" + (waived ? ", but for what is waived" : "")
                    + ". That is no permission.");
        }
        if (!positions.isEmpty()) {
            bears(positions);
        }
    }

    private boolean windRefused() {
        return site.refused().stream().anyMatch(part -> part.part() == Site.Part.WIND);
    }

    private static String wind(Site.Wind wind) {
        return "wind " + Quantity.number(wind.speedMps()) + " m/s from " + Quantity.number(wind.fromDeg()) + "°"
                + wind.gustMps().map(gust -> ", gusts " + Quantity.number(gust) + " m/s").orElse("");
    }

    private void position(String position, AskedDistances asked, FalloutAreas fallout) {
        out.println();
        SiteInWind.State state = inWind.state(position);
        out.println(position + ": " + switch (state) {
            case CLEAN -> "clean";
            case WAIVED -> "clean but for what is waived";
            case NOT_CLEAN -> "NOT clean";
            case UNCHECKED -> "not known to be clean";
        });
        for (AskedDistances.Line line : asked.lines()) {
            if (line.position().equals(position)) {
                out.println("  " + (line.audience() ? "audience " : "protected ") + line.place() + ": " + distance(line));
            }
        }
        percentiles(position, fallout, "unburst shells", area -> Optional.of(area.result().unburst()));
        percentiles(position, fallout, "debris", area -> area.result().debris());
        fallout.unknown().stream().filter(unknown -> unknown.first().position().equals(position))
                .forEach(unknown -> out.println("  where " + unknown.first().label() + " comes down is not known: " + unknown.why()));
        for (Finding finding : inWind.at(position)) {
            if (!finding.subject().positions().isEmpty() && !SiteInWind.saysUnchecked(finding)) {
                out.println("  " + (finding.waived() ? "waived, " : "") + finding.rule() + ": " + finding.message() + "; " + finding.remedy());
            }
        }
    }

    private static String distance(AskedDistances.Line line) {
        String there = Quantity.metres(line.foundM()) + " there, ";
        String cue = " (cue " + line.cue().number() + ", " + line.cue().label() + ")";
        if (line.asked().assessmentNeeded()) {
            return there + "no number: " + line.asked().assessment().orElse("") + cue;
        }
        String estimated = line.asked().estimated().isEmpty() ? "" : " (estimated)";
        return there + Quantity.metres(line.asked().metres().getAsDouble()) + estimated + " asked, "
                + (line.asked().metBy(line.foundM()) ? "met" : "NOT met") + cue;
    }

    private void percentiles(String position, FalloutAreas fallout, String what, Function<FalloutAreas.Area, Optional<Footprint>> kind) {
        List<FalloutAreas.Area> here = fallout.areas().stream().filter(area -> area.first().position().equals(position)).toList();
        List<Footprint> footprints = here.stream().flatMap(area -> kind.apply(area).stream()).toList();
        if (footprints.isEmpty()) {
            return;
        }
        Point2 at = site.positions().stream().filter(each -> each.name().equals(position)).findFirst()
                .map(each -> new Point2(each.at().xM(), each.at().yM())).orElseThrow();
        List<String> parts = new ArrayList<>();
        for (Footprint.Area share : footprints.get(0).areas()) {
            OptionalDouble farthest = footprints.stream().flatMap(footprint -> footprint.areas().stream())
                    .filter(area -> area.share() == share.share()).flatMap(area -> area.outline().corners().stream())
                    .mapToDouble(at::distanceM).max();
            farthest.ifPresent(metres -> parts.add(Quantity.number(share.share() * 100) + " % within " + Math.round(metres) + " m"));
        }
        boolean estimated = here.stream().anyMatch(FalloutAreas.Area::estimated);
        out.println("  " + what + ": " + String.join(", ", parts) + (estimated ? " (estimated)" : ""));
    }

    /** How much wind of this direction the show bears, as a whole and position by position. */
    private void bears(List<String> positions) {
        if (site.wind().isEmpty()) {
            out.println("How much wind it bears is not known: say from where, such as --wind \"5 m/s from 240 deg\".");
            return;
        }
        WindTable table = WindTable.of(plan, site.wind().get().fromDeg());
        out.println(table.sentence());
        if (table.rows().stream().allMatch(WindTable.Row::unchecked)) {
            return;
        }
        out.println();
        int width = Math.max(9, positions.stream().mapToInt(String::length).max().orElse(0)) + 1;
        StringBuilder head = new StringBuilder(pad("from " + Quantity.number(table.fromDeg()) + "°", FIRST_COLUMN));
        StringBuilder bears = new StringBuilder(pad("clean up to", FIRST_COLUMN));
        for (WindTable.Row row : table.rows()) {
            head.append(pad(row.position(), width));
            bears.append(pad(row.upTo(), width));
        }
        out.println(head.toString().stripTrailing());
        out.println(bears.toString().stripTrailing());
        for (int i = 0; i < WindTable.SPEEDS_MPS.size(); i++) {
            StringBuilder line = new StringBuilder(pad(WindTable.SPEEDS_MPS.get(i) + " m/s", FIRST_COLUMN));
            for (WindTable.Row row : table.rows()) {
                line.append(pad(row.states().get(i).word(), width));
            }
            out.println(line.toString().stripTrailing());
        }
        if (table.waived()) {
            out.println("A waiver counts here in every wind, whatever wind its author thought of.");
        }
        out.println("Computed for a steady wind measured 2 m above the ground (gusts count for the table's distances only), with the scatter of "
                + FalloutAreas.SAMPLES + " flights of each kind.");
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(Math.max(1, width - text.length()));
    }
}
