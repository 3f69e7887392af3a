package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.girandole.sheets.print.HandMadeShow.HERE;
import static org.girandole.sheets.print.HandMadeShow.effect;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.Site;
import org.junit.jupiter.api.Test;

/** The drawing of the site, read back from its lines and words: an invented meadow with more on it than there is room for. */
class SitePictureTest {
	private static final int POSITIONS = 10;
	private static final Pattern LINE = Pattern.compile("<path d=\"M([-0-9.]+) ([-0-9.]+)L([-0-9.]+) ([-0-9.]+)\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0\\.2\"/>");
	private static final Pattern SPOT = Pattern.compile("<circle cx=\"([-0-9.]+)\" cy=\"([-0-9.]+)\" r=\"1\\.1\"");
	private static final Pattern TEXT = Pattern.compile("<text x=\"([-0-9.]+)\" y=\"([-0-9.]+)\"[^>]* font-size=\"([-0-9.]+)\">([^<]*)</text>");
	private static final Pattern SCALE = Pattern.compile("scale 1 : (\\d+) ");
	/** Mean width of a character in ems, in the narrow fonts of the sheets. */
	private static final double EM = 0.5;

	private record Text(String words, Rectangle2D box) {
	}

	private static String drawing() {
		HandMadeShow show = new HandMadeShow();
		PlannedSoundtrack tides = show.soundtrack("Tides", "Tides", 0, Optional.of(show.line()));
		List<Site.Position> positions = new ArrayList<>();
		for (int i = 0; i < POSITIONS; i++) {
			positions.add(new Site.Position("P" + (i + 1), new Point(-45 + 10 * i, i % 2 * 6), HERE));
		}
		Site site = show.site.orElseThrow();
		show.site = Optional.of(new Site(site.name(), site.label(), positions, List.of(),
				List.of(new Site.Area("Promenade", List.of(new Point(-90, -130), new Point(60, -120)), HERE),
						new Site.Area("Terrace", List.of(new Point(140, -80), new Point(150, 40)), HERE)),
				Optional.of(new Site.Area("boundary", List.of(new Point(-200, -115), new Point(135, -115), new Point(135, 200), new Point(-200, 200)), HERE)),
				List.of(new Site.Protected("Barn", List.of(new Point(-120, 40)), Optional.of(8.0), 1, HERE),
						new Site.Protected("Chapel", List.of(new Point(-112, 62)), Optional.of(6.0), 1, HERE)),
				Optional.of(new Site.Wind(200, 3, Optional.empty(), HERE)), Optional.of(18.0), Optional.empty(), Optional.empty(), HERE));
		var small = show.add(effect("Small", "Small shell", EffectKind.SHELL, 0.075, 0.06, "1.3G", "UN0335"));
		positions.forEach(position -> show.cue(tides, 2_000_000, position.name(), small).add());
		return SiteDrawing.svg(show.checked());
	}

	private static double number(Matcher matcher, int group) {
		return Double.parseDouble(matcher.group(group));
	}

	private static List<Line2D> measures(String drawing) {
		return LINE.matcher(drawing).results().map(line -> (Line2D) new Line2D.Double(Double.parseDouble(line.group(1)), Double.parseDouble(line.group(2)),
				Double.parseDouble(line.group(3)), Double.parseDouble(line.group(4)))).toList();
	}

	private static List<Text> texts(String drawing) {
		List<Text> texts = new ArrayList<>();
		Matcher text = TEXT.matcher(drawing);
		while (text.find()) {
			double size = number(text, 3);
			if (!text.group(4).contains("scale 1 :")) {
				texts.add(new Text(text.group(4), new Rectangle2D.Double(number(text, 1), number(text, 2) - 0.75 * size,
						EM * size * text.group(4).length(), 0.75 * size)));
			}
		}
		return texts;
	}

	@Test
	void noWordStandsOnAnotherOnAPositionOrOnALineToMeasure() {
		String drawing = drawing();
		List<Text> texts = texts(drawing);
		assertThat(texts).extracting(Text::words).contains("P1", "P10", "75", "Barn", "Chapel", "audience: Promenade", "audience: Terrace", "boundary", "99 %", "N", "wind");
		assertThat(measures(drawing)).hasSizeGreaterThanOrEqualTo(6);
		List<Rectangle2D> spots = SPOT.matcher(drawing).results().map(spot -> (Rectangle2D) new Rectangle2D.Double(Double.parseDouble(spot.group(1)) - 0.8,
				Double.parseDouble(spot.group(2)) - 0.8, 1.6, 1.6)).toList();
		assertThat(spots).hasSize(POSITIONS);
		for (int i = 0; i < texts.size(); i++) {
			Text text = texts.get(i);
			assertThat(measures(drawing)).as("lines through %s", text).noneMatch(line -> text.box().intersectsLine(line));
			assertThat(spots).as("positions under %s", text).noneMatch(spot -> spot.intersects(text.box()));
			assertThat(texts.subList(i + 1, texts.size())).as("words on %s", text).noneMatch(other -> other.box().intersects(text.box()));
		}
	}

	/** Whoever lays a ruler on the paper and multiplies by the scale finds the number that stands beside the line. */
	@Test
	void theLinesAreAsLongAsTheirWordsSay() {
		String drawing = drawing();
		Matcher scale = SCALE.matcher(drawing);
		assertThat(scale.find()).isTrue();
		List<Double> said = texts(drawing).stream().map(Text::words).filter(words -> words.matches("[0-9]+\\.[0-9] m"))
				.map(words -> Double.parseDouble(words.replace(" m", ""))).sorted().toList();
		List<Double> measured = measures(drawing).stream().map(line -> line.getP1().distance(line.getP2()) * Integer.parseInt(scale.group(1)) / 1000)
				.sorted().toList();
		assertThat(measured).hasSameSizeAs(said);
		for (int i = 0; i < said.size(); i++) {
			assertThat(measured.get(i)).isCloseTo(said.get(i), within(0.06));
		}
	}

	@Test
	void theSameSiteGivesTheSameDrawing() {
		assertThat(drawing()).isEqualTo(drawing());
	}
}
