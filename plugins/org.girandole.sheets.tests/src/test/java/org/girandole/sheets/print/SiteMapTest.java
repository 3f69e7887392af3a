package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.girandole.sheets.print.HandMadeShow.HERE;
import static org.girandole.sheets.print.HandMadeShow.bareEffect;
import static org.girandole.sheets.print.HandMadeShow.effect;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.rules.distance.SiteInWind;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.girandole.sheets.print.values.SiteMap;
import org.junit.jupiter.api.Test;

/** Distances on the site plan. The audience line of the hand-made show lies 150 m in front of all positions. */
class SiteMapTest {
	private final HandMadeShow show = new HandMadeShow();
	private final PlannedSoundtrack tides = show.soundtrack("Tides", "Tides", 0, Optional.of(show.line()));

	private SiteMap map() {
		return SiteMap.of(show.checked()).orElseThrow();
	}

	/** 70 ft for each inch of calibre (Oregon OAR 837-012-0840): 75 / 25.4 x 70 x 0.3048 = 63.0 m; for 100 mm 84.0 m. */
	@Test
	void theCueThatAsksMostCounts() {
		show.cue(tides, 1_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();
		show.cue(tides, 2_000_000, "B", show.add(effect("Large", "Large shell", EffectKind.SHELL, 0.1, 0.1, "1.3G", "UN0335"))).add();

		assertThat(map().distances()).extracting(SiteMap.Distance::position, SiteMap.Distance::place, SiteMap.Distance::found,
				SiteMap.Distance::asked, SiteMap.Distance::holds, SiteMap.Distance::cue)
				.containsExactly(tuple("B", "Promenade", "150.0 m", "84.0 m", true, "2, Large shell"));
		assertThat(map().spots().get(1).askedM().getAsDouble()).isCloseTo(84.0, within(0.01));
		assertThat(map().spots().get(1).charge()).isEqualTo("0.160 kg");
		assertThat(map().spots().get(0).askedM()).isEmpty();
		assertThat(map().looked()).isTrue();
	}

	/** Twice the table's distance: 126 m are asked where 100 m - 20 m = 80 m are there. */
	@Test
	void aProtectedPlaceAsksItsMultiple() {
		Site site = show.site.orElseThrow();
		show.site = Optional.of(new Site(site.name(), site.label(), site.positions(), site.groups(), site.audience(), site.boundary(),
				List.of(new Site.Protected("Dock", List.of(new Point(0, 100)), Optional.of(20.0), 2, HERE)), site.wind(), site.airC(),
				site.elevationM(), site.listening(), HERE));
		show.cue(tides, 1_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();

		assertThat(map().distances()).extracting(SiteMap.Distance::place, SiteMap.Distance::found, SiteMap.Distance::asked,
				SiteMap.Distance::holds).containsExactly(tuple("Promenade", "150.0 m", "63.0 m", true), tuple("Dock", "80.0 m", "126.0 m", false));
	}

	@Test
	void whatTheTableHasNoNumberForAsksMoreThanAnyNumberAndIsNotMet() {
		show.cue(tides, 1_000_000, "B", show.add(bareEffect("Odd", "Odd", EffectKind.SHELL))).add();
		show.cue(tides, 2_000_000, "B", show.add(effect("Large", "Large shell", EffectKind.SHELL, 0.3, 0.1, "1.3G", "UN0335"))).add();

		SiteMap.Distance line = map().distances().get(0);
		assertThat(line.asked()).startsWith("ASSESSMENT: ");
		assertThat(line.holds()).isFalse();
		assertThat(line.cue()).isEqualTo("1, Odd");
	}

	@Test
	void falloutIsDrawnForShellsAndSaidToBeUnknownWhereItIs() {
		show.cue(tides, 1_000_000, "A", show.add(effect("Star", "Star mine", EffectKind.MINE, 0.075, 0.06, "1.3G", "UN0335"))).add();
		show.cue(tides, 2_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();
		show.cue(tides, 3_000_000, "C", show.add(bareEffect("Odd", "Odd shell", EffectKind.SHELL))).add();

		assertThat(map().spots()).extracting(SiteMap.Spot::unburst).satisfiesExactly(none -> assertThat(none).isEqualTo("none"),
				metres -> assertThat(metres).endsWith(" m"), unknown -> assertThat(unknown).isEqualTo("not known"));
		// One outline for shells that do not burst, one for debris.
		assertThat(map().fallout()).extracting(SiteMap.Fallout::words).containsExactly("99 %", "90 %", "50 %");
		assertThat(map().fallout()).allSatisfy(share -> assertThat(share.outlines()).hasSize(2).allMatch(outline -> outline.size() >= 3));
		assertThat(map().falloutUnknown()).singleElement().asString().startsWith("cue 3, Odd shell: ");
	}

	/** In calm air a shell fired straight up comes down around its tube: every outline lies around the position. */
	@Test
	void falloutLiesAroundAnUprightTubeInCalmAir() {
		show.cue(tides, 2_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();

		for (List<Point> outline : map().fallout().get(0).outlines()) {
			assertThat(outline).anyMatch(point -> point.xM() < 0).anyMatch(point -> point.xM() > 0).anyMatch(point -> point.yM() < 0)
					.anyMatch(point -> point.yM() > 0);
		}
	}

	/** The audience line lies 150 m in front of B: whoever measures finds the same on the paper. */
	@Test
	void distancesAreDrawnFromWhereItIsFiredToTheNearestPoint() {
		show.cue(tides, 1_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();

		SiteMap.Measure measure = map().measures().get(0);
		assertThat(measure.words()).isEqualTo("150.0 m");
		assertThat(Math.hypot(measure.toX() - measure.fromX(), measure.toY() - measure.fromY())).isCloseTo(150, within(1e-6));
		assertThat(map().spots().get(1).calibre()).isEqualTo("75 mm");
	}

	@Test
	void otherWindThanThatOfTheScriptIsSaid() {
		show.cue(tides, 1_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();

		assertThat(SiteDrawing.sheet(show.checked(), PaperSize.A4, "1", true).orElseThrow()).contains("This is another wind than that of the script.");
		assertThat(SiteDrawing.sheet(show.checked(), PaperSize.A4, "1", false).orElseThrow()).doesNotContain("another wind than that");
	}

	/** From a position outside of the boundary nothing is computed, and the sheet says so before it shows anything. */
	@Test
	void whatMakesNoSenseIsUncheckedOnTheSheet() {
		Site site = show.site.orElseThrow();
		show.site = Optional.of(new Site(site.name(), site.label(), site.positions(), site.groups(), site.audience(),
				Optional.of(new Site.Area("boundary", List.of(new Point(-10, 20), new Point(10, 20), new Point(10, 400), new Point(-10, 400)), HERE)),
				site.protectedPlaces(), Optional.of(new Site.Wind(240, 4, Optional.empty(), HERE)), site.airC(), site.elevationM(), site.listening(), HERE));
		show.cue(tides, 2_000_000, "B", show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"))).add();

		CheckedPlan checked = Checker.check(show.checked().plan());
		SiteMap map = SiteMap.of(checked).orElseThrow();
		assertThat(map.distances()).isEmpty();
		assertThat(map.measures()).isEmpty();
		assertThat(map.spots().get(1).askedM()).isEmpty();
		assertThat(map.spots().get(1).unburst()).isEqualTo("not known");
		assertThat(map.fallout()).allSatisfy(share -> assertThat(share.outlines()).isEmpty());
		assertThat(map.bears().orElseThrow().rows()).singleElement().satisfies(row -> {
			assertThat(row.upTo()).isEqualTo("not known");
			assertThat(row.states()).containsOnly(SiteInWind.State.UNCHECKED);
		});
		assertThat(map.unchecked()).anySatisfy(what -> assertThat(what).startsWith("No distance from B was computed: position B lies 20 m outside"));
		assertThat(SiteDrawing.sheet(checked, PaperSize.A4, "1", false).orElseThrow()).contains("Not checked, and therefore not known to be clean:");
	}

	@Test
	void withoutATableItIsSaidThatNothingWasLookedAt() {
		show.separation = Optional.of("NoSuchTable");
		assertThat(map().looked()).isFalse();
		assertThat(map().table()).isEqualTo("there is no distance table NoSuchTable");
		show.separation = Optional.empty();
		assertThat(map().table()).isEqualTo("the show names no distance table");
	}

	/** 60 m between A and C and 150 m to the audience: 150 m need 150 000 / 132 mm = 1 : 1136, the next round scale is 1 : 1250. */
	@Test
	void theScaleIsRoundAndPrintedWithItsBar() {
		Sheet sheet = SheetSet.of(show.checked(), PaperSize.A4, "1").stream().filter(each -> each.id().equals("8")).findFirst().orElseThrow();
		assertThat(sheet.html()).contains("1 : 1250", "the bar is 20 m long", "audience: Promenade");
		// 20 m at 1 : 1250 are 16 mm, drawn as two halves of 8 mm.
		assertThat(sheet.html()).contains("width=\"8\" height=\"1.6\"");
	}
}
