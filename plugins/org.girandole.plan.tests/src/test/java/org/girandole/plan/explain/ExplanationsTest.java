package org.girandole.plan.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.girandole.music.Rational;
import org.girandole.plan.Explanation;
import org.girandole.plan.Plan;
import org.girandole.plan.Show;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ScoreItem.Lean;
import org.girandole.plan.script.TempoEntry;
import org.girandole.plan.script.Wire;
import org.girandole.timecode.FrameRate;
import org.junit.jupiter.api.Test;

/** Explanations that a person can follow: every line here was worked out with a calculator. */
class ExplanationsTest {
    private final Show show = new Show();

    @Test
    void aShellOnABeat() {
        show.lots.add(new Lot("L1", "Peony", 1, Optional.of(new Measured(2_520_000, 100_000)), Show.at(60)));
        show.mark("Swell", Show.bar(9, "1"));
        show.add(show.cue(Show.mark("Swell", Show.beats("2")), "Peony", "C").done());

        assertThat(text()).isEqualTo("""
                Cue 1, Peony at C, Tides in slot 0 (Tides/-/Peony@C/1)
                  bar 1 = 2.000 s (120 bpm, 4/4)  [tempo block]
                  bar 9 = bar 1 + beats * 60 s / bpm = 2.000 s + 32 * 60 s / 120 = 18.000 s  [tempo block]
                  mark Swell = bar 9 = 18.000 s (0:18.000, bar 9)  [test.show:6:1]
                  seen = mark Swell + 2 beats = 18.000 s + 2 * 60 s / 120 = 19.000 s (0:19.000, bar 9 beat 3)  [test.show:6:1]
                  rise = measured on lot L1 = 2.520 s +- 0.100 s  [test.show:60:1]
                  apex = catalogue, Peony = 105.00 m  [test.show:5:1]
                  burst = place of C, moved aside, raised = (0.00 m, 0.00 m, 105.00 m)
                  latency = firing system = 0.005 s  [test.show:4:1]
                  due = seen - rise - latency = 19.000 s - 2.520 s - 0.005 s = 16.475 s
                  fire = due, to the nearest step of 10 ms, half up = 16.480 s (0:16.480; rounding 5 ms)  [test.show:4:1]
                  frame = whole part of (pre-roll + fire) * rate = (60.000 s + 16.480 s) * 25 = 1912  [25 fps]
                  timecode = start + frame = 10:00:00:00 + 1912 frames = 10:01:16:12  [SMPTE ST 12-1]
                  tolerance = rise tolerance + step / 2 = 100 ms + 5 ms = 105 ms  [worst case]
                """);
    }

    @Test
    void aHeardSalute() {
        show.listening = Optional.of(new Point(0, -150));
        show.effects.add(Show.effect("Bang", EffectKind.SALUTE, Optional.of(0.075), Optional.of(new Measured(2_000_000, 0)),
                Optional.of(120.0)));
        show.add(show.cue(Show.clock(10_000_000), "Bang", "C").heard().done());

        // sqrt(150^2 + 120^2) = 192.094; sqrt(1.4 * 287.05287 * 293.15) = 343.234; 192.094 / 343.234 = 0.55966
        assertThat(text())
                .contains("  heard = 0:10.000 = 10.000 s (0:10.000, bar 5)  [test.show:6:1]\n")
                .contains("  d = distance from burst to listening point = sqrt((0 - 0)^2 + (0 - -150)^2 + (120 - 0)^2) = 192.09 m\n")
                .contains("  c = sqrt(1.4 * 287.05287 * (air + 273.15)) = sqrt(1.4 * 287.05287 * 293.15) = 343.234 m/s  [ideal gas, constants of ISO 2533]\n")
                .contains("  sound = d / c = 192.094 / 343.234 = 0.559659 s\n")
                .contains("  due = heard - rise - latency - sound = 10.000 s - 2.000 s - 0.005 s - 0.559659 s = 7.435341 s\n")
                .contains("  fire = due, to the nearest step of 10 ms, half up = 7.440 s (0:07.440; rounding 4.659 ms)");
    }

    @Test
    void aChainItem() {
        show.chains.add(new Chain("Run", "Peony run", "Peony", 3, new Measured(250_000, 20_000), 100_000, Show.at(62)));
        show.add(show.cue(Show.clock(10_000_000), "Run", "C").done());

        assertThat(text())
                .contains("  lead = chain Run, firing to first item = 0.100 s  [test.show:62:1]\n")
                .contains("  due = seen - rise - lead - latency = 10.000 s - 2.400 s - 0.100 s - 0.005 s = 7.495 s\n")
                .contains("  item 3 lit = fire + latency + lead + 2 gaps = 7.500 s + 0.005 s + 0.100 s + 2 * 0.250 s = 8.105 s\n")
                .contains("  item 3 seen = lit + rise = 8.105 s + 2.400 s = 10.505 s +- 190 ms (worst case; root-sum-square 152.643 ms)"
                        + "  [150 ms + 2 * 20 ms]\n")
                .contains("  tolerance = rise tolerance + step / 2 + links * gap tolerance = 150 ms + 5 ms + 40 ms = 195 ms  [worst case]\n");
    }

    @Test
    void tempoChangesAndRampsAreSteps() {
        show.tempo.add(tempo(3, 90, Optional.empty()));
        show.tempo.add(tempo(5, 120, Optional.of(TempoEntry.Ramp.PER_BEAT)));
        show.tempo.add(tempo(7, 60, Optional.of(TempoEntry.Ramp.PER_SECOND)));
        show.add(show.cue(Show.bar(6, "3"), "Peony", "C").done());

        // ln(120 / 90) * 60 * 8 / 30 = 4.602913; from 120 to 60 bpm over 8 beats, after 6 of them sqrt(120^2 - 10800 * 6 / 8) = 79.3725;
        // 120 * 6 / (120 + 79.3725) = 3.611330
        assertThat(text())
                .contains("  bar 3 = bar 1 + beats * 60 s / bpm = 2.000 s + 8 * 60 s / 120 = 6.000 s  [tempo block]\n")
                .contains("  bar 5 = bar 3 + 60 s * beats / (bpm1 - bpm0) * ln(bpm1 / bpm0) = 6.000 s + 60 s * 8 / (120 - 90) * ln(120 / 90)"
                        + " = 10.602913 s")
                .contains("  bpm there = sqrt(bpm0^2 + (bpm1^2 - bpm0^2) * beats / all beats) = sqrt(120^2 + (60^2 - 120^2) * 6 / 8)"
                        + " = 79.3725 bpm")
                .contains("  bar 6 beat 3 = bar 5 + 120 s * beats / (bpm0 + bpm there) = 10.602913 s + 120 s * 6 / (120 + bpm there)"
                        + " = 14.214243 s");
    }

    @Test
    void roundsFiguresAndDistributionsAreSteps() {
        ScoreItem.Cue inside = show.cue(Show.origin(Show.beats("1")), "Peony", "A", "B", "C").spread(ScoreItem.Order.OUTWARD, Show.beats("1/2"))
                .done();
        ScoreItem.Play figure = new ScoreItem.Play("Echo", Show.origin(Show.us(250_000)), List.of(inside), Show.at(21));
        show.add(new ScoreItem.Repeat(2, Show.every(Show.bars("1")), Show.bar(5, "1"), List.of(figure), Show.at(23)));
        Plan plan = show.plan();

        String text = Explanations.of(plan, plan.cues().stream().filter(cue -> cue.key().equals("Tides/-/Peony@C/1r2")).findFirst()
                .orElseThrow()).text();

        assertThat(text)
                .contains("  repeat = bar 5 = 10.000 s (0:10.000, bar 5)")
                .contains("  round 2 = repeat + 1 * every = 10.000 s + 1 * (1 bar) = 12.000 s (0:12.000, bar 6)  [test.show:23:1]\n")
                .contains("  figure Echo = round 2 + 0.250 s = 12.000 s + 0.250 s = 12.250 s (0:12.250, bar 6 beat 1.5)")
                .contains("  cue line = figure Echo + 1 beat = 12.250 s + 1 * 60 s / 120 = 12.750 s (0:12.750, bar 6 beat 2.5)")
                .contains("  seen = cue line + 1 * distance = 12.750 s + 1 * (0.5 beats) = 13.000 s (0:13.000, bar 6 beat 3)"
                        + "  [C is place 3 of 3, outward]\n");
    }

    @Test
    void aCircuit() {
        // 50 m of 24 AWG: 8.4213 ohm there and back by ASTM B258 and IEC 60028; with one igniter of 1.6 ohm 10.021 ohm, 24 V: 2.395 A
        show.system = Optional.of(Show.system("W", 2, 0.6, FiringSystem.Join.SERIES));
        show.wires.add(new Wire("W", Optional.of(24), Optional.empty(), 1, Show.at(30)));
        show.igniters.add(new Igniter("Standard", Optional.of(1.6), Optional.of(0.2), Optional.of(0.5), Optional.of(0.2), Show.at(31)));
        show.module("M1", 8, "B", "C").add(show.cue(Show.clock(10_000_000), "Peony", "C").done());

        // 30 m * 1.6 + 2 m = 50 m
        assertThat(text()).contains("  lead wire = straight line * (1 + slack) + slack = 30 * 1.6 + 2 = 50.00 m")
                .contains("R_lead = 2 L r20 k / 1000 = 2 * 50 * 84.2132 * 1 / 1000 = 8.42132 ohm")
                .contains("I = E / R_loop = 24 / 10.0213 = 2.39489 A")
                .contains("  meter = R_lead + R_igniters, with the tolerances of both = 10.02 ohm (9.40 to 10.64 ohm)");
    }

    @Test
    void aTiltedShellAndDropFrame() {
        show.rate = Optional.of(FrameRate.FPS_29_97_DROP);
        show.add(show.cue(Show.clock(10_000_000), "Peony", "C").tilt(-10, Lean.SIDE).done());

        // 105 / 2.4 + 9.80665 * 1.2 = 55.518; * sin 10 deg * 2.4 = 23.137; * cos 10 deg * 2.4 - 28.243 = 102.976
        assertThat(text()).contains("  v0 = apex / rise + g rise / 2 = 105 / 2.4 + 9.80665 * 2.4 / 2 = 55.518 m/s")
                .contains("= 23.14 m  [towards 270 deg]").contains("= 102.98 m")
                .contains("  frame = whole part of (pre-roll + fire) * rate = (60.000 s + 7.600 s) * 30000 / 1001 = 2025  [29.97 drop fps]\n")
                // 2025 frames after 10:00:00;00: one minute has 1800 labels, less the two left out at its end: 10:01:07;17
                .contains("10:01:07;17");
    }

    @Test
    void cuesAreFoundByKeyNumberNameOrWhatIsFired() {
        show.add(show.cue(Show.clock(10_000_000), "Peony", "A", "B").named("Hero").done(), show.cue(Show.clock(5_000_000), "Peony", "C").done());
        Plan plan = show.plan();

        assertThat(Explanations.find(plan, "Hero@B")).extracting(c -> c.position()).containsExactly("B");
        assertThat(Explanations.find(plan, "1")).extracting(c -> c.position()).containsExactly("C");
        assertThat(Explanations.find(plan, "Hero")).hasSize(2);
        assertThat(Explanations.find(plan, "Peony")).hasSize(3);
        assertThat(Explanations.find(plan, "Nothing")).isEmpty();
    }

    private String text() {
        Plan plan = show.plan();
        assertThat(plan.cues()).hasSize(1);
        Explanation explanation = Explanations.of(plan, plan.cues().get(0));
        return explanation.text();
    }

    private static TempoEntry tempo(int bar, int bpm, Optional<TempoEntry.Ramp> ramp) {
        return new TempoEntry(Optional.empty(), Optional.of(bar), Rational.of(bpm), Optional.empty(), ramp, Show.at(1));
    }
}
