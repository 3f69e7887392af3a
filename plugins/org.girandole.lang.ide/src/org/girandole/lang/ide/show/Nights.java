package org.girandole.lang.ide.show;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.rehearse.CueOutcome;
import org.girandole.plan.rehearse.GoneThrough;
import org.girandole.plan.rehearse.Rehearsed;
import org.girandole.plan.rehearse.RehearsalTrace;
import org.girandole.plan.rehearse.RehearsalTrace.Sample;
import org.girandole.plan.rehearse.Window;
import org.girandole.plan.script.Rehearsal;
import org.girandole.protocol.RehearsalParams;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.RehearsalView.Choice;
import org.girandole.protocol.RehearsalView.Ending;
import org.girandole.protocol.RehearsalView.Said;
import org.girandole.protocol.RehearsalView.Stretch;

/** Says in the words of the protocol how rehearsed nights go. */
final class Nights {
    private static final String NOT_LOADED = "not loaded";

    private Nights() {
    }

    static RehearsalView of(RehearsalParams params, Plan plan) {
        List<Choice> choices = plan.script().rehearsals().stream().map(one -> new Choice(one.name(), one.soundtrack())).toList();
        Optional<Rehearsal> chosen = plan.script().rehearsals().stream().filter(one -> one.name().equals(params.name())).findFirst();
        if (chosen.isEmpty()) {
            return RehearsalView.nothing(choices, params.name() == null ? "No rehearsal is chosen." : "The script rehearses no '" + params.name() + "'.");
        }
        GoneThrough gone = GoneThrough.of(plan, chosen.get());
        return gone.night().map(night -> view(choices, night)).orElseGet(() -> RehearsalView.nothing(choices,
                gone.impossible().map(why -> why.getMessage() + ": " + why.remedy() + ".").orElseThrow()));
    }

    private static RehearsalView view(List<Choice> choices, Rehearsed night) {
        Rehearsed.Pass worst = night.worst();
        List<Ending> cues = new ArrayList<>();
        for (CueOutcome outcome : worst.log().cues()) {
            // The cues of a wrong slot are on another soundtrack's pages.
            if (!night.wrongSlot()) {
                cues.add(new Ending(night.cue(outcome).number(), outcome.end().words(),
                        outcome.lateUs().isPresent() ? outcome.lateUs().getAsLong() : null));
            }
        }
        night.notLoaded().forEach(cue -> cues.add(new Ending(cue.number(), NOT_LOADED, null)));
        cues.sort(Comparator.comparingInt(Ending::number));
        return new RehearsalView(null, choices, night.name(), night.soundtrack().name(), worst.clock(), stretches(night.lost()),
                stretches(night.released()), said(night.trace(worst)), cues);
    }

    private static List<Stretch> stretches(List<Window> windows) {
        return windows.stream().map(window -> new Stretch(window.fromUs(), window.toUs())).toList();
    }

    private static List<Said> said(RehearsalTrace trace) {
        List<Said> said = new ArrayList<>();
        long fromUs = trace.samples().get(0).atUs();
        for (int i = 0; i < trace.samples().size(); i++) {
            Sample sample = trace.samples().get(i);
            boolean last = i == trace.samples().size() - 1;
            if (last || trace.samples().get(i + 1).state() != sample.state()) {
                long toUs = last ? sample.atUs() : trace.samples().get(i + 1).atUs();
                if (toUs > fromUs) {
                    said.add(new Said(fromUs, toUs, sample.state().words()));
                }
                fromUs = toUs;
            }
        }
        return said;
    }
}
