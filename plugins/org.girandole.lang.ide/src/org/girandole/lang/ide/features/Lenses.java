package org.girandole.lang.ide.features;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.Command;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.CheckedText;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;

/** Above each section: how many igniters it fires, how long it is and how much it weighs in explosives. */
public final class Lenses {
    private Lenses() {
    }

    /** Lenses of the checked text; empty when the check has not caught up. */
    public static List<CodeLens> of(ScriptView view, Optional<CheckedScript> checked) {
        List<CodeLens> lenses = new ArrayList<>();
        if (checked.isEmpty() || checked.get().plan().isEmpty()) {
            return lenses;
        }
        Plan plan = checked.get().plan().get();
        for (Map.Entry<String, CheckedText> file : checked.get().texts().entrySet()) {
            if (!file.getValue().uri().equals(view.uri()) || !file.getValue().lines().text().equals(view.lines().text())) {
                continue;
            }
            for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
                for (PlannedSoundtrack.Section section : soundtrack.sections()) {
                    if (section.source().file().equals(file.getKey())) {
                        lenses.add(new CodeLens(view.lines().range(section.source()), new Command(title(plan, soundtrack, section), ""), null));
                    }
                }
            }
        }
        return lenses;
    }

    private static String title(Plan plan, PlannedSoundtrack soundtrack, PlannedSoundtrack.Section section) {
        List<PlannedCue> cues = plan.cues().stream()
                .filter(cue -> cue.soundtrack().equals(soundtrack.name()) && cue.section().equals(section.name())).toList();
        double known = cues.stream().mapToDouble(cue -> cue.effect().chargeKg().orElse(0.0) * cue.pieces()).sum();
        long unknown = cues.stream().filter(cue -> cue.effect().chargeKg().isEmpty()).count();
        String charge = String.format(Locale.ROOT, "%.3f kg", known) + (unknown == 0 ? "" : " and " + unknown + " of unknown charge");
        return cues.size() + (cues.size() == 1 ? " igniter" : " igniters") + ", " + Times.seconds(section.toUs() - section.fromUs()) + ", "
                + charge;
    }
}
