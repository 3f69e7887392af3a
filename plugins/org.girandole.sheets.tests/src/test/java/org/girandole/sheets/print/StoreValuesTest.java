package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.girandole.sheets.print.HandMadeShow.HERE;
import static org.girandole.sheets.print.HandMadeShow.bareEffect;
import static org.girandole.sheets.print.HandMadeShow.effect;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Lot;
import org.girandole.sheets.print.values.AdrPoints;
import org.girandole.sheets.print.values.AfterShow;
import org.girandole.sheets.print.values.Checklists;
import org.girandole.sheets.print.values.CuttingList;
import org.girandole.sheets.print.values.PullList;
import org.girandole.sheets.print.values.SoundDesk;
import org.girandole.sheets.print.values.Transport;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What leaves the store, what is carried, what the desk plays, what is filled in afterwards: counted by hand. */
class StoreValuesTest {
	private final HandMadeShow show = new HandMadeShow();
	private final PlannedSoundtrack tides = show.soundtrack("Tides", "Tides", 0, Optional.of(show.line()));

	@Test
	void thePullListComparesWithStockAndSaysWhatNobodyKnows() {
		Effect peony = show.add(effect("Peony", "Red peony", EffectKind.SHELL, 0.075, 0.062, "1.3G", "UN0335"));
		Effect cake = show.add(effect("Fan", "Silver fan", EffectKind.CAKE, 0.03, 0.4, "1.3G", "UN0335"));
		show.lots.add(new Lot("L1", "Peony", 3, Optional.empty(), HERE));
		show.lots.add(new Lot("L2", "Peony", 4, Optional.empty(), HERE));
		show.cue(tides, 1_000_000, "A", peony).chain("Run", 8).lot("L1").pin("M1", 1, 4).add();
		show.cue(tides, 2_000_000, "B", peony).lot("L2").pin("M1", 2, 4).add();
		show.cue(tides, 3_000_000, "B", cake).pin("M1", 3, 4).add();

		PullList list = PullList.of(show.checked().plan(), List.of("A", "B"));

		PullList.Line shells = list.kinds().get(0).lines().get(0);
		assertThat(shells.needed()).isEqualTo(9);
		assertThat(shells.inStock()).isEqualTo("7");
		assertThat(shells.missing()).isEqualTo(2);
		assertThat(shells.lots()).extracting(PullList.LotLine::lot, PullList.LotLine::take, PullList.LotLine::has, PullList.LotLine::shortOf)
				.containsExactly(tuple("L1", 8L, 3L, true), tuple("L2", 1L, 4L, false));
		PullList.Line cakes = list.kinds().get(1).lines().get(0);
		assertThat(cakes.inStock()).isEqualTo("not stated");
		assertThat(list.shortLines()).isEqualTo(1);
		assertThat(list.unknownLines()).isEqualTo(1);
		assertThat(list.igniters()).extracting(PullList.IgniterLine::type, PullList.IgniterLine::needed, PullList.IgniterLine::where)
				.containsExactly(tuple("Standard", 3, "A: 1, B: 2"));
		assertThat(list.crates()).extracting(PullList.Crate::position, PullList.Crate::pieces).containsExactly(tuple("A", 8L), tuple("B", 2L));
	}

	@Test
	void leadsAreCutToWholeMetresAndWhatIsNotKnownIsSaid() {
		Effect peony = show.add(effect("Peony", "Red peony", EffectKind.SHELL, 0.075, 0.062, "1.3G", "UN0335"));
		show.cue(tides, 1_000_000, "A", peony).pin("M1", 1, 4).add();
		show.cue(tides, 2_000_000, "B", peony).pin("M1", 2, 4).add();
		show.cue(tides, 3_000_000, "B", peony).pin("M1", 3, 4).add();
		show.cue(tides, 4_000_000, "B", peony).pin("M2", 7, 4).add();

		CuttingList whole = PullList.of(show.checked().plan(), List.of("A", "B")).leads();

		// Every lead of the hand-made circuits is 12.5 m long: 13 m from the reel.
		assertThat(whole.lines()).containsExactly(new CuttingList.Line("A", "13 m", 1, "M1 · 1", "13 m"),
				new CuttingList.Line("B", "13 m", 3, "M1 · 2, 3; M2 · 7", "39 m"));
		assertThat(whole.sums()).containsExactly(new CuttingList.Sum("A", 1, "13 m"), new CuttingList.Sum("B", 3, "39 m"));
		assertThat(whole.total()).isEqualTo("4 leads, 52 m of wire");
		assertThat(whole.missing()).isEmpty();
		assertThat(whole.wire()).isEqualTo("not stated");

		show.cue(tides, 5_000_000, "B", peony).add();

		CuttingList partial = PullList.of(show.checked().plan(), List.of("A", "B")).leads();
		assertThat(partial.total()).isEqualTo("at least 4 leads, 52 m of wire");
		assertThat(partial.missing()).isEqualTo("1 igniter has no pin, and so no lead.");
	}

	/** ADR table 1.1.3.6.3: classes and the transport category that each belongs to. */
	@ParameterizedTest
	@CsvSource({ "1.1G, 50", "1.2G, 50", "1.3G, 50", "1.3C, 50", "1.4G, 3", "1.4B, 3", "1.4S, 0" })
	void factorsAreThoseOfTheAgreement(String hazardClass, int factor) {
		assertThat(AdrPoints.factor(hazardClass)).contains(factor);
	}

	@Test
	void whatTheTableForbidsOrDoesNotNameHasNoFactor() {
		assertThat(AdrPoints.factor("1.3L")).isEmpty();
		assertThat(AdrPoints.factor("9")).isEmpty();
	}

	/** Sums by the factors of ADR 1.1.3.6.4: 12 x 50 + 100 x 3 = 900; 15 x 50 + 100 x 3 = 1050; 20 x 50 = 1000; 20.1 x 50 = 1005. */
	@ParameterizedTest
	@CsvSource({ "12, 100, 900, true", "15, 100, 1050, false", "20, 0, 1000, true", "20.1, 0, 1005, false" })
	void pointsAreSummedOverTheClasses(double kg13, double kg14, String points, boolean within) {
		show.cue(tides, 1_000_000, "A", show.add(effect("One", "One", EffectKind.CAKE, 0.03, kg13, "1.3G", "UN0335"))).add();
		if (kg14 > 0) {
			show.cue(tides, 2_000_000, "A", show.add(effect("Two", "Two", EffectKind.CAKE, 0.03, kg14, "1.4G", "UN0336"))).add();
		}

		Transport transport = Transport.of(show.checked().plan());

		assertThat(transport.points()).isEqualTo(new Transport.Points(points + " of 1000 points", true, within));
	}

	@Test
	void anUnstatedChargeIsNeverCountedAsNought() {
		show.cue(tides, 1_000_000, "A", show.add(effect("One", "One", EffectKind.SHELL, 0.075, 0.5, "1.3G", "UN0335"))).add();
		show.cue(tides, 2_000_000, "A", show.add(bareEffect("Odd", "Odd", EffectKind.SHELL))).add();

		Transport transport = Transport.of(show.checked().plan());

		assertThat(transport.total()).isEqualTo(new Transport.Total(2, "at least 0.500 kg", 1));
		assertThat(transport.classes()).extracting(Transport.ClassLine::hazardClass, Transport.ClassLine::charge, Transport.ClassLine::points)
				.containsExactly(tuple("1.3G", "0.500 kg", "25"), tuple("not stated", "not stated", "not known"));
		assertThat(transport.points().complete()).isFalse();
		assertThat(transport.points().within()).isFalse();
		assertThat(transport.points().words()).startsWith("at least 25 of 1000 points; it cannot be given");
	}

	@Test
	void theDeskIsToldRateLabelsAndTones() {
		PlannedSoundtrack drop = show.soundtrack("Encore", "Encore", 1, Optional.of(new TimecodeLine(FrameRate.FPS_29_97_DROP,
				Timecode.parse("01:00:00;00", FrameRate.FPS_29_97_DROP), 60_000_000L)));
		show.soundtrack("Mute", "Mute", 2, Optional.empty());
		show.cue(tides, 5_000_000, "A", show.add(effect("One", "One", EffectKind.CAKE, 0.03, 0.5, "1.3G", "UN0335"))).add();

		List<SoundDesk.Track> tracks = SoundDesk.of(show.checked().plan()).tracks();

		// SMPTE ST 12-1: 80 bits a frame; a one has two edges a bit, a zero one, so that ones sound at the bit rate and zeros at half of it.
		assertThat(tracks.get(0)).extracting("rate", "counting", "firstNote", "firstFire", "lowHz", "highHz").containsExactly("25 frames a second",
				"non-drop labels (colon)", "10:01:00:00", "10:01:05:00 (cue 1)", "1000 Hz", "2000 Hz");
		// 60 s at 30000/1001 are 1798.2 frames; 1798 whole ones, and 00:59;28 is frame 1798 since nothing was dropped in minute 0.
		assertThat(tracks.get(1)).extracting("name", "counting", "firstNote", "firstFire", "highHz").containsExactly(drop.script().label(),
				"DROP-FRAME labels (semicolon)", "01:00:59;28", "none", "2398 Hz");
		assertThat(tracks.get(2)).extracting("rate", "start", "firstNote").containsOnly("not stated");
	}

	@Test
	void theFormAfterTheShowFollowsTheRacks() {
		Effect peony = show.add(effect("Peony", "Red peony", EffectKind.SHELL, 0.075, 0.062, "1.3G", "UN0335"));
		Effect cake = show.add(effect("Fan", "Silver fan", EffectKind.CAKE, 0.03, 0.4, "1.3G", "UN0335"));
		show.cue(tides, 1_000_000, "A", cake).add();
		show.cue(tides, 2_000_000, "A", peony).tube("R1", 2).add();
		show.cue(tides, 3_000_000, "A", peony).tube("R1", 1).add();

		AfterShow form = AfterShow.of(show.checked().plan(), List.of("A", "B"));

		assertThat(form.positions()).hasSize(1);
		assertThat(form.positions().get(0).lines()).extracting(AfterShow.Line::cue).containsExactly(3, 2, 1);
	}

	@Test
	void theListsNameSlotsCountsAndStamp() {
		show.cue(tides, 5_000_000, "A", show.add(effect("One", "One", EffectKind.CAKE, 0.03, 0.5, "1.3G", "UN0335"))).add();

		assertThat(Checklists.of(show.checked().plan(), "AAAA-BBBB").phases()).flatExtracting(Checklists.Phase::steps)
				.contains("Slot 0 holds “Tides”: 1 cue, the last one is cue 1 at 10:01:05:00, timecode starts at 10:00:00:00.",
						"Every sheet in the folder says release AAAA-BBBB. Older sheets are destroyed.");
	}
}
