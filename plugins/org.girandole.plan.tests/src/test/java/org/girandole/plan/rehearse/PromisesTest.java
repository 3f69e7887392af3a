package org.girandole.plan.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BiFunction;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AfterContainer;
import org.girandole.plan.rehearse.CueOutcome.End;

/** Holds the model to its promises on nights at random, and shows that broken models are caught by the same promises. */
class PromisesTest {
    private static final Map<String, Integer> CAUGHT = new LinkedHashMap<>();

    @Provide
    Arbitrary<Nights.Case> nights() {
        return Nights.cases();
    }

    @Property(tries = 100_000, edgeCases = EdgeCasesMode.NONE, seed = "20270619")
    void keepsEveryPromise(@ForAll("nights") Nights.Case each) {
        List<CueOutcome> commands = new ArrayList<>();
        RehearsalLog log = new Spied(each.night(), commands).log(Rehearsing.course(each.night(), each.model(), each.backup()));

        assertThat(Promises.broken(each, commands, log)).isEmpty();
        assertThat(each.log()).isEqualTo(log);
    }

    @Property(tries = 20_000, edgeCases = EdgeCasesMode.NONE, seed = "20270620")
    void withoutJumpsNothingIsEarlyAgainstTrueTime(@ForAll("nights") Nights.Case each) {
        List<Signal.Run> straight = each.night().signal().runs().stream().map(run -> new Signal.Run(run.fromUs(), run.toUs(), 0)).toList();
        Night night = new Night(each.night().cues(), new Signal(each.night().signal().rate(), -60_000_000, straight), each.night().hold(),
                each.night().takeoverUs(), 0, each.night().endUs());

        for (CueOutcome cue : Rehearsing.of(night, each.model(), each.backup()).cues()) {
            if (cue.end() == End.FIRED) {
                assertThat(cue.lateUs().getAsLong()).isGreaterThanOrEqualTo(-cue.boundUs());
            }
        }
    }

    @Property(tries = 20_000, edgeCases = EdgeCasesMode.NONE, seed = "20270621")
    void brokenModelsAreCaught(@ForAll("nights") Nights.Case each) {
        BROKEN.forEach((what, make) -> {
            List<CueOutcome> commands = new ArrayList<>();
            Course course = Rehearsing.course(each.night(), each.model(), each.backup());
            RehearsalLog log = make.apply(each.night(), commands).log(course);
            boolean caught = !Promises.broken(each, commands, log).isEmpty()
                    || !make.apply(each.night(), new ArrayList<>()).log(course).equals(log);
            CAUGHT.merge(what, caught ? 1 : 0, Integer::sum);
        });
    }

    @AfterContainer
    static void eachBrokenModelWasCaught() {
        assertThat(CAUGHT.keySet()).isEqualTo(BROKEN.keySet());
        assertThat(CAUGHT.values()).allMatch(times -> times > 10, "caught: " + CAUGHT);
    }

    /** The model itself, listened to. */
    private static class Spied extends Performance {
        private final List<CueOutcome> commands;

        Spied(Night night, List<CueOutcome> commands) {
            super(night);
            this.commands = commands;
        }

        @Override
        void commanded(CueOutcome outcome) {
            commands.add(outcome);
        }
    }

    private static final Map<String, BiFunction<Night, List<CueOutcome>, Performance>> BROKEN = broken();

    private static Map<String, BiFunction<Night, List<CueOutcome>, Performance>> broken() {
        Map<String, BiFunction<Night, List<CueOutcome>, Performance>> broken = new LinkedHashMap<>();
        broken.put("fires again after a jump back", (night, commands) -> new Spied(night, commands) {
            @Override
            boolean over(CueOutcome outcome) {
                return false;
            }
        });
        broken.put("fires late what was held back", (night, commands) -> new Spied(night, commands) {
            @Override
            boolean over(CueOutcome outcome) {
                return outcome != null && outcome.end() == End.FIRED;
            }
        });
        broken.put("does not look at the control", (night, commands) -> new Spied(night, commands) {
            @Override
            boolean pressed(HoldToFire hold, long us) {
                return true;
            }
        });
        broken.put("looks at the control a little early", (night, commands) -> new Spied(night, commands) {
            @Override
            boolean pressed(HoldToFire hold, long us) {
                return super.pressed(hold, us - 50_000);
            }
        });
        broken.put("rounds to the step before", (night, commands) -> new Spied(night, commands) {
            @Override
            long momentUs(long dueUs, ControllerModel by) {
                return Math.floorDiv(dueUs, by.stepUs()) * by.stepUs();
            }
        });
        broken.put("forgets the last cue", (night, commands) -> new Spied(night, commands) {
            @Override
            RehearsalLog log(Course course) {
                RehearsalLog log = super.log(course);
                return new RehearsalLog(log.cues().stream().limit(Math.max(0, log.cues().size() - 1)).toList(), log.states(), log.errors());
            }
        });
        AtomicLong unseeded = new AtomicLong();
        broken.put("jitters without its seed", (night, commands) -> new Spied(night, commands) {
            @Override
            long jitterUs(Night.Due due, ControllerModel by) {
                return by.jitterUs() == 0 ? 0 : unseeded.incrementAndGet() % by.jitterUs();
            }
        });
        return broken;
    }
}
