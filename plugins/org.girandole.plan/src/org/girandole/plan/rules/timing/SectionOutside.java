package org.girandole.plan.rules.timing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.PlannedSoundtrack.Section;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.rules.Basis;
import org.girandole.plan.rules.Findings;
import org.girandole.plan.rules.Quantity;
import org.girandole.plan.rules.Rule;
import org.girandole.plan.rules.RuleInfo;

/** A section that reaches beyond the music, is turned around, or runs into its neighbour. */
public final class SectionOutside implements Rule {
    private static final RuleInfo INFO = new RuleInfo("section-outside", RuleInfo.Family.TIMING, Severity.WARNING,
            "A section does not lie where a section can lie.",
            "The running sheet is cut into sections. One that overlaps another or leaves the music shows the shooter the wrong part.",
            "the script's own sections and length");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(Plan plan, Findings out) {
        for (PlannedSoundtrack track : plan.soundtracks()) {
            track.sections().forEach(section -> limits(track, section, out));
            overlaps(track, out);
        }
    }

    private static void limits(PlannedSoundtrack track, Section section, Findings out) {
        String found = Quantity.moment(section.fromUs()) + " to " + Quantity.moment(section.toUs());
        if (section.fromUs() >= section.toUs()) {
            out.report("Section " + section.name() + " ends before it begins")
                    .found(found, "an end after " + Quantity.moment(section.fromUs()))
                    .basis("time runs forward")
                    .remedy("exchange the two limits, or correct the mark they hang on")
                    .about(Subject.of(section.name(), track.name())).at(section.source());
            return;
        }
        boolean tooLong = track.lengthUs().filter(lengthUs -> section.toUs() > lengthUs).isPresent();
        if (section.fromUs() < 0 || tooLong) {
            String end = track.lengthUs().map(Quantity::moment).orElse("the end of the music, unknown");
            out.report("Section " + section.name() + " reaches outside of " + track.name())
                    .found(found, "0:00.000 to " + end)
                    .basis(Basis.script("length of " + track.name() + " " + end, track.script().source()))
                    .remedy("let the section lie inside the music, or correct the length")
                    .about(Subject.of(section.name(), track.name())).at(section.source());
        }
    }

    private static void overlaps(PlannedSoundtrack track, Findings out) {
        List<Section> sections = new ArrayList<>(track.sections());
        sections.removeIf(section -> section.fromUs() >= section.toUs());
        sections.sort(Comparator.comparingLong(Section::fromUs).thenComparing(Section::name));
        Section longest = null;
        for (Section section : sections) {
            if (longest != null && section.fromUs() < longest.toUs()) {
                out.report("Section " + section.name() + " begins before section " + longest.name() + " has ended")
                        .found("begins at " + Quantity.moment(section.fromUs()), "from " + Quantity.moment(longest.toUs()) + " on")
                        .basis(Basis.script("section " + longest.name() + " ends at " + Quantity.moment(longest.toUs()), longest.source()))
                        .remedy("let one section end where the next begins")
                        .about(Subject.of(section.name(), track.name())).at(section.source());
            }
            if (longest == null || section.toUs() > longest.toUs()) {
                longest = section;
            }
        }
    }
}
