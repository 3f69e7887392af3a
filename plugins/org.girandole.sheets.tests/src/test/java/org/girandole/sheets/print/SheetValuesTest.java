package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.girandole.sheets.print.HandMadeShow.effect;
import static org.girandole.sheets.print.HandMadeShow.tubes;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.FiringSystem;
import org.girandole.sheets.print.values.FiringRows;
import org.girandole.sheets.print.values.PositionLoad;
import org.girandole.sheets.print.values.PositionLoad.Unplaced;
import org.girandole.sheets.print.values.RunningRows;
import org.girandole.sheets.print.values.RunningRows.Hold;
import org.girandole.sheets.print.values.RunningRows.Milestone;
import org.girandole.sheets.print.values.RunningRows.Moment;
import org.girandole.sheets.print.values.RunningRows.Row;
import org.girandole.sheets.print.values.Standing;
import org.girandole.sheets.print.values.Standing.Verdict;
import org.girandole.sheets.print.values.SharedPin;
import org.girandole.sheets.print.values.WiringRows;
import org.junit.jupiter.api.Test;

/** What stands on the sheets of small shows, counted by hand. */
class SheetValuesTest {
	private final HandMadeShow show = new HandMadeShow();
	private final Effect peony = show.add(effect("Peony", "Red peony", EffectKind.SHELL, 0.075, 0.062, "1.3G", "UN0335"));
	private final Effect cake = show.add(effect("Fan", "Silver fan", EffectKind.CAKE, 0.03, 0.4, "1.3G", "UN0335"));

	private PlannedSoundtrack tides(PlannedSoundtrack.Hold... holds) {
		return show.soundtrack("Tides", "Tides", 0, Optional.of(show.line()), holds);
	}

	@Test
	void aChainFillsNeighbouringTubesAndHasOneIgniter() {
		show.rack("R1", "A", 0.14, tubes(5, 0.075));
		show.cue(tides(), 1_000_000, "A", peony).tube("R1", 2).pin("M1", 7, 4.1).chain("Run", 3).add();

		PositionLoad load = PositionLoad.of(show.checked(), "A");

		assertThat(load.loadedTubes()).isEqualTo(3);
		assertThat(load.unplaced()).isEmpty();
		assertThat(load.racks().get(0).tubes()).extracting(tube -> tube.loads().size()).containsExactly(0, 1, 1, 1, 0);
		assertThat(load.racks().get(0).tubes().subList(1, 4)).flatExtracting(PositionLoad.TubeLoad::loads)
				.extracting("chainPart", "igniterHere", "pin")
				.containsExactly(tuple("1 of 3", true, "M1 · 7"),
						tuple("2 of 3", false, "fused"), tuple("3 of 3", false, "fused"));
	}

	@Test
	void whatCannotBeLoadedIsSaidWithItsReason() {
		PlannedSoundtrack tides = tides();
		show.rack("R1", "A", 0.14, tubes(3, 0.075));
		show.rack("R2", "B", 0.14, tubes(3, 0.075));
		show.cue(tides, 1_000_000, "A", peony).add();
		show.cue(tides, 2_000_000, "A", peony).tube("R9", 1).add();
		show.cue(tides, 3_000_000, "A", peony).tube("R2", 1).add();
		show.cue(tides, 4_000_000, "A", peony).tube("R1", 2).chain("Run", 3).add();
		show.cue(tides, 5_000_000, "A", cake).add();

		PositionLoad load = PositionLoad.of(show.checked(), "A");

		assertThat(load.unplaced()).extracting(Unplaced::cue, Unplaced::why).containsExactly(
				tuple(1, "no tube assigned"),
				tuple(2, "its rack R9 is not described"),
				tuple(3, "its rack R2 stands at position B"),
				tuple(4, "it needs tube 4 of rack R1, which has 3"));
		assertThat(load.ground()).extracting(PositionLoad.GroundPiece::cue).containsExactly(5);
		assertThat(load.ground().get(0).pin()).isEqualTo("NO PIN");
	}

	@Test
	void twoCuesInOneTubeAreBothShown() {
		PlannedSoundtrack tides = tides();
		show.rack("R1", "A", 0.14, tubes(1, 0.075));
		show.cue(tides, 1_000_000, "A", peony).tube("R1", 1).add();
		show.cue(tides, 2_000_000, "A", peony).tube("R1", 1).add();

		assertThat(PositionLoad.of(show.checked(), "A").racks().get(0).tubes().get(0).loads()).extracting("cue").containsExactly(1, 2);
	}

	@Test
	void wiringListsEveryPinAndAPinThatDoesNotExist() {
		PlannedSoundtrack tides = tides();
		show.module("M1", "7", "A");
		show.cue(tides, 1_000_000, "A", cake).pin("M1", 3, 4.1).add();
		show.cue(tides, 1_000_000, "A", cake).pin("M1", 3, 4.1).add();
		show.cue(tides, 2_000_000, "A", cake).pin("M1", 17, 4.0).add();

		WiringRows wiring = WiringRows.of(show.checked(), show.modules.get(0));

		assertThat(wiring.pins()).hasSize(17);
		assertThat(wiring.used()).extracting(WiringRows.PinRow::pin, WiringRows.PinRow::beyond)
				.containsExactly(tuple(3, false), tuple(17, true));
		assertThat(wiring.used().get(0).cues()).hasSize(2);
		assertThat(wiring.used().get(0).ohm()).isEqualTo("4.10");
		assertThat(wiring.used().get(0).band()).isEqualTo("3.85 – 4.35");
		assertThat(wiring.testCurrent()).isEqualTo("5 mA");
		assertThat(wiring.shared()).singleElement().satisfies(shared -> {
			assertThat(shared.pin()).isEqualTo(3);
			assertThat(shared.join()).contains(FiringSystem.Join.SERIES);
			assertThat(shared.words()).startsWith("2 igniters in SERIES");
			assertThat(shared.igniters()).extracting(WiringRows.OnPin::cue).containsExactly(1, 2);
		});
	}

	@Test
	void cuesThatFireApartAreNotDrawnAsJoined() {
		PlannedSoundtrack tides = tides();
		show.module("M1", "7", "A");
		show.cue(tides, 1_000_000, "A", cake).pin("M1", 3, 4.1).add();
		show.cue(tides, 2_000_000, "A", cake).pin("M1", 3, 4.1).add();

		SharedPin shared = WiringRows.of(show.checked(), show.modules.get(0)).shared().get(0);

		assertThat(shared.join()).isEmpty();
		assertThat(shared.words()).startsWith("NOT JOINED");
	}

	@Test
	void theRunningSheetDrawsTogetherWhatFiresTogetherAndCountsToTheNext() {
		PlannedSoundtrack tides = tides(new PlannedSoundtrack.Hold(10_000_000, 16_000_000, "ferry", HandMadeShow.HERE));
		show.cue(tides, 5_000_000, "A", peony).pin("M1", 2, 4).add();
		show.cue(tides, 5_000_000, "B", peony).add();
		show.cue(tides, 5_000_000, "C", cake).pin("M1", 3, 4).named("Fan", "watch the wind").add();
		show.cue(tides, 7_500_000, "A", peony).add();
		show.cue(tides, 12_000_000, "A", peony).pin("M1", 1, 4).add();
		show.cue(tides, 30_000_000, "A", peony).add();

		RunningRows running = RunningRows.of(show.checked().plan(), tides);

		List<Moment> moments = running.rows().stream().filter(Moment.class::isInstance).map(Moment.class::cast).toList();
		assertThat(moments).extracting(Moment::cues).containsExactly("1–3", "4", "5", "6");
		assertThat(moments).extracting(Moment::next).containsExactly("2.5 s", "4.5 s", "18.0 s", "LAST");
		assertThat(moments).extracting(Moment::longWait).containsExactly(false, false, true, false);
		assertThat(moments).extracting(Moment::inHold).containsExactly(false, false, true, false);
		// 5 s at 25 frames a second after a minute of pre-roll from 10:00:00:00, and 7.5 s = 7 s and 12.5 frames, of which 12 are whole.
		assertThat(moments).extracting(Moment::timecode).startsWith("10:01:05:00", "10:01:07:12");
		assertThat(moments.get(0).what()).extracting(RunningRows.What::count, RunningRows.What::positions, RunningRows.What::note)
				.containsExactly(tuple(2, "A, B", "1 with NO PIN: will not fire"), tuple(1, "C", "Fan; watch the wind"));
		assertThat(running.rows()).extracting(Row::atUs).isSorted();
		assertThat(running.rows().get(0)).isInstanceOfSatisfying(Milestone.class,
				start -> assertThat(start.timecode()).isEqualTo("10:00:00:00"));
		assertThat(running.rows()).filteredOn(Hold.class::isInstance).hasSize(1);
	}

	@Test
	void anEstimatedRiseIsMarkedInTheFiringTable() {
		show.cue(tides(), 1_000_000, "A", peony).estimated().add();

		assertThat(FiringRows.of(show.checked().plan()).slots().get(0).rows().get(0).seen()).startsWith("≈ ");
	}

	@Test
	void aShowWithMissingDataIsNeverReportedWithoutErrors() {
		show.cue(tides(), 1_000_000, "A", peony).pin("M1", 1, 4).add();
		assertThat(Standing.of(show.checked()).verdict()).isEqualTo(Verdict.DATA_MISSING);
		assertThat(Standing.of(show.checked()).gaps()).extracting("what").containsExactly("no tube assigned");
	}

	@Test
	void onlyAShowThatLacksNothingHasNoGap() {
		show.cue(tides(), 1_000_000, "A", peony).pin("M1", 1, 4).tube("R1", 1).add();
		assertThat(Standing.of(show.checked()).verdict()).isEqualTo(Verdict.NO_ERRORS_FOUND);
		show.site = Optional.empty();
		assertThat(Standing.of(show.checked()).verdict()).isEqualTo(Verdict.DATA_MISSING);
	}

	@Test
	void anEmptyShowIsNotClean() {
		CheckedPlan empty = show.checked();
		assertThat(Standing.of(empty).gaps()).extracting("what").contains("no cues");
		assertThat(Standing.of(HandMadeShow.full().checked()).verdict()).isEqualTo(Verdict.ERRORS);
	}
}
